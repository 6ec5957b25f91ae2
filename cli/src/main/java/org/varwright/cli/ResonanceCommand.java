package org.varwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.basis.BasisText;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.resonance.Resonance;
import org.varwright.resonance.ResonanceJson;
import org.varwright.resonance.ResonanceQuestion;
import org.varwright.resonance.ResonanceText;
import org.varwright.resonance.ScanChart;
import org.varwright.resonance.Spectrum;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code resonance BANK}. */
@Command(
        name = "resonance",
        description = {
            "Every combination of stages at harmonics: where it is in resonance with the source, how many times it raises each harmonic, what the units then bear; tuning of reactors and how it drifts.",
            "Exit 1 where a limit is broken, 3 where the short-circuit level is not known."
        })
final class ResonanceCommand extends BankCommand {
    @Option(
            names = "--bus",
            paramLabel = "VOLTS",
            description = "Bus voltage, line to line; the highest sustained one of the file where it is not given.")
    private @Nullable String bus;

    @Option(
            names = "--harmonic",
            paramLabel = "\"ORDER: VALUE\"",
            description =
                    "A harmonic in place of those of the file: \"5: 3 %%\" a voltage behind the source, part of nominal; \"7: 14 A\" a current injected at the bus. Repeat it for each.")
    private List<String> harmonics = new ArrayList<>();

    @Option(
            names = "--stages",
            split = ",",
            paramLabel = "STAGE",
            description = "Stages that are on, such as \"stage 1,stage 3\"; every combination where it is not given.")
    private List<String> stages = new ArrayList<>();

    @Option(
            names = "-o",
            paramLabel = "FILE.svg",
            description = "Draw the impedance scan: the whole bank and the worst combinations, by order.")
    private @Nullable Path target;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        Resonance resonance = Resonance.of(
                bank,
                new ResonanceQuestion(
                        DutyCommand.optional("--bus", Dimension.VOLTAGE, bus),
                        harmonics.isEmpty() ? Optional.empty() : Optional.of(Spectrum.parse("--harmonic", harmonics)),
                        stages.isEmpty()
                                ? Optional.empty()
                                : Optional.of(stages.stream().map(String::strip).toList())));
        if (target != null && resonance.source().isPresent()) {
            OutputFile.write(target, ScanChart.of(resonance).svg(Width.PAGE).getBytes(StandardCharsets.UTF_8));
        }
        String text = ResonanceText.of(resonance) + (explain() ? BasisText.ofChecks(resonance.checks()) : "");
        ExitCode code =
                resonance.source().isEmpty() ? ExitCode.UNDECIDED : resonance.isGood() ? ExitCode.DONE : ExitCode.NO;
        return new Answer(text, ResonanceJson.of(resonance), code);
    }
}
