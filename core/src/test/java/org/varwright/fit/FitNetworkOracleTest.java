package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Banks;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;

/** FIT-2, FIT-7: the search's own arithmetic against the phasor network, for every kind of bank. */
class FitNetworkOracleTest {
    /** Without reactors the two agree to rounding; with them the search's rise is that of nameplate legs (here within 3 % of each other). */
    @Test
    void everySignalAndVoltageAgreesWithTheNetwork() {
        int compared = 0;
        for (int round = 0; round < 10; round++) {
            for (Banks.Plan plan : Banks.everyKind()) {
                Random random = new Random(7L * round + 3);
                Bank bank = plan.bank();
                Stage stage = bank.stages().getFirst();
                StageModel model = StageModel.of(bank, stage);
                double[] sums = new double[model.groupCount];
                Capacitances all = Capacitances.nameplate(bank);
                for (UnitPosition position : stage.positions()) {
                    double farads = stage.unit().capacitanceFarads() * (1.0 + 0.1 * random.nextDouble());
                    sums[model.groupOf(position)] += farads;
                    all = all.with(position, farads);
                }
                StageState state = new StageState(model, sums);
                Solution.Solved solved = (Solution.Solved) Network.of(bank, stage, all, Supply.nominal(bank.system()))
                        .healthy();
                double relative = plan.reactor().isPresent() ? 0.03 : 1e-9;
                String what = plan + " round " + round;
                assertEquals(
                        solved.highestUnitPerRated(), state.highestUnitPerRated(), relative, what + " highest voltage");
                for (int i = 0; i < bank.protection().size(); i++) {
                    UnbalanceSignal signal = model.signals.get(i);
                    double base = UnbalanceSignal.base(bank, stage, signal.kind()) * model.rise(signal.kind());
                    double search = Math.sqrt(state.squared(signal.kind())) * base;
                    var senses = bank.protection().get(i).senses();
                    double network = solved.sensors().stream()
                            .filter(s -> s.senses() == senses)
                            .mapToDouble(s -> s.primary().magnitude())
                            .max()
                            .orElseThrow();
                    assertEquals(network, search, relative * Math.max(network, base * 1e-3), what + " " + senses);
                    compared++;
                }
            }
        }
        assertTrue(compared > 500, "compared " + compared);
    }

    /** FIT-3: evaluating one more unit without touching the state gives what touching it gives. */
    @Test
    void trialEqualsChange() {
        for (Banks.Plan plan : Banks.everyKind()) {
            Random random = new Random(11);
            Bank bank = plan.bank();
            StageModel model = StageModel.of(bank, bank.stages().getFirst());
            double[] sums = new double[model.groupCount];
            for (int g = 0; g < sums.length; g++) {
                sums[g] = 1e-6 * (1.0 + random.nextDouble());
            }
            for (UnbalanceSignal first : model.signals) {
                StageModel one = StageModel.of(
                        plan.protection().isEmpty()
                                ? bank
                                : plan.sensing(plan.protection().get(model.signals.indexOf(first)))
                                        .bank(),
                        bank.stages().getFirst());
                StageState state = new StageState(one, sums);
                for (int g = 0; g < sums.length; g++) {
                    double more = 1e-6 * random.nextDouble();
                    state.aim(g);
                    double trial = state.squaredWith(more);
                    double[] changed = sums.clone();
                    changed[g] += more;
                    double real = new StageState(one, changed).squared();
                    assertEquals(real, trial, 1e-12 * Math.max(real, 1e-6), plan + " group " + g);
                    assertEquals(List.of(sums[g]), List.of(state.sums[g]), "nothing is changed by the trial");
                }
            }
        }
    }

    /** FIT-3: the bound that spares evaluations is below every value in its range, and not far below where nothing else differs. */
    @Test
    void boundIsBelowEveryValue() {
        int useful = 0;
        for (int round = 0; round < 30; round++) {
            for (Banks.Plan plan : Banks.everyKind()) {
                Random random = new Random(100L * round + 1);
                for (int i = 0; i < Math.max(1, plan.protection().size()); i++) {
                    Bank bank = plan.protection().isEmpty()
                            ? plan.bank()
                            : plan.sensing(plan.protection().get(i)).bank();
                    StageModel model = StageModel.of(bank, bank.stages().getFirst());
                    double[] sums = new double[model.groupCount];
                    for (int g = 0; g < sums.length; g++) {
                        sums[g] = 1e-5 * (1.0 + (round % 2 == 0 ? 0.05 : 2.0) * random.nextDouble());
                    }
                    StageState state = new StageState(model, sums);
                    int group = random.nextInt(sums.length);
                    double fewest = 1e-5 * random.nextDouble();
                    double most = fewest + 1e-6 * random.nextDouble();
                    state.aim(group);
                    double bound = new SquaredBound(model).least(state, fewest, most);
                    double least = Double.MAX_VALUE;
                    for (int k = 0; k <= 200; k++) {
                        least = Math.min(least, state.squaredWith(fewest + (most - fewest) * k / 200.0));
                    }
                    assertTrue(
                            bound <= least * (1.0 + 1e-9) + 1e-24,
                            plan + " round " + round + " " + bound + " " + least);
                    useful += bound > 0.5 * least ? 1 : 0;
                }
            }
        }
        assertTrue(useful > 1000, "useful " + useful);
    }
}
