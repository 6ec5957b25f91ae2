package org.varwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.basis.BasisText;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.discharge.DecayPicture;
import org.varwright.discharge.Discharge;
import org.varwright.discharge.DischargeJson;
import org.varwright.discharge.DischargeText;
import org.varwright.discharge.OpeningPicture;
import org.varwright.discharge.Question;
import org.varwright.discharge.Stick;
import org.varwright.plot.Width;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code discharge BANK}. */
@Command(
        name = "discharge",
        description = {
            "What opening leaves on every pole, how every unit discharges, how long to wait at least, switching on again, discharge stick.",
            "Exit 1 where a limit is broken, with --after or --time-constants also where the voltage is still above the safe one."
        })
final class DischargeCommand extends BankCommand {
    @Option(
            names = "--stick",
            paramLabel = "OHMS",
            description = "Resistance of the discharge stick at hand, such as \"10 kΩ\" or 10kohm.")
    private @Nullable String stickOhms;

    @Option(
            names = "--stick-energy",
            paramLabel = "JOULES",
            description = "Energy that the stick's resistor bears, such as 2kJ.")
    private @Nullable String stickJoules;

    @Option(
            names = "--after",
            paramLabel = "TIME",
            description = "What is still held that long after opening, such as \"3 min\" or 150s.")
    private @Nullable String after;

    @Option(
            names = "--time-constants",
            paramLabel = "NUMBER",
            description = "What that many time constants leave, such as 5.")
    private @Nullable String timeConstants;

    @Option(
            names = "--readings",
            paramLabel = "READINGS.csv",
            description = "Capacitances and discharge resistances as read; they can make a wait longer, never shorter.")
    private @Nullable Path readings;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private ReadingsOptions meter;

    @Option(
            names = "-o",
            paramLabel = "FILE.svg",
            description =
                    "A picture of the decay: every kind of unit, safe voltage, 5 min, least wait, a string with an open resistor.")
    private @Nullable Path picture;

    @Option(
            names = "--linear",
            description = "The picture with a linear scale of voltage instead of a logarithmic one.")
    private boolean linear;

    @Option(
            names = "--opening",
            paramLabel = "STAGE=FILE.svg",
            description = "A picture of how the poles of a stage clear one after another and what each leg then holds.")
    private @Nullable String opening;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        Question question = Question.NOTHING_MORE.with(stick());
        if (after != null) {
            question = question.after(seconds(after));
        }
        if (timeConstants != null) {
            question = question.timeConstants(count(timeConstants));
        }
        if (readings != null) {
            question = question.with(UnitsAsRead.of(meter.survey(bank, readings, err())));
        }
        Discharge discharge = Discharge.of(bank, question);
        if (picture != null) {
            DecayPicture.Scale scale = linear ? DecayPicture.Scale.LINEAR : DecayPicture.Scale.LOGARITHMIC;
            write(picture, DecayPicture.svg(discharge, scale, Width.PAGE));
        }
        if (opening != null) {
            drawOpening(discharge, opening);
        }
        String text = DischargeText.of(discharge) + (explain() ? BasisText.ofChecks(discharge.checks()) : "");
        return new Answer(text, DischargeJson.of(discharge), code(discharge.checks()));
    }

    private static void write(Path target, String svg) {
        OutputFile.write(target, svg.getBytes(StandardCharsets.UTF_8));
    }

    private static void drawOpening(Discharge discharge, String typed) {
        List<String> names =
                discharge.stages().stream().map(s -> s.stage().name()).toList();
        int at = typed.indexOf('=');
        int index = at < 0 ? -1 : names.indexOf(typed.substring(0, at).strip());
        if (index < 0) {
            throw new VarwrightException(
                    Message.OPENING_TYPED, new Place("", 0, 0, "--opening"), typed, String.join(", ", names));
        }
        write(Path.of(typed.substring(at + 1).strip()), OpeningPicture.svg(discharge, index, Width.PAGE));
    }

    private Optional<Stick> stick() {
        if (stickOhms == null) {
            if (stickJoules != null) {
                throw new VarwrightException(Message.STICK_WITHOUT_OHMS, new Place("", 0, 0, "--stick-energy"));
            }
            return Optional.empty();
        }
        double ohms = Typed.quantity("--stick", Dimension.RESISTANCE, stickOhms);
        Typed.requirePositive("--stick", ohms, Dimension.RESISTANCE);
        if (stickJoules == null) {
            return Optional.of(new Stick(ohms, OptionalDouble.empty()));
        }
        double joules = Typed.quantity("--stick-energy", Dimension.ENERGY, stickJoules);
        Typed.requirePositive("--stick-energy", joules, Dimension.ENERGY);
        return Optional.of(new Stick(ohms, OptionalDouble.of(joules)));
    }

    private static double seconds(String typed) {
        double seconds = Typed.quantity("--after", Dimension.TIME, typed);
        if (seconds < 0.0) {
            throw new VarwrightException(
                    Message.AFTER_NEGATIVE, new Place("", 0, 0, "--after"), Dimension.TIME.format(seconds));
        }
        return seconds;
    }

    private static double count(String typed) {
        try {
            double count = Double.parseDouble(typed);
            if (count > 0.0 && Double.isFinite(count)) {
                return count;
            }
        } catch (NumberFormatException e) {
            // named below
        }
        throw new VarwrightException(Message.TIME_CONSTANTS, new Place("", 0, 0, "--time-constants"), typed);
    }

    private static ExitCode code(Iterable<Check> checks) {
        for (Check check : checks) {
            if (check.verdict() == Verdict.FAIL) {
                return ExitCode.NO;
            }
        }
        return ExitCode.DONE;
    }
}
