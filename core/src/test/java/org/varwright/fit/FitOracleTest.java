package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Banks;
import org.varwright.network.LegModel;
import org.varwright.network.LegState;
import org.varwright.network.Supply;

/** FIT-3 against a naive twin: every unit and spare into every position, one by one, valued by the leg model of the network. */
class FitOracleTest {
    /** The naive twin. It knows positions and units only: no classes, no groups, no pruning but the count of lifts. */
    private static final class Naive {
        final FitInput input;
        final LegModel model;
        final double alarm;
        final int mostExtra;
        final boolean least;
        final List<Object> taken = new ArrayList<>();
        final Map<UnitPosition, Double> farads = new HashMap<>();
        double bestExcess = Double.MAX_VALUE;
        double bestSignal = Double.MAX_VALUE;
        int bestExtra = Integer.MAX_VALUE;

        Naive(FitInput input, double alarm, int mostExtra, boolean least) {
            this.input = input;
            this.alarm = alarm;
            this.mostExtra = mostExtra;
            this.least = least;
            this.model = LegModel.of(
                    input.bank(),
                    input.bank().stages().getFirst(),
                    Supply.nominal(input.bank().system()));
            place(0, 0, 0, 0);
        }

        /** A kept unit that is not where it was costs a lift at least: the only thing that cuts the enumeration short. */
        private void place(int at, int moved, int own, int displaced) {
            if (displaced > mostExtra) {
                return;
            }
            if (at == input.units().size()) {
                value(moved, own);
                return;
            }
            Fitted here = input.units().get(at);
            int gone = here.role() == Fitted.Role.KEPT ? 1 : 0;
            for (Fitted unit : input.units()) {
                if (unit.role() == Fitted.Role.KEPT && !taken.contains(unit)) {
                    taken.add(unit);
                    farads.put(here.at(), unit.capacitanceFarads());
                    place(
                            at + 1,
                            unit.equals(here) ? moved : moved + 1,
                            own + 1,
                            unit.equals(here) ? displaced : displaced + gone);
                    taken.removeLast();
                }
            }
            for (Spare spare : input.spares()) {
                if (!taken.contains(spare)) {
                    taken.add(spare);
                    farads.put(here.at(), spare.capacitanceFarads().orElseThrow());
                    place(at + 1, moved, own, displaced + gone);
                    taken.removeLast();
                }
            }
        }

        private void value(int moved, int own) {
            long kept = input.units().stream()
                    .filter(u -> u.role() == Fitted.Role.KEPT)
                    .count();
            int extra = moved + 2 * (int) (kept - own);
            if (extra > mostExtra) {
                return;
            }
            double[][] groups = new double[model.legs().size()][];
            for (int l = 0; l < groups.length; l++) {
                LegLayout layout =
                        input.bank().stages().getFirst().layoutOf(model.legs().get(l));
                groups[l] = new double[layout.strings() * layout.groups()];
            }
            farads.forEach((at, c) -> groups[model.legs().indexOf(at.leg())][model.slot(at)] += c);
            LegState state = model.evaluate(groups);
            double signal = state.largestSensor();
            double excess =
                    Math.max(0.0, state.highestGroupPerRated() / 1.10 - 1.0) + Math.max(0.0, signal / alarm - 1.0);
            excess = excess < 1e-12 ? 0.0 : excess;
            boolean better;
            if (Math.abs(excess - bestExcess) > 1e-9 * Math.max(excess, bestExcess)) {
                better = excess < bestExcess;
            } else if (!least && extra != bestExtra) {
                better = extra < bestExtra;
            } else {
                better = signal < bestSignal - 1e-9;
            }
            if (better) {
                bestExcess = excess;
                bestSignal = signal;
                bestExtra = extra;
            }
        }
    }

