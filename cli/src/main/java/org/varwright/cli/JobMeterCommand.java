package org.varwright.cli;

import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code job meter FILE --limit PERCENT}. */
@Command(
        name = "meter",
        description = {
            "States how far a capacitance meter may be off. Every reading of the job is judged by it, on every device and in the report.",
            "It takes the place of what the file says of that meter so far. Exit 2, and nothing is written, where the rules refuse it."
        })
final class JobMeterCommand extends JobEntryCommand {
    @Option(
            names = "--limit",
            required = true,
            paramLabel = "PERCENT",
            description = "Limits of error, part of the reading, from the meter's data sheet, such as \"0.5 %%\".")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String limit;

    @Option(
            names = "--instrument",
            paramLabel = "NAME",
            description =
                    "The meter's name in the readings; every meter that is not stated by name where it is not given.")
    private @Nullable String instrument;

    @Override
    Answer answer() {
        Optional<String> name =
                Optional.ofNullable(instrument).map(String::strip).filter(n -> !n.isEmpty());
        return write(job -> new Fact.MeterStated(name, limit.strip(), replaced(job, name)));
    }

    private static List<String> replaced(Job job, Optional<String> name) {
        return job.meterLimits().of(name).stream().map(m -> m.event().id()).toList();
    }
}
