package org.varwright.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.quantity.Complex;

/** Laws that hold for every bank, tried on seeded random ones. A failure prints its seed. */
class NetworkLawTest {
    private static final double RELATIVE = 1e-9;

    private interface Law {
        void holds(Banks.Plan plan, Bank bank, Random random, String what);
    }

    private static void everywhere(int rounds, Law law) {
        for (int round = 0; round < rounds; round++) {
            List<Banks.Plan> plans = Banks.everyKind();
            for (int k = 0; k < plans.size(); k++) {
                long seed = 1000L * round + k;
                Banks.Plan plan = plans.get(k);
                law.holds(plan, plan.bank(), new Random(seed), plan + " seed " + seed);
            }
        }
    }

    private static Supply unequal(Random random) {
        return new Supply.Measured(
                Complex.polar(8000.0 + 300.0 * random.nextDouble(), 0.0),
                Complex.polar(8000.0, -120.0 + 2.0 * random.nextDouble()),
                Complex.polar(8000.0 - 300.0 * random.nextDouble(), 119.0));
    }

    private static Solution.Solved solved(Solution solution, String what) {
        return assertInstanceOf(Solution.Solved.class, solution, what);
    }

    /** NET-6: a failure as a low-rank change gives what a new factorization gives. */
    @Test
    void lowRankChangeEqualsNewFactorization() {
        int[] compared = {0, 0};
        everywhere(12, (plan, bank, random, what) -> {
            Supply supply = random.nextBoolean() ? unequal(random) : new Supply.Thevenin(13800.0, 280e6, 11.0);
            Network network = Network.of(
                    bank, bank.stages(), Banks.scattered(bank, random, 0.05), supply, random.nextInt(2) * 0.002);
            List<Failure> failures = Banks.someFailures(bank, random);
            String named = what + " " + failures;
            Solution fast = network.solve(failures);
            Solution slow = network.solveAfresh(failures);
            if (slow instanceof Solution.Solved expected) {
                same(expected, solved(fast, named), named);
                compared[0]++;
            } else {
                assertInstanceOf(Solution.Singular.class, fast, named);
                compared[1]++;
            }
        });
        assertTrue(compared[0] > 400 && compared[1] > 5, compared[0] + " solved, " + compared[1] + " singular");
    }

    /** NET-9: a sweep, asked one failure after another, in one piece and in two, reads what a new factorization gives. */
    @Test
    void sweepEqualsNewFactorization() {
        int[] compared = {0, 0, 0};
        everywhere(6, (plan, bank, random, what) -> {
            Supply supply = random.nextBoolean() ? unequal(random) : new Supply.Thevenin(13800.0, 280e6, 11.0);
            Network network = Network.of(
                    bank, bank.stages(), Banks.scattered(bank, random, 0.05), supply, random.nextInt(2) * 0.002);
            Sweep sweep = network.sweep().orElseThrow();
            Solution.Solved healthy = solved(network.healthy(), what);
            for (int i = 0; i < 6; i++) {
                List<Failure> failures = Banks.someFailures(bank, random);
                String named = what + " " + failures;
                int cut = random.nextInt(failures.size() + 1);
                boolean isSolved = random.nextBoolean()
                        ? sweep.set(sweep.fault(failures))
                        : sweep.set(
                                sweep.fault(failures.subList(0, cut)),
                                sweep.fault(failures.subList(cut, failures.size())));
                if (network.solveAfresh(failures) instanceof Solution.Solved expected) {
                    assertTrue(isSolved, named);
                    reads(sweep, expected, healthy, named);
                    compared[0]++;
                    compared[2] += sweep.isLegLost() ? 1 : 0;
                } else {
                    assertFalse(isSolved, named);
                    compared[1]++;
                }
            }
        });
        assertTrue(
                compared[0] > 1000 && compared[1] > 10 && compared[2] > 50,
                compared[0] + " solved, " + compared[1] + " singular, " + compared[2] + " with a leg lost");
    }

