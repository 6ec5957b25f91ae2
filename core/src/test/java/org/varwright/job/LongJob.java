package org.varwright.job;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.UnitPosition;
import org.varwright.bankfile.BankFile;

/**
 * A job at which much is measured, for measuring what length costs: the way in of one order of work, then a reading and a note in turn.
 *
 * @param log the lines
 */
public record LongJob(JobLog log) {
    public static final String NAME = "long-job";
    private static final String DEVICE = "tablet-a";
    private static final long START_MILLIS = 1_795_000_000_000L;

    /**
     * A job of so many events.
     *
     * @param bankText a bank file with the compartment
     * @param events in all; at least as many as the way in has
     */
    public static LongJob of(String bankText, String compartment, int events) {
        Walk walk = new Walk(DEVICE, JobLog.empty(NAME), START_MILLIS);
        walk.yes(new Fact.Opened("much to measure", bankText, Optional.empty(), Optional.empty(), Optional.empty()));
        walk.yes(new Fact.OrderMade(
                List.of(compartment), Fact.Origin.AsFound.inService(), Optional.empty(), "units to be measured"));
        walk.stepsUntil(Order.Phase.WORK);
        List<UnitPosition> positions = BankFile.read("bank", bankText.getBytes(StandardCharsets.UTF_8))
                .requireBank()
                .positions();
        StringBuilder text = new StringBuilder(walk.log.text());
        LoggedEvent last = walk.log.events().getLast();
        for (int i = walk.log.events().size(); i < events; i++) {
            last = next(
                    last,
                    i % 2 == 0 ? reading(positions.get(i / 2 % positions.size()), i) : new Fact.Noted("note " + i));
            text.append(last.line()).append('\n');
        }
        return new LongJob(JobLog.read("log", text.toString()));
    }

    /** A line that may follow the last one. */
    public LoggedEvent note(String words) {
        return next(log.events().getLast(), new Fact.Noted(words));
    }

    private static Fact reading(UnitPosition position, int number) {
        return new Fact.ReadingTaken(
                position.name(), Map.of("capacitance", String.format(Locale.ROOT, "%.3f uF", 12.6 + number * 1e-5)));
    }

    private static LoggedEvent next(LoggedEvent last, Fact fact) {
        JobEvent before = last.event();
        return LoggedEvent.of(JobEvent.of(
                NAME,
                DEVICE,
                before.seq() + 1,
                before.clock().next(before.clock().wallMillis() + 1_000),
                Walk.PERSON,
                fact,
                last.hash()));
    }

    /** The job, told from its lines; its plans are kept between calls. */
    public static Job told(String text) {
        return Job.of(JobLog.read("log", text), Walk.PLANNER);
    }
}
