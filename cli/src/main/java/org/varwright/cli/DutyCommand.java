package org.varwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Spare;
import org.varwright.bank.TransformerRatio;
import org.varwright.basis.BasisText;
import org.varwright.duty.Duty;
import org.varwright.duty.DutyJson;
import org.varwright.duty.DutyQuestion;
import org.varwright.duty.DutyText;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;
import org.varwright.resonance.Spectrum;
import org.varwright.survey.Spares;
import org.varwright.survey.SparesFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code duty BANK}. */
@Command(
        name = "duty",
        description = {
            "What service asks of the units, and what the bank does to its bus: limits with harmonics, short-time overvoltage, conductors, voltage rise, hunting of the control, kvar for a power factor, output elsewhere, spares that mislead.",
            "Exit 1 where a limit is broken or the control hunts."
        })
final class DutyCommand extends BankCommand {
    @Option(
            names = "--bus",
            paramLabel = "VOLTS",
            description = "One more bus voltage to look at, line to line, besides the nominal and the highest one.")
    private @Nullable String bus;

    @Option(
            names = "--harmonic",
            paramLabel = "\"ORDER: VALUE\"",
            description =
                    "A harmonic in place of those of the file: \"5: 3 %%\" a voltage behind the source, part of nominal; \"7: 14 A\" a current injected at the bus. Repeat it for each.")
    private List<String> harmonics = new ArrayList<>();

    @Option(
            names = "--measured",
            paramLabel = "\"ORDER: PART\"",
            description =
                    "A harmonic of the bus voltage as read with the bank on, such as \"5: 3 %%\". Repeat it for each.")
    private List<String> measured = new ArrayList<>();

    @Option(
            names = "--overvoltage",
            paramLabel = "HEIGHT",
            description =
                    "A short-time overvoltage, with --for: times rated unit voltage such as 1.4 or \"140 %%\", or the bus voltage such as 17kV.")
    private @Nullable String overvoltage;

    @Option(names = "--for", paramLabel = "TIME", description = "How long it stood, such as 10s.")
    private @Nullable String duration;

    @Option(
            names = "--at",
            paramLabel = "VOLTS",
            description = "What the units would give on another system, line to line.")
    private @Nullable String at;

    @Option(
            names = "--at-frequency",
            paramLabel = "HERTZ",
            description = "Frequency of that system; this bank's where it is not given.")
    private @Nullable String atFrequency;

    @Option(
            names = "--spares",
            paramLabel = "SPARES.csv",
            description = "Spares besides those of the bank file, to be warned of those that mislead.")
    private @Nullable Path spares;

    @Option(
            names = "--vt-entered",
            paramLabel = "RATIO",
            description =
                    "Ratio entered in the control where it is not that of the voltage transformer, such as 7200:120.")
    private @Nullable String voltageEntered;