    private static void reads(Sweep sweep, Solution.Solved expected, Solution.Solved healthy, String what) {
        double amperes = expected.lines().stream()
                .mapToDouble(l -> l.amperes().magnitude())
                .reduce(100.0, Math::max);
        for (int g = 0; g < expected.groups().size(); g++) {
            near(expected.groups().get(g).volts(), sweep.groupVolts(g), 8000.0, what);
        }
        for (int p = 0; p < 3; p++) {
            near(expected.lines().get(p).amperes(), sweep.line(p), amperes, what);
        }
        List<Solution.SensorValue> sensors = sweep.sensorValues();
        assertEquals(expected.sensors().size(), sensors.size(), what);
        for (int s = 0; s < sensors.size(); s++) {
            Solution.SensorValue sensor = expected.sensors().get(s);
            assertEquals(sensor.name(), sensors.get(s).name(), what);
            double scale = sensor.senses().unit().equals("A") ? amperes : 8000.0;
            near(sensor.primary(), sensors.get(s).primary(), scale, what + " " + sensor.name());
        }
        assertEquals(expected.highestUnitPerRated(), sweep.highestUnitPerRated(), RELATIVE, what);
        assertEquals(expected.highestSectionPerRated(), sweep.highestSectionPerRated(), 10 * RELATIVE, what);
        assertEquals(expected.highestGroupPerHealthy(), sweep.highestGroupPerHealthy(), RELATIVE, what);
        assertEquals(expected.stages().getFirst().vars(), sweep.vars(), 8000.0 * amperes * RELATIVE, what);
        boolean isLost = false;
        for (int l = 0; l < expected.legs().size(); l++) {
            isLost |= expected.legs().get(l).amperes().magnitude()
                    < 1e-6 * healthy.legs().get(l).amperes().magnitude();
        }
        assertEquals(isLost, sweep.isLegLost(), what);
    }

    /** NET-7: leg by leg gives what unit by unit gives. */
    @Test
    void legModelEqualsNetwork() {
        everywhere(6, (plan, bank, random, what) -> {
            Stage stage = bank.stages().getFirst();
            Supply supply = random.nextBoolean() ? unequal(random) : new Supply.Thevenin(13800.0, 280e6, 11.0);
            Capacitances values = Banks.scattered(bank, random, 0.3);
            Solution.Solved full =
                    solved(Network.of(bank, stage, values, supply).healthy(), what);
            LegModel model = LegModel.of(bank, stage, supply);
            LegState legs = model.evaluate(values);
            for (int l = 0; l < full.legs().size(); l++) {
                assertEquals(full.legs().get(l).leg(), model.legs().get(l));
                near(full.legs().get(l).volts(), legs.legVolts().get(l), 8000.0, what);
                near(full.legs().get(l).amperes(), legs.legAmperes().get(l), 100.0, what);
            }
            for (int p = 0; p < 3; p++) {
                near(full.lines().get(p).amperes(), legs.lineAmperes().get(p), 100.0, what);
            }
            assertEquals(full.sensors().size(), legs.sensors().size(), what);
            for (int s = 0; s < full.sensors().size(); s++) {
                assertEquals(full.sensors().get(s).name(), model.sensorNames().get(s));
                near(
                        full.sensors().get(s).primary(),
                        legs.sensors().get(s),
                        8000.0,
                        what + model.sensorNames().get(s));
            }
            if (!full.neutrals().isEmpty()) {
                near(full.neutrals().getFirst().volts(), legs.neutralVolts(), 8000.0, what);
            }
            assertEquals(full.highestUnitPerRated(), legs.highestGroupPerRated(), RELATIVE, what);
        });
    }

    /** A unit that is out reads in the leg model as a group with less capacitance. */
    @Test
    void legModelFollowsUnitsOut() {
        everywhere(4, (plan, bank, random, what) -> {
            Stage stage = bank.stages().getFirst();
            if (stage.hasThreePhaseUnits()) {
                return;
            }
            Supply supply = unequal(random);
            Capacitances values = Banks.scattered(bank, random, 0.05);
            UnitPosition out =
                    stage.positions().get(random.nextInt(stage.positions().size()));
            LegModel model = LegModel.of(bank, stage, supply);
            double[][] groups = model.groupFarads(values);
            double[] row = groups[stage.legs().indexOf(out.leg())];
            double left = row[model.slot(out)] - values.farads(UnitBranch.of(out));
            row[model.slot(out)] = left < 1e-12 ? 0.0 : left;
            Solution.Solved full =
                    solved(Network.of(bank, stage, values, supply).solve(List.of(new Failure.UnitOut(out))), what);
            LegState legs = model.evaluate(groups);
            for (int s = 0; s < full.sensors().size(); s++) {
                boolean tapOfDeadLeg =
                        full.sensors().get(s).senses() == org.varwright.bank.Protection.Senses.PHASE_VOLTAGE
                                && left < 1e-12;
                if (!tapOfDeadLeg) {
                    near(full.sensors().get(s).primary(), legs.sensors().get(s), 8000.0, what + " " + out.name());
                }
            }
            for (int p = 0; p < 3; p++) {
                near(full.lines().get(p).amperes(), legs.lineAmperes().get(p), 100.0, what);
            }
        });
    }

