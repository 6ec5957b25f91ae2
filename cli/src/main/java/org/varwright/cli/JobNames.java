package org.varwright.cli;

import java.nio.file.Path;
import java.util.Locale;
import org.varwright.job.JobEvent;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Names of jobs and devices. */
final class JobNames {
    private JobNames() {}

    /** A name for the job that a file holds, from the file's own. */
    static String of(Path file) {
        String name = String.valueOf(file.getFileName())
                .toLowerCase(Locale.ROOT)
                .replaceFirst("\\.job\\.jsonl$|\\.jsonl$", "");
        return name.replaceAll("[^a-z0-9]+", "-").replaceAll("^-+|-+$", "");
    }

    /**
     * Holds a typed name against what is allowed.
     *
     * @throws VarwrightException {@code JOB_NAME} naming the option
     */
    static void require(String option, String name) {
        if (!JobEvent.isName(name)) {
            throw new VarwrightException(Message.JOB_NAME, new Place("", 0, 0, option), name);
        }
    }
}
