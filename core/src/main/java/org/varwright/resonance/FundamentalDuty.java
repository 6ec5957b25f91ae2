package org.varwright.resonance;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitType;
import org.varwright.limit.Stress;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.network.UnitBranch;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * What the hardest-worked units of a stage bear at the fundamental and nominal system voltage, each as a multiple of rated.
 *
 * <p><b>Model.</b> The phasor network of the stage with the capacitances that are known (NET-5); current {@code V·ωC/(V_r·ω_r·C_r)}; of a unit that nobody
 * measured the capacitance is that of its upper tolerance when its current and reactive power are judged (DUT-2).
 * <p><b>Source.</b> First principles.
 *
 * @param stage which
 * @param voltage highest voltage over rated
 * @param current highest current over rated
 * @param reactivePower highest reactive power over rated
 * @param unitAmperes current of the unit that carries most [A]
 * @param lineAmperes highest line current of the stage, nameplate tolerance of unmeasured units not counted [A]
 * @param vars that the stage gives [var]
 * @param isMeasured whether every unit's capacitance is known
 */
public record FundamentalDuty(
        Stage stage,
        double voltage,
        double current,
        double reactivePower,
        double unitAmperes,
        double lineAmperes,
        double vars,
        boolean isMeasured) {
    /**
     * The duty of a stage on its own at nominal voltage.
     *
     * @throws VarwrightException {@code NO_SOLUTION}
     */
    public static FundamentalDuty of(Bank bank, Stage stage) {
        Network network = Network.of(bank, stage, Capacitances.known(bank), Supply.nominal(bank.system()));
        return switch (network.healthy()) {
            case Solution.Singular singular ->
                throw new VarwrightException(Message.NO_SOLUTION, Place.NOWHERE, stage.name(), singular.reason());
            case Solution.Solved solved -> of(bank, stage, solved);
        };
    }

    private static FundamentalDuty of(Bank bank, Stage stage, Solution.Solved solved) {
        UnitType type = stage.unit();
        double ratedAmperes = legRatedAmperes(type);
        double voltage = 0.0;
        double current = 0.0;
        double power = 0.0;
        boolean allMeasured = true;
        for (Solution.UnitValue unit : solved.units()) {
            boolean measured = isMeasured(bank, unit.unit());
            allMeasured &= measured;
            double most = measured ? 1.0 : 1.0 + Math.max(0.0, type.tolerance().high());
            double amperes = unit.amperes().magnitude() * most / ratedAmperes;
            voltage = Math.max(voltage, unit.voltsPerRated());
            current = Math.max(current, amperes);
            power = Math.max(power, amperes * unit.voltsPerRated());
        }
        double line = solved.lines().stream()
                .mapToDouble(l -> l.amperes().magnitude())
                .max()
                .orElse(0.0);
        double vars =
                solved.stages().stream().mapToDouble(Solution.StageValue::vars).sum();
        return new FundamentalDuty(stage, voltage, current, power, current * ratedAmperes, line, vars, allMeasured);
    }

    /** Rated current of one capacitive branch of a type [A]: of the unit, or of a leg inside a three-phase one. */
    public static double legRatedAmperes(UnitType type) {
        double vars = type.threePhase().isPresent() ? type.ratedVars() / 3.0 : type.ratedVars();
        return vars / type.legVolts();
    }

    private static boolean isMeasured(Bank bank, UnitBranch branch) {
        return bank.unitAt(branch.at())
                .filter(u -> u.capacitanceFarads().isPresent())
                .isPresent();
    }

    /**
     * The stress at another bus voltage, with harmonics.
     *
     * @param voltageFactor bus voltage over nominal
     * @param ratios voltage of each harmonic across the capacitors over that of the fundamental at this bus voltage
     */
    public Stress at(double voltageFactor, List<Stress.Component> ratios) {
        double squares = 1.0;
        double sum = 1.0;
        double currents = 1.0;
        double vars = 1.0;
        for (Stress.Component c : ratios) {
            double r = c.perRated();
            squares += r * r;
            sum += r;
            currents += c.order() * r * c.order() * r;
            vars += c.order() * r * r;
        }
        return new Stress(
                voltage * voltageFactor * Math.sqrt(squares),
                voltage * voltageFactor * sum,
                current * voltageFactor * Math.sqrt(currents),
                reactivePower * voltageFactor * voltageFactor * vars);
    }
}