    /** Voltages double, currents double; capacitances double, currents double and voltages stay (without reactors). */
    @Test
    void scales() {
        everywhere(2, (plan, bank, random, what) -> {
            List<Failure> failures = List.of(new Failure.UnitOut(Circuit.branchesOf(
                            bank.stages().getFirst(), bank.positions().getFirst())
                    .getFirst()));
            Capacitances values = Banks.scattered(bank, random, 0.05);
            Solution.Solved one = solved(
                    Network.of(bank, bank.stages().getFirst(), values, new Supply.Balanced(13800.0))
                            .solve(failures),
                    what);
            Solution.Solved two = solved(
                    Network.of(bank, bank.stages().getFirst(), values, new Supply.Balanced(27600.0))
                            .solve(failures),
                    what);
            for (int u = 0; u < one.units().size(); u++) {
                near(one.units().get(u).volts().times(2.0), two.units().get(u).volts(), 16000.0, what);
            }
            if (plan.reactor().isPresent()) {
                return;
            }
            Solution.Solved more = solved(
                    Network.of(bank, bank.stages().getFirst(), values.times(2.0), new Supply.Balanced(13800.0))
                            .solve(failures),
                    what);
            for (int u = 0; u < one.units().size(); u++) {
                near(one.units().get(u).volts(), more.units().get(u).volts(), 8000.0, what);
                near(
                        one.units().get(u).amperes().times(2.0),
                        more.units().get(u).amperes(),
                        100.0,
                        what);
            }
            assertEquals(
                    2.0 * one.stages().getFirst().vars(),
                    more.stages().getFirst().vars(),
                    1e-3,
                    what);
        });
    }

    /** The answer to three voltages is the sum of the answers to each alone. */
    @Test
    void superposes() {
        everywhere(2, (plan, bank, random, what) -> {
            Capacitances values = Banks.scattered(bank, random, 0.05);
            Complex a = Complex.polar(8000.0, 3.0);
            Complex b = Complex.polar(7700.0, -117.0);
            Complex c = Complex.polar(8200.0, 125.0);
            Complex o = Complex.ZERO;
            List<Solution.Solved> parts = new ArrayList<>();
            for (Supply supply : List.of(
                    new Supply.Measured(a, b, c),
                    new Supply.Measured(a, o, o),
                    new Supply.Measured(o, b, o),
                    new Supply.Measured(o, o, c))) {
                parts.add(solved(
                        Network.of(bank, bank.stages().getFirst(), values, supply)
                                .healthy(),
                        what));
            }
            for (int u = 0; u < parts.getFirst().units().size(); u++) {
                Complex sum = Complex.ZERO;
                for (int k = 1; k < 4; k++) {
                    sum = sum.plus(parts.get(k).units().get(u).volts());
                }
                near(parts.getFirst().units().get(u).volts(), sum, 8000.0, what);
            }
        });
    }

    /** Which of the units of one group is out does not matter to the sensors; nor in which order the failures are named. */
    @Test
    void placesWithinAGroupAreAlike() {
        everywhere(2, (plan, bank, random, what) -> {
            Network network = Network.of(
                    bank, bank.stages().getFirst(), Capacitances.nameplate(bank), new Supply.Balanced(13800.0));
            Map<String, Solution.Solved> first = new HashMap<>();
            for (UnitBranch at : network.branches()) {
                if (!at.leg().isEmpty()) {
                    continue;
                }
                String group = at.at().leg() + at.at().string() + "/" + at.at().group();
                Solution.Solved now = solved(network.solve(List.of(new Failure.UnitOut(at))), what);
                Solution.Solved before = first.putIfAbsent(group, now);
                for (int s = 0; before != null && s < now.sensors().size(); s++) {
                    near(before.sensors().get(s).primary(), now.sensors().get(s).primary(), 8000.0, what);
                }
            }
            List<Failure> failures = new ArrayList<>(Banks.someFailures(bank, random));
            Solution forward = network.solve(failures);
            Collections.reverse(failures);
            Solution backward = network.solve(failures);
            if (forward instanceof Solution.Solved f) {
                same(f, solved(backward, what), what);
            }
        });
    }

