package org.varwright.job;

import java.util.regex.Pattern;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Reads one event from its line. */
final class EventReader {
    /** What job and device names look like: they become part of ids and file names. */
    static final Pattern NAME = Pattern.compile("[a-z0-9][a-z0-9-]{0,39}");

    private final String file;
    private final int line;

    EventReader(String file, int line) {
        this.file = file;
        this.line = line;
    }

    JobEvent read(String text) {
        Fields fields = new Fields(file, line, "", parsed(text));
        String device = name(fields, "device");
        int seq = fields.count("seq", 1);
        Fields clock = fields.object("clock");
        String id = fields.words("id");
        if (!id.equals(device + ":" + seq)) {
            throw new VarwrightException(Message.JOB_EVENT_ID, new Place(file, line, 0, "id"), id, device + ":" + seq);
        }
        return new JobEvent(
                id,
                name(fields, "job"),
                device,
                seq,
                new JobClock(clock.whole("wall"), clock.whole("order"), clock.count("count", 0)),
                fields.words("by"),
                FactReader.read(fields.words("type"), fields),
                fields.text("previous"));
    }

    private Json parsed(String text) {
        try {
            return Json.parse(text);
        } catch (VarwrightException e) {
            // The reader counts lines inside the text; here the text is one line of a file.
            throw new VarwrightException(e.problems().stream()
                    .map(p -> new Problem(
                            p.message(), new Place(file, line, p.place().column(), ""), p.arguments()))
                    .toList());
        }
    }

    private static String name(Fields fields, String member) {
        String name = fields.words(member);
        if (!NAME.matcher(name).matches()) {
            throw fields.wrong(member, "small letters, digits and hyphens, at most 40");
        }
        return name;
    }
}
