package org.varwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.RecordingJson;
import org.varwright.comtrade.RecordingText;
import org.varwright.json.Json;
import org.varwright.picture.RecordingChart;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code record FILE}. */
@Command(
        name = "record",
        mixinStandardHelpOptions = true,
        description = {
            "What is in a disturbance record (IEEE C37.111, IEC 60255-24): channels, times, states.",
            "What departs from the standard is read all the same where it can be, and said."
        })
final class RecordCommand implements Callable<Integer> {
    @Parameters(
            paramLabel = "FILE",
            index = "0",
            description = "The record: .cfg or .dat (its partners beside it are found), or .cff.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

    @Option(
            names = "--channel",
            paramLabel = "NAME",
            description = "Only this analog channel, by name or number; repeat it for every channel.")
    private List<String> channels = new ArrayList<>();

    @Option(
            names = "--from",
            paramLabel = "TIME",
            description = "First time wanted after the first sample, such as 40ms.")
    private @Nullable String from;

    @Option(names = "--to", paramLabel = "TIME", description = "Last time wanted after the first sample, such as 0.2s.")
    private @Nullable String to;

    @Option(
            names = "--code-page",
            paramLabel = "NAME",
            description = "Code page of the names, such as windows-1251; found out where it is not given.")
    private @Nullable String codePage;

    @Option(names = "--samples", description = "Put the samples into the JSON as well.")
    private boolean samples;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private PictureOption picture;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private OutputOptions output;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() {
        Recording recording = new RecordOnDisk(file).read(options());
        picture.write(width -> RecordingChart.of(recording).svg(width));
        String text = RecordingText.of(recording) + (output.explain() ? RecordingText.explain(recording) : "");
        Json.Builder json = RecordingJson.of(recording);
        if (samples) {
            json.put("data", RecordingJson.samples(recording));
        }
        return output.print(
                spec.commandLine().getOut(),
                new Answer(text, json.put("findings", Json.of(List.of())).build(), ExitCode.DONE));
    }

    private ReadOptions options() {
        double first = from == null ? Double.NEGATIVE_INFINITY : Typed.quantity("--from", Dimension.TIME, from);
        double last = to == null ? Double.POSITIVE_INFINITY : Typed.quantity("--to", Dimension.TIME, to);
        if (first > last) {
            throw new VarwrightException(
                    Message.RECORD_TIMES,
                    new Place("", 0, 0, "--from"),
                    Dimension.TIME.format(first, 6),
                    Dimension.TIME.format(last, 6));
        }
        return ReadOptions.ALL
                .channels(channels)
                .window(first, last)
                .codePage(Optional.ofNullable(codePage), RecordOnDisk.RUNTIME);
    }
}
