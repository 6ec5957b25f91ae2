package org.varwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.basis.BasisText;
import org.varwright.energize.BusVolts;
import org.varwright.energize.Energize;
import org.varwright.energize.EnergizeJson;
import org.varwright.energize.EnergizeText;
import org.varwright.energize.MeasuredValue;
import org.varwright.energize.Uncertainty;
import org.varwright.fit.AsRead;
import org.varwright.picture.EnergizePhasors;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.survey.Survey;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code energize BANK}. */
@Command(
        name = "energize",
        description = {
            "What every line and leg should draw and every sensor should show at first energization, with a band; compared with what was measured.",
            "Exit 1 where a limit is broken or a measured value lies outside its band."
        })
final class EnergizeCommand extends BankCommand {
    @Option(
            names = "--bus",
            required = true,
            paramLabel = "VOLTS",
            description =
                    "Bus voltage measured, line to line, such as 13.8kV; or AB,BC,CA such as 13.8kV,13.7kV,13.9kV.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String bus;

    @Option(
            names = "--measured",
            paramLabel = "NAME=VALUE",
            description = "A value measured, such as \"stage 2/A=12.5 A\"; repeat it for every value.")
    private List<String> measured = new ArrayList<>();

    @Option(
            names = "--readings",
            paramLabel = "READINGS",
            description =
                    "Readings of the units as they are fitted now; a unit not measured counts by the bank file, else its nameplate.")
    private @Nullable Path readings;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private ReadingsOptions options;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private PictureOption picture;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        List<MeasuredValue> values = measured.stream().map(MeasuredValue::parse).toList();
        Optional<Survey> survey = Optional.ofNullable(readings).map(file -> options.survey(bank, file, err()));
        AsRead asRead = survey.map(AsRead::of).orElse(AsRead.NOTHING);
        asRead.warnings().forEach(w -> err().println("varwright: " + w));
        Uncertainty uncertainty = Uncertainty.USUAL.withMeter(
                survey.map(Survey::largestMeterLimit).orElse(0.0));
        Energize energize = Energize.of(bank, asRead.farads(), busVolts(bus), uncertainty, values)
                .warned(asRead.warnings());
        picture.write(width -> EnergizePhasors.of(energize).svg(width));
        String text = EnergizeText.of(energize) + (explain() ? BasisText.ofChecks(energize.checks()) : "");
        return new Answer(text, EnergizeJson.of(energize), energize.isGood() ? ExitCode.DONE : ExitCode.NO);
    }

    /**
     * One line voltage for all three, or all three.
     *
     * @throws VarwrightException {@code BUS_VOLTS_TYPED}, or what is wrong with a quantity
     */
    static BusVolts busVolts(String typed) {
        String[] parts = typed.split("[,;]", -1);
        if (parts.length != 1 && parts.length != 3) {
            throw new VarwrightException(Message.BUS_VOLTS_TYPED, new Place("", 0, 0, "--bus"), typed);
        }
        double[] volts = new double[parts.length];
        for (int i = 0; i < parts.length; i++) {
            volts[i] = Typed.quantity("--bus", Dimension.VOLTAGE, parts[i]);
        }
        return parts.length == 1 ? BusVolts.balanced(volts[0]) : BusVolts.of(volts[0], volts[1], volts[2]);
    }
}
