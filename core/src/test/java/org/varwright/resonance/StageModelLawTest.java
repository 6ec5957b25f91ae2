package org.varwright.resonance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.network.Banks;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;

/** A stage as one or two branches a phase (RES-3) against the network unit by unit, at several frequencies: every connection, reactors at either place. */
class StageModelLawTest {
    private static Solution.Solved network(Bank bank, Stage stage, Capacitances values) {
        return assertInstanceOf(
                Solution.Solved.class,
                Network.of(bank, stage, values, Supply.nominal(bank.system())).healthy());
    }

    /** The same current from the bus, the same voltage across the capacitors, the same reactive power, with its sign: above its tuning a branch draws it. */
    @Test
    void fromTheBusItIsTheNetwork() {
        int[] inductive = {0};
        for (double hertz : new double[] {60.0, 300.0, 660.0, 1500.0}) {
            for (Banks.Plan plan : Banks.everyKind()) {
                // rated for more at the higher frequency: the same capacitance
                Bank bank = plan.at(13800.0, hertz)
                        .rated(plan.unitVars() * hertz / 60.0, plan.unitVolts())
                        .bank();
                Stage stage = bank.stages().getFirst();
                String what = plan + " at " + hertz + " Hz";
                double omega = bank.system().angularFrequency();
                StageModel model = StageModel.of(stage, Capacitances.nameplate(bank));
                Solution.Solved solved = network(bank, stage, Capacitances.nameplate(bank));
                double phaseVolts = 13800.0 / Math.sqrt(3.0);
                double amperes = solved.lines().getFirst().amperes().magnitude();
                assertEquals(amperes, phaseVolts * model.siemens(omega).magnitude(), 1e-7 * amperes, what);
                double vars = solved.stages().getFirst().vars();
                assertEquals(vars, model.vars(13800.0, omega), 1e-7 * Math.abs(vars), what);
                inductive[0] += vars < 0.0 ? 1 : 0;
                double legVolts = solved.legs().stream()
                        .mapToDouble(l -> l.volts().magnitude())
                        .max()
                        .orElseThrow();
                // the share is of bus to neutral: a delta's legs stand at √3 of it, a quarter of a bridge at half
                boolean delta = stage.connection() == Connection.DELTA;
                double part = delta ? Math.sqrt(3.0) : stage.connection().isBridge() ? 0.5 : 1.0;
                assertEquals(legVolts, part * phaseVolts * model.capacitorShare(omega), 1e-7 * legVolts, what);
            }
        }
        assertTrue(inductive[0] > 5, "some reactor stood above its tuning: " + inductive[0]);
    }

    /** Unequal units: a grounded wye's phases stand each for itself, so that the mean of them gives what all three give. */
    @Test
    void ofUnequalPhasesTheMeanGivesWhatTheyGiveTogether() {
        Random random = new Random(71);
        for (Banks.Plan plan : Banks.everyKind()) {
            Bank bank = plan.bank();
            Stage stage = bank.stages().getFirst();
            if (stage.reactor().isPresent() || stage.hasThreePhaseUnits() || !eachForItself(stage.connection())) {
                continue;
            }
            Capacitances values = Banks.scattered(bank, random, 0.2);
            double vars = network(bank, stage, values).stages().getFirst().vars();
            double told =
                    StageModel.of(stage, values).vars(13800.0, bank.system().angularFrequency());
            assertEquals(vars, told, 1e-9 * vars, plan.toString());
        }
    }

    private static boolean eachForItself(Connection connection) {
        return connection.isGrounded() || connection == Connection.DELTA;
    }

    /** Built alike means in everything that the bus sees. */
    @Test
    void whatDiffersInAnythingIsNotAlike() {
        List<Banks.Plan> plans = Banks.everyKind();
        for (int i = 0; i < plans.size(); i++) {
            for (int j = 0; j < plans.size(); j++) {
                Stage a = plans.get(i).bank().stages().getFirst();
                Stage b = plans.get(j).bank().stages().getFirst();
                boolean same = StageModel.of(
                                a, Capacitances.nameplate(plans.get(i).bank()))
                        .isAlike(StageModel.of(
                                b, Capacitances.nameplate(plans.get(j).bank())));
                assertEquals(i == j, same, plans.get(i) + " and " + plans.get(j));
            }
        }
    }
}
