package org.varwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.BasisText;
import org.varwright.basis.Verdict;
import org.varwright.network.Capacitances;
import org.varwright.network.Supply;
import org.varwright.picture.FailureChart;
import org.varwright.picture.UnbalancePhasors;
import org.varwright.problem.Place;
import org.varwright.quantity.Dimension;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.Unbalance;
import org.varwright.unbalance.UnbalanceJson;
import org.varwright.unbalance.UnbalanceText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code unbalance BANK}. */
@Command(
        name = "unbalance",
        description = {
            "What failures do: sensor readings, highest voltages, which may run on.",
            "Without --out the whole table, the settings that would catch them, and a judgement of those in the file.",
            "Exit 1 where a check fails."
        })
final class UnbalanceCommand extends BankCommand {
    @Option(names = "--out", paramLabel = "POSITION", description = "A unit that is out; repeat it for each.")
    private List<String> out = new ArrayList<>();

    @Option(
            names = "--bus",
            paramLabel = "VOLTS",
            description = "Bus voltage, line to line; the nominal voltage where it is not given.")
    private @Nullable String bus;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private PictureOption picture;

    @Option(
            names = "--stage",
            paramLabel = "NAME",
            description = "The stage of which -o draws the table; the first one where it is not given.")
    private @Nullable String stage;

    @Override
    Answer answer(BankArgument argument) {
        Bank bank = argument.bank(err());
        double volts = bus == null ? bank.system().nominalVolts() : Typed.quantity("--bus", Dimension.VOLTAGE, bus);
        Typed.requirePositive("--bus", volts, Dimension.VOLTAGE);
        Supply supply = new Supply.Balanced(volts);
        List<UnitPosition> positions = out.stream()
                .map(p -> bank.requirePosition(p, new Place("", 0, 0, "--out")))
                .toList();
        Unbalance unbalance = positions.isEmpty()
                ? Unbalance.of(bank, Map.of(), supply, Assumptions.USUAL)
                : Unbalance.ofOut(bank, Map.of(), supply, positions);
        picture.write(width -> positions.isEmpty()
                ? FailureChart.of(unbalance, Optional.ofNullable(stage)).svg(width)
                : UnbalancePhasors.of(unbalance, Capacitances.known(bank)).svg(width));
        String text = UnbalanceText.of(unbalance) + (explain() ? BasisText.ofChecks(unbalance.checks()) : "");
        boolean good = unbalance.checks().stream().allMatch(c -> c.verdict() != Verdict.FAIL);
        return new Answer(text, UnbalanceJson.of(unbalance), good ? ExitCode.DONE : ExitCode.NO);
    }
}
