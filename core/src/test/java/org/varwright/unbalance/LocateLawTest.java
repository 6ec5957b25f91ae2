package org.varwright.unbalance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Banks;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.network.UnitBranch;

/** UNB-6: what failed in the network is found again from what the network shows. A failure prints its seed. */
class LocateLawTest {
    private record Made(Failure failure, String kind, int count) {}

    private static Made make(UnitBranch at, Random random) {
        int k = 1 + random.nextInt(2);
        return random.nextBoolean()
                ? new Made(new Failure.UnitOut(at), "unit-out", 1)
                : new Made(new Failure.SectionsShorted(at, k), "sections-shorted", k);
    }

    @Test
    void whatFailedIsAmongTheCandidates() {
        int found = 0;
        int alone = 0;
        List<Banks.Plan> plans = Banks.everyKind();
        for (int round = 0; round < 3; round++) {
            for (int p = 0; p < plans.size(); p++) {
                long seed = 100L * round + p;
                Random random = new Random(seed);
                Bank bank = plans.get(p).bank();
                Stage stage = bank.stages().getFirst();
                if (stage.hasThreePhaseUnits()) {
                    continue;
                }
                Map<UnitPosition, Double> readings = new HashMap<>();
                bank.positions()
                        .forEach(u -> readings.put(
                                u,
                                bank.unitTypes().getFirst().capacitanceFarads()
                                        * (0.995 + 0.01 * random.nextDouble())));
                Supply supply = new Supply.Balanced(13800.0);
                Network network =
                        Network.of(bank, stage, Capacitances.nameplate(bank).with(readings), supply);
                Solution.Solved healthy = (Solution.Solved) network.healthy();
                UnitPosition at =
                        bank.positions().get(random.nextInt(bank.positions().size()));
                Made made = make(UnitBranch.of(at), random);
                Solution.Solved failed = (Solution.Solved) network.solve(List.of(made.failure()));
                int sensor = loudest(failed, healthy);
                if (sensor < 0) {
                    continue;
                }
                Solution.SensorValue value = failed.sensors().get(sensor);
                Map<String, Double> lines = new HashMap<>();
                failed.lines().forEach(l -> lines.put(l.phase(), l.amperes().magnitude()));
                Sighting sighting = new Sighting(
                        value.name(),
                        value.primary().magnitude(),
                        true,
                        OptionalDouble.of(value.primary().degrees()),
                        0.03,
                        Optional.of(healthy.sensors().get(sensor).primary()),
                        lines);
                Locate locate = Locator.locate(bank, readings, supply, Assumptions.USUAL, sighting);
                String what = plans.get(p) + " seed " + seed + " " + made + "\n" + LocateText.of(locate);
                assertTrue(locate.isExplained(), what);
                Optional<Candidate> mine = locate.candidates().stream()
                        .filter(c -> c.parts().size() == 1
                                && isIn(c.parts().getFirst().place(), stage.name() + "/" + at.leg(), at)
                                && c.parts().getFirst().kind().equals(made.kind())
                                && c.parts().getFirst().count() == made.count())
                        .findFirst();
                assertTrue(mine.isPresent(), what);
                found++;
                alone += locate.candidates().getFirst().equals(mine.get()) ? 1 : 0;
            }
        }
        assertTrue(found > 60, "found: " + found);
        assertTrue(alone > found / 2, "first among " + found + ": " + alone);
    }

    /** The leg, or the leg with the groups that look alike, of which at most three are named. */
    private static boolean isIn(String place, String leg, UnitPosition at) {
        String group = "s" + at.string() + "g" + at.group();
        return place.equals(leg) || (place.startsWith(leg + " (") && (place.contains(group) || place.contains("…")));
    }

    /** Index of the sensor that the failure moves most against what drifts by itself; −1 where none moves enough to be located. */
    private static int loudest(Solution.Solved failed, Solution.Solved healthy) {
        int best = -1;
        double most = 40.0;
        for (int s = 0; s < failed.sensors().size(); s++) {
            double change = failed.sensors()
                    .get(s)
                    .primary()
                    .minus(healthy.sensors().get(s).primary())
                    .magnitude();
            double scale = failed.sensors().get(s).senses().unit().equals("V") ? 1.0 : 30.0;
            if (change * scale > most) {
                most = change * scale;
                best = s;
            }
        }
        return best;
    }

    /** Probabilities of what is shown add up to no more than 1 and are in order. */
    @Test
    void probabilitiesAreProbabilities() {
        for (Banks.Plan plan : Banks.everyKind()) {
            Bank bank = plan.bank();
            Solution.Solved healthy = (Solution.Solved) Network.of(
                            bank, bank.stages().getFirst(), Capacitances.nameplate(bank), new Supply.Balanced(13800.0))
                    .healthy();
            if (healthy.sensors().isEmpty()) {
                continue;
            }
            Locate locate = Locator.locate(
                    bank,
                    Map.of(),
                    new Supply.Balanced(13800.0),
                    Assumptions.USUAL,
                    new Sighting(
                            healthy.sensors().getFirst().name(),
                            20.0,
                            true,
                            OptionalDouble.empty(),
                            0.1,
                            Optional.empty(),
                            Map.of()));
            List<Double> p = new ArrayList<>();
            locate.candidates().forEach(c -> p.add(c.probability()));
            double sum = p.stream().mapToDouble(Double::doubleValue).sum();
            assertTrue(sum <= 1.0 + 1e-9, plan.toString());
            for (int i = 1; i < p.size(); i++) {
                assertTrue(p.get(i - 1) >= p.get(i) - 1e-6);
            }
            assertEquals(
                    locate.candidates(),
                    Locator.locate(bank, Map.of(), new Supply.Balanced(13800.0), Assumptions.USUAL, locate.sighting())
                            .candidates());
        }
    }
}
