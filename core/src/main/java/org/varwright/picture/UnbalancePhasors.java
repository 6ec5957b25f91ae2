package org.varwright.picture;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.page.Enumeration;
import org.varwright.plot.Dash;
import org.varwright.plot.Dial;
import org.varwright.plot.Phasor;
import org.varwright.plot.PhasorDiagram;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;
import org.varwright.unbalance.FailureRow;
import org.varwright.unbalance.Unbalance;

/** Leg voltages, neutral and sensors of each stage, healthy and with units out. */
public final class UnbalancePhasors {
    private UnbalancePhasors() {}

    /**
     * The picture of units being out together.
     *
     * @param unbalance of certain positions, not the whole table
     * @param capacitances with which it was worked out
     * @throws VarwrightException {@code NOTHING_TO_DRAW} where a short circuit stands across the supply
     */
    public static PhasorDiagram of(Unbalance unbalance, Capacitances capacitances) {
        List<Dial> dials = new ArrayList<>();
        List<String> out = new ArrayList<>();
        for (FailureRow row : unbalance.failures()) {
            Stage stage = unbalance.bank().stage(row.stage()).orElseThrow();
            dials.addAll(dials(unbalance.bank(), stage, capacitances, unbalance.supply(), row.failures()));
            row.positions().forEach(p -> out.add(p.name()));
        }
        return PhasorDiagram.of(unbalance.bank().name() + ": " + Enumeration.of(out) + " out", dials)
                .caption("Dashed: nothing out. Full: with what is named above out. Primary values. " + Phasors.AGAINST);
    }

    /** Leg voltages and sensors of one stage with failures in it. */
    static List<Dial> dials(
            Bank bank, Stage stage, Capacitances capacitances, Supply supply, List<? extends Failure> failures) {
        Network network = Network.of(bank, stage, capacitances, supply);
        Solution.Solved healthy = solved(network.healthy());
        Solution.Solved failed = solved(network.solve(failures));
        List<Dial> dials = new ArrayList<>();
        Phasors.legs(stage, side(stage, failures), healthy, failed).ifPresent(dials::add);
        for (Protection protection : bank.protection()) {
            if (protection.stage().equals(stage.name())) {
                dials.add(sensor(bank, protection, healthy, failed));
            }
        }
        if (dials.isEmpty()) {
            throw new VarwrightException(
                    Message.NOTHING_TO_DRAW, Place.NOWHERE, stage.name() + " is a bridge without a sensor in the file");
        }
        return dials;
    }

    private static Solution.Solved solved(Solution solution) {
        return switch (solution) {
            case Solution.Solved s -> s;
            case Solution.Singular s ->
                throw new VarwrightException(Message.NOTHING_TO_DRAW, Place.NOWHERE, s.reason());
        };
    }

    /** The wye of a double wye in which most of it happens. */
    private static String side(Stage stage, List<? extends Failure> failures) {
        if (!stage.connection().isDoubleWye()) {
            return "";
        }
        long second = failures.stream()
                .filter(f ->
                        f instanceof Failure.OfBranch b && b.at().stageLeg().endsWith("2"))
                .count();
        return 2 * second > failures.size() ? "2" : "1";
    }

    private static Dial sensor(Bank bank, Protection protection, Solution.Solved healthy, Solution.Solved failed) {
        Dial dial = Dial.of(
                protection.stage() + " " + protection.senses().code(),
                protection.senses().dimension());
        double largest = failed.sensors().stream()
                .mapToDouble(s -> s.primary().magnitude())
                .max()
                .orElse(0.0);
        for (int i = 0; i < failed.sensors().size(); i++) {
            Solution.SensorValue now = failed.sensors().get(i);
            if (now.senses() == protection.senses()) {
                String place = now.place().isEmpty() ? "" : now.place() + " ";
                Complex before = healthy.sensors().get(i).primary();
                dial = dial.with(Phasor.of(place + "healthy", Phasors.clean(before, largest))
                                .with(Dash.DASHED))
                        .with(Phasor.of((place + "now").strip(), Phasors.clean(now.primary(), largest)));
            }
        }
        return Phasors.settings(dial, bank, protection.stage(), protection.senses());
    }
}
