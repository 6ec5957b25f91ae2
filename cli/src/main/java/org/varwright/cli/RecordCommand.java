package org.varwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.bankfile.BankFile;
import org.varwright.basis.BasisText;
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
import org.varwright.record.RecordInput;
import org.varwright.record.RecordPicture;
import org.varwright.record.RecordStudy;
import org.varwright.record.RecordStudyJson;
import org.varwright.record.RecordStudyText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code record FILE [BANK]}. */
@Command(
        name = "record",
        description = {
            "What is in a disturbance record (IEEE C37.111, IEC 60255-24): channels, times, states, what changed when.",
            "With BANK: what was switched, what failed and where, and what the record can't tell.",
            "What departs from the standard is read all the same where it can be, and said.",
            "With BANK, exit 1 where something failed, 3 where channels are not clear, nothing of the bank is in the record,",
            "a pole is not seen to open, or no failure explains a sensor."
        })
final class RecordCommand extends AnswerCommand {
    @Parameters(
            paramLabel = "FILE",
            index = "0",
            description = "The record: .cfg or .dat (its partners beside it are found), or .cff.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path file;

    @Parameters(
            paramLabel = "BANK",
            index = "1",
            arity = "0..1",
            description = "The bank file (.bank.yaml) of the bank that it was taken at.")
    private @Nullable Path bank;

    @Option(
            names = "--channel-map",
            paramLabel = "NAME=PLACE",
            description = {
                "What a channel measures, where that is not clear: \"IA=stage 1/A\", \"VA=bus A\", \"VN=stage 1 neutral-voltage\",",
                "\"I4=none\"; with its ratio where the record doesn't give it: \"IA=stage 1/A@100:5\". Repeat it for every channel."
            })
    private List<String> channelMap = new ArrayList<>();

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

    @Override
    Answer answer() {
        Recording recording = new RecordOnDisk(file).read(options());
        RecordStudy study = study(recording);
        picture.write(width -> RecordPicture.svg(study, width)
                .orElseGet(() -> RecordingChart.of(recording).svg(width)));
        String text = RecordingText.of(recording)
                + "\n" + RecordStudyText.of(study)
                + (explain() ? RecordingText.explain(recording) + BasisText.of(study.bases()) : "");
        Json.Builder json = RecordingJson.of(recording);
        if (samples) {
            json.put("data", RecordingJson.samples(recording));
        }
        RecordStudyJson.put(json, study);
        return new Answer(text, json.build(), code(study));
    }

    private RecordStudy study(Recording recording) {
        RecordInput input = RecordInput.of(recording);
        if (bank == null) {
            if (!channelMap.isEmpty()) {
                throw new VarwrightException(Message.CHANNEL_MAP_NO_BANK, new Place("", 0, 0, "--channel-map"));
            }
            return RecordStudy.of(input);
        }
        return RecordStudy.of(
                input, BankFile.read(bank.toString(), InputFile.read(bank)).requireBank(), channelMap);
    }

    private static ExitCode code(RecordStudy study) {
        if (study.bank().isEmpty()) {
            return ExitCode.DONE;
        }
        return switch (study.answer()) {
            case NOTHING_FAILED -> ExitCode.DONE;
            case FAILED -> ExitCode.NO;
            case UNDECIDED -> ExitCode.UNDECIDED;
        };
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