    private static int compare(
            Banks.Plan plan, long seed, int condemned, int spares, FitOptions.Aim aim, double alarmShare) {
        Random random = new Random(seed);
        Banks.Plan one = plan.protection().isEmpty()
                ? plan
                : plan.sensing(plan.protection().getFirst());
        Bank bare = one.bank();
        FitOptions options = new FitOptions(List.of(), List.of(), List.of(), aim, 2);
        FitInput loose = FitBanks.random(bare, random, condemned, spares, 0.08, options);
        Naive free = new Naive(loose, Double.MAX_VALUE, 0, false);
        double alarm = free.bestSignal * alarmShare;
        Bank bank = FitBanks.withAlarm(bare, alarm);
        FitInput input = FitBanks.input(bank, loose.units(), loose.spares(), options);
        Naive naive = new Naive(input, alarm, 2, aim == FitOptions.Aim.LEAST_UNBALANCE);
        FitResult result = Fit.plan(input);
        String what = plan.connection() + " " + plan.layout() + " seed " + seed + " " + result.proof();
        double signal = result.after().sensors().stream()
                .mapToDouble(s -> s.primary().magnitude())
                .max()
                .orElseThrow();
        if (naive.bestExcess > 0.0) {
            assertTrue(!result.provenBest() || aim == FitOptions.Aim.LEAST_UNBALANCE, what);
            return 0;
        }
        assertTrue(result.provenBest(), what);
        assertEquals(FitResult.Outcome.COMPLETE, result.outcome(), what);
        assertEquals(naive.bestSignal, signal, 1e-8, what);
        if (aim == FitOptions.Aim.FEWEST_LIFTS) {
            assertEquals(2 * condemned + naive.bestExtra, result.moves().size(), what + " lifts");
        }
        return 1;
    }

    private static List<Banks.Plan> small() {
        List<Banks.Plan> plans = new ArrayList<>();
        for (Connection connection : Connection.values()) {
            if (connection == Connection.DELTA) {
                continue;
            }
            plans.add(Banks.plan(connection, 1, 1, connection.isBridge() || connection.isDoubleWye() ? 1 : 2));
            plans.add(Banks.plan(connection, 1, connection.isBridge() ? 1 : 2, 1));
            if (!connection.isBridge() && !connection.isDoubleWye()) {
                plans.add(Banks.plan(connection, 2, 2, 1));
            }
        }
        plans.add(Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 1, 2).second(new LegLayout(1, 1, 1)));
        return plans;
    }

    /** Alarms at 1.2, 0.7 and 0.3 of what the best plan without extra lifts leaves: sometimes none, sometimes one or two extra lifts are needed. */
    @Test
    void fewestLiftsThenLeastUnbalance() {
        int compared = 0;
        int tried = 0;
        for (Banks.Plan plan : small()) {
            for (int round = 0; round < 2; round++) {
                for (double share : new double[] {1.2, 0.7, 0.3}) {
                    compared += compare(plan, 100L * round + 17, 1 + round % 2, 3, FitOptions.Aim.FEWEST_LIFTS, share);
                    tried++;
                }
            }
        }
        assertTrue(compared > tried / 2, compared + " of " + tried + " had a plan inside the limits");
    }

    @Test
    void leastUnbalance() {
        int compared = 0;
        for (Banks.Plan plan : small()) {
            for (int round = 0; round < 3; round++) {
                compared += compare(plan, 31L * round + 5, round % 3, 3, FitOptions.Aim.LEAST_UNBALANCE, 1.2);
            }
        }
        assertTrue(compared > 20, "compared " + compared);
    }

    /** A delta without a sensor: the largest deviation of a leg from the mean. */
    @Test
    void deltaWithoutSensor() {
        for (long seed = 0; seed < 20; seed++) {
            Bank bank = Banks.plan(Connection.DELTA, 1, 1, 2).sensing().bank();
            FitInput input = FitBanks.random(bank, new Random(seed), 1, 3, 0.08, FitOptions.USUAL);
            UnitPosition condemned = input.units().stream()
                    .filter(u -> u.role() == Fitted.Role.CONDEMNED)
                    .map(Fitted::at)
                    .findFirst()
                    .orElseThrow();
            double least = Double.MAX_VALUE;
            Optional<String> best = Optional.empty();
            for (Spare spare : input.spares()) {
                double[] legs = new double[3];
                for (Fitted unit : input.units()) {
                    int leg = List.of("AB", "BC", "CA").indexOf(unit.at().leg());
                    legs[leg] += unit.at().equals(condemned)
                            ? spare.capacitanceFarads().orElseThrow()
                            : unit.capacitanceFarads();
                }
                double mean = (legs[0] + legs[1] + legs[2]) / 3.0;
                double worst = 0.0;
                for (double c : legs) {
                    worst = Math.max(worst, Math.abs(c - mean) / mean);
                }
                if (worst < least) {
                    least = worst;
                    best = Optional.of(spare.serial());
                }
            }
            FitResult result = Fit.plan(input);
            assertEquals(least, result.unbalance(), 1e-12, "seed " + seed);
            assertEquals(best.orElseThrow(), result.moves().getLast().serial(), "seed " + seed);
        }
    }
}
