package org.varwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.basis.BasisText;
import org.varwright.energize.BusVolts;
import org.varwright.network.Capacitances;
import org.varwright.network.Supply;
import org.varwright.picture.LocatePhasors;
import org.varwright.quantity.Dimension;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.Locate;
import org.varwright.unbalance.LocateJson;
import org.varwright.unbalance.LocateText;
import org.varwright.unbalance.Locator;
import org.varwright.unbalance.Sighting;
import org.varwright.unbalance.SightingReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code locate BANK}. */
@Command(
        name = "locate",
        description = {
            "Which failure explains a sensor's reading, by probability, and what to measure next.",
            "Exit 3 where no failure comes near the reading."
        })
final class LocateCommand extends BankCommand {
    @Option(
            names = "--reading",
            required = true,
            paramLabel = "[SENSOR=]VALUE",
            description = "What the sensor showed, such as 0.55A; with its name where there are several.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String reading;

    @Option(names = "--primary", description = "The reading is a primary value; otherwise it is at the relay.")
    private boolean primary;

    @Option(names = "--angle", paramLabel = "DEG", description = "Its angle against phase A to ground.")
    private @Nullable Double angle;

    @Option(
            names = "--healthy",
            paramLabel = "VALUE@DEG",
            description = "What the sensor showed when nothing was wrong, such as 20mA@79.")
    private @Nullable String healthy;

    @Option(
            names = "--line",
            paramLabel = "PHASE=AMPERES",
            description = "A line current read at the same time, such as A=326A; repeat it for each.")
    private List<String> lines = new ArrayList<>();

    @Option(
            names = "--uncertainty",
            paramLabel = "PERCENT",
            defaultValue = "3 %",
            description = "Of the reading (default ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String uncertainty;

    @Option(
            names = "--bus",
            paramLabel = "VOLTS",
            description =
                    "Bus voltage, line to line, one value or AB,BC,CA; the nominal voltage where it is not given.")
    private @Nullable String bus;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private PictureOption picture;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        Sighting sighting = new SightingReader(bank)
                .read(
                        reading,
                        primary,
                        angle == null ? OptionalDouble.empty() : OptionalDouble.of(angle),
                        Typed.quantity("--uncertainty", Dimension.FRACTION, uncertainty),
                        Optional.ofNullable(healthy),
                        lines);
        Supply supply = supply(bank);
        Locate locate = Locator.locate(bank, Map.of(), supply, Assumptions.USUAL, sighting);
        picture.write(width ->
                LocatePhasors.of(locate, Capacitances.known(bank), supply).svg(width));
        String text = LocateText.of(locate) + (explain() ? BasisText.of(List.of(locate.basis())) : "");
        return new Answer(text, LocateJson.of(locate), locate.isExplained() ? ExitCode.DONE : ExitCode.UNDECIDED);
    }

    private Supply supply(Bank bank) {
        if (bus == null) {
            return Supply.nominal(bank.system());
        }
        BusVolts volts = EnergizeCommand.busVolts(bus);
        return Supply.ofLineVolts(volts.ab(), volts.bc(), volts.ca());
    }
}