    @Option(
            names = "--ct-entered",
            paramLabel = "RATIO",
            description =
                    "Ratio entered in the control where it is not that of the current transformer, such as 100:5.")
    private @Nullable String currentEntered;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        Duty duty = Duty.of(bank, question(bank));
        String text = DutyText.of(duty) + (explain() ? BasisText.ofChecks(duty.checks()) : "");
        return new Answer(text, DutyJson.of(duty), duty.isGood() ? ExitCode.DONE : ExitCode.NO);
    }

    private DutyQuestion question(Bank bank) {
        return new DutyQuestion(
                optional("--bus", Dimension.VOLTAGE, bus),
                harmonics.isEmpty() ? Optional.empty() : Optional.of(Spectrum.parse("--harmonic", harmonics)),
                voltagesOnly(Spectrum.parse("--measured", measured)),
                asked(),
                elsewhere(bank),
                moreSpares(bank),
                new DutyQuestion.EnteredRatios(
                        ratio("--vt-entered", voltageEntered), ratio("--ct-entered", currentEntered)));
    }

    private static List<Harmonic> voltagesOnly(List<Harmonic> typed) {
        for (Harmonic h : typed) {
            if (h.currentAmperes().isPresent()) {
                throw new VarwrightException(
                        Message.MEASURED_HARMONIC_CURRENT,
                        new Place("", 0, 0, "--measured"),
                        Dimension.CURRENT.format(h.currentAmperes().getAsDouble()));
            }
        }
        return typed;
    }

    private Optional<DutyQuestion.Overvoltage> asked() {
        String height = overvoltage;
        String time = duration;
        if (height == null && time == null) {
            return Optional.empty();
        }
        if (height == null || time == null) {
            throw new VarwrightException(Message.OVERVOLTAGE_PAIR, new Place("", 0, 0, "--overvoltage"));
        }
        double seconds = Typed.quantity("--for", Dimension.TIME, time);
        Typed.requirePositive("--for", seconds, Dimension.TIME);
        return Optional.of(new DutyQuestion.Overvoltage(height(height), seconds));
    }

    private static DutyQuestion.Height height(String typed) {
        if (typed.strip().matches("[0-9]{1,3}(\\.[0-9]+)?")) {
            return positive(new DutyQuestion.Height.PerRated(Double.parseDouble(typed.strip())), typed);
        }
        if (Dimension.FRACTION.parse(typed) instanceof Reading.Value(double part)) {
            return positive(new DutyQuestion.Height.PerRated(part), typed);
        }
        if (Dimension.VOLTAGE.parse(typed) instanceof Reading.Value(double volts)) {
            return positive(new DutyQuestion.Height.Bus(volts), typed);
        }
        throw new VarwrightException(Message.OVERVOLTAGE_HEIGHT, new Place("", 0, 0, "--overvoltage"), typed);
    }

    private static DutyQuestion.Height positive(DutyQuestion.Height height, String typed) {
        double value = switch (height) {
            case DutyQuestion.Height.PerRated(double multiple) -> multiple;
            case DutyQuestion.Height.Bus(double volts) -> volts;
        };
        if (!(value > 0.0)) {
            throw new VarwrightException(Message.OVERVOLTAGE_HEIGHT, new Place("", 0, 0, "--overvoltage"), typed);
        }
        return height;
    }

    private Optional<DutyQuestion.Elsewhere> elsewhere(Bank bank) {
        if (at == null && atFrequency == null) {
            return Optional.empty();
        }
        double volts =
                optional("--at", Dimension.VOLTAGE, at).orElse(bank.system().nominalVolts());
        double hertz = optional("--at-frequency", Dimension.FREQUENCY, atFrequency)
                .orElse(bank.system().frequencyHertz());
        return Optional.of(new DutyQuestion.Elsewhere(volts, hertz));
    }

    private List<Spare> moreSpares(Bank bank) {
        if (spares == null) {
            return List.of();
        }
        Spares read = SparesFile.read(bank, spares.toString(), InputFile.read(spares));
        RowProblems.print(err(), read.problems());
        return read.spares();
    }

    static OptionalDouble optional(String option, Dimension dimension, @Nullable String typed) {
        if (typed == null) {
            return OptionalDouble.empty();
        }
        double value = Typed.quantity(option, dimension, typed);
        Typed.requirePositive(option, value, dimension);
        return OptionalDouble.of(value);
    }

    private static Optional<TransformerRatio> ratio(String option, @Nullable String typed) {
        if (typed == null) {
            return Optional.empty();
        }
        String[] parts = typed.split(":", -1);
        if (parts.length == 2) {
            try {
                double primary = Double.parseDouble(parts[0].strip());
                double secondary = Double.parseDouble(parts[1].strip());
                if (primary > 0.0 && secondary > 0.0 && Double.isFinite(primary / secondary)) {
                    return Optional.of(new TransformerRatio(primary, secondary));
                }
            } catch (NumberFormatException e) {
                throw new VarwrightException(Message.RATIO_TYPED, new Place("", 0, 0, option), typed);
            }
        }
        throw new VarwrightException(Message.RATIO_TYPED, new Place("", 0, 0, option), typed);
    }
}