    /** With balanced voltages, the same failure one phase on turns every phasor by 120°: the sensor's magnitude stays. */
    @Test
    void phasesAreAlike() {
        for (Connection connection : Connection.values()) {
            Bank bank = Banks.plan(connection, 1, 2, 3).bank();
            Stage stage = bank.stages().getFirst();
            Network network = Network.of(bank, stage, Capacitances.nameplate(bank), new Supply.Balanced(13800.0));
            int step = stage.legs().size() / (connection.isBridge() ? 3 : connection.isDoubleWye() ? 2 : 1);
            int next = connection.isBridge() ? 4 : 1;
            List<UnitPosition> positions = stage.positions();
            String leg = stage.legs().get(0);
            String other = stage.legs().get(next);
            assertTrue(step > 0);
            UnitPosition a = positions.stream()
                    .filter(p -> p.leg().equals(leg))
                    .findFirst()
                    .orElseThrow();
            UnitPosition b = positions.stream()
                    .filter(p -> p.leg().equals(other))
                    .findFirst()
                    .orElseThrow();
            Solution.Solved atA = solved(network.solve(List.of(new Failure.UnitOut(a))), connection.code());
            Solution.Solved atB = solved(network.solve(List.of(new Failure.UnitOut(b))), connection.code());
            near(
                    atA.unit(UnitBranch.of(a)).orElseThrow().volts().times(Complex.polar(1.0, -120.0)),
                    atB.unit(UnitBranch.of(b)).orElseThrow().volts(),
                    8000.0,
                    connection.code());
            for (int s = 0; s < atA.sensors().size(); s++) {
                if (atA.sensors().get(s).place().isEmpty()) {
                    near(
                            atA.sensors().get(s).primary().times(Complex.polar(1.0, -120.0)),
                            atB.sensors().get(s).primary(),
                            8000.0,
                            connection.code());
                }
            }
        }
    }

    /** Kirchhoff: line currents of an ungrounded stage add up to nothing. */
    @Test
    void ungroundedCurrentsAddUpToNothing() {
        everywhere(3, (plan, bank, random, what) -> {
            if (plan.connection().isGrounded()) {
                return;
            }
            Network network =
                    Network.of(bank, bank.stages().getFirst(), Banks.scattered(bank, random, 0.1), unequal(random));
            if (network.solve(Banks.someFailures(bank, random)) instanceof Solution.Solved s) {
                Complex sum = Complex.ZERO;
                for (Solution.LineValue line : s.lines()) {
                    sum = sum.plus(line.amperes());
                }
                near(Complex.ZERO, sum, 1000.0, what);
            }
        });
    }

    private static void same(Solution.Solved expected, Solution.Solved actual, String what) {
        double amperes = Math.max(
                100.0,
                expected.lines().stream()
                        .mapToDouble(l -> l.amperes().magnitude())
                        .max()
                        .orElseThrow());
        for (int u = 0; u < expected.units().size(); u++) {
            near(expected.units().get(u).volts(), actual.units().get(u).volts(), 8000.0, what);
            near(expected.units().get(u).amperes(), actual.units().get(u).amperes(), amperes, what);
            assertEquals(
                    expected.units().get(u).sectionPerRated(),
                    actual.units().get(u).sectionPerRated(),
                    RELATIVE,
                    what);
        }
        for (int l = 0; l < expected.legs().size(); l++) {
            near(expected.legs().get(l).amperes(), actual.legs().get(l).amperes(), amperes, what);
        }
        for (int p = 0; p < expected.lines().size(); p++) {
            near(expected.lines().get(p).amperes(), actual.lines().get(p).amperes(), amperes, what);
        }
        for (int s = 0; s < expected.sensors().size(); s++) {
            near(expected.sensors().get(s).primary(), actual.sensors().get(s).primary(), 8000.0 + amperes, what);
        }
        for (int n = 0; n < expected.neutrals().size(); n++) {
            near(expected.neutrals().get(n).volts(), actual.neutrals().get(n).volts(), 8000.0, what);
        }
    }

    private static void near(Complex expected, Complex actual, double scale, String what) {
        assertEquals(
                0.0, expected.minus(actual).magnitude(), scale * RELATIVE, () -> what + ": " + expected + " " + actual);
    }
}
