package org.varwright.cli;

import java.util.List;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.quantity.CalendarDate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code job visit FILE --date DATE --for TEXT}. */
@Command(
        name = "visit",
        description = {
            "Writes down when somebody comes to the bank again, and what for. It takes the place of what the file says so far.",
            "Allowed after the job is closed, too. Exit 2, and nothing is written, where the rules refuse it."
        })
final class JobVisitCommand extends JobEntryCommand {
    @Option(
            names = "--date",
            required = true,
            paramLabel = "DATE",
            description = "The day: year, month and day, such as 2027-05-12.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String date;

    @Option(names = "--for", required = true, paramLabel = "TEXT", description = "What the visit is for.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String purpose;

    @Override
    Answer answer() {
        CalendarDate day = TypedDate.read("--date", date);
        return write(job -> new Fact.VisitAgreed(day, purpose, replaced(job)));
    }

    private static List<String> replaced(Job job) {
        return job.nextVisits().stream().map(v -> v.event().id()).toList();
    }
}
