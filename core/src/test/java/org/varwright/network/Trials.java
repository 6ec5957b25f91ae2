package org.varwright.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.quantity.Complex;

/** Questions to the network with its answers, and how an oracle's are held against them. */
final class Trials {
    private Trials() {}

    /** Everything that either oracle can be asked. */
    interface Oracle {
        Complex volts(String node);

        Complex amperes(String part);
    }

    /** One question to an oracle, with the network's answer. */
    record Trial(String name, Bank bank, Solution.Solved solved, Netlist list, List<Failure> failures) {}

    static List<Trial> of(long seed, int each) {
        List<Trial> trials = new ArrayList<>();
        Random random = new Random(seed);
        for (Banks.Plan plan : Banks.everyKind()) {
            Bank bank = plan.bank();
            for (int i = 0; i <= each; i++) {
                Supply supply = i % 2 == 0
                        ? new Supply.Measured(
                                Complex.polar(8000 + 200 * random.nextDouble(), 0),
                                Complex.polar(8000 - 200 * random.nextDouble(), -119),
                                Complex.polar(8000, 121.5))
                        : new Supply.Thevenin(13800.0, 280e6, 11.0);
                Capacitances values = Banks.scattered(bank, random, 0.05);
                List<Failure> failures = i == 0 ? List.of() : Banks.someFailures(bank, random);
                Network network = Network.of(bank, bank.stages().getFirst(), values, supply);
                if (network.solve(failures) instanceof Solution.Solved solved && !shortsTwice(failures)) {
                    String name = plan.connection() + " " + plan.layout() + " " + plan.reactor() + " " + failures
                            + " seed " + seed;
                    trials.add(new Trial(name, bank, solved, netlist(bank, supply, values, failures), failures));
                } else if (i == 0) {
                    fail("a healthy bank has a solution: " + plan);
                }
            }
        }
        return trials;
    }

    /** Two shorts between the same nodes share their current in no known way: neither oracle can tell. */
    private static boolean shortsTwice(List<Failure> failures) {
        return failures.stream().filter(f -> f instanceof Failure.UnitShorted).count() > 1;
    }

    /** Effective capacitances by the formulas of NET-3, for a unit of 4 sections of 10 elements. */
    static Netlist netlist(Bank bank, Supply supply, Capacitances values, List<Failure> failures) {
        Map<UnitBranch, Double> farads = new HashMap<>();
        bank.stages()
                .getFirst()
                .positions()
                .forEach(p ->
                        Circuit.branchesOf(bank.stages().getFirst(), p).forEach(b -> farads.put(b, values.farads(b))));
        Set<UnitBranch> shorted = new HashSet<>();
        Set<String> open = new HashSet<>();
        Map<UnitBranch, int[]> inside = new HashMap<>();
        for (Failure failure : failures) {
            switch (failure) {
                case Failure.UnitOut f -> farads.put(f.at(), 0.0);
                case Failure.UnitShorted f -> shorted.add(f.at());
                case Failure.SectionsShorted f -> inside.computeIfAbsent(f.at(), b -> new int[2])[0] += f.sections();
                case Failure.ElementsOut f -> inside.computeIfAbsent(f.at(), b -> new int[2])[1] += f.elements();
                case Failure.PhaseOpen f -> open.add(f.phase());
            }
        }
        inside.forEach((branch, kn) -> {
            if (kn[0] >= 4) {
                shorted.add(branch);
            } else if (kn[1] >= 10) {
                farads.put(branch, 0.0);
            } else {
                // 1/C in units of one element: whole sections 1/10 each, the damaged one 1/(10 − n).
                double healthy = 4 / 10.0;
                double now = (3 - kn[0]) / 10.0 + 1.0 / (10 - kn[1]);
                farads.computeIfPresent(branch, (b, c) -> c * healthy / now);
            }
        });
        shorted.removeIf(b -> farads.getOrDefault(b, 0.0) == 0.0);
        return Netlist.of(bank, supply, farads, shorted, open);
    }

    static void compare(Trial trial, Oracle oracle, double relative) {
        Solution.Solved solved = trial.solved();
        double amperes = solved.units().stream()
                .mapToDouble(u -> u.amperes().magnitude())
                .max()
                .orElseThrow();
        double ratedAmperes = trial.bank().unitTypes().getFirst().ratedVars()
                / trial.bank().unitTypes().getFirst().ratedVolts();
        double largest = Math.max(
                ratedAmperes,
                Math.max(
                        amperes,
                        solved.lines().stream()
                                .mapToDouble(l -> l.amperes().magnitude())
                                .max()
                                .orElseThrow()));
        double v = 8000 * relative;
        double i = largest * relative;
        for (Solution.UnitValue unit : solved.units()) {
            String[] ends = Objects.requireNonNull(trial.list().unitEnds.get(unit.unit()));
            Complex expected = oracle.volts(ends[0]).minus(oracle.volts(ends[1]));
            near(expected, unit.volts(), v, trial.name() + " " + unit.unit().name());
            if (unit.inService()) {
                double farads = Objects.requireNonNull(trial.list().unitFarads.get(unit.unit()));
                assertEquals(farads, unit.farads(), farads * 1e-12, trial.name());
            }
        }
        for (Solution.LineValue line : solved.lines()) {
            near(oracle.amperes("line" + line.phase()), line.amperes(), i, trial.name() + " line " + line.phase());
        }
        places(trial, oracle, v, i);
        Connection connection = trial.bank().stages().getFirst().connection();
        for (Solution.SensorValue sensor : solved.sensors()) {
            Complex expected = switch (sensor.senses()) {
                case NEUTRAL_VOLTAGE -> oracle.volts("N1");
                case NEUTRAL_CURRENT ->
                    connection == Connection.DOUBLE_WYE_GROUNDED
                            ? oracle.amperes("neutral1").plus(oracle.amperes("neutral2"))
                            : oracle.amperes("neutral1");
                case NEUTRAL_DIFFERENTIAL -> oracle.amperes("neutral1").minus(oracle.amperes("neutral2"));
                case BRIDGE_CURRENT -> oracle.amperes("bridge" + sensor.place());
                case PHASE_VOLTAGE -> tap(trial, oracle, sensor.place());
            };
            boolean current = sensor.senses().unit().equals("A");
            near(expected, sensor.primary(), current ? i : v, trial.name() + " " + sensor.name());
            near(
                    expected.times(5.0 / 100.0),
                    sensor.secondary().orElseThrow(),
                    current ? i : v,
                    trial.name() + " " + sensor.name());
        }
    }

    /** Legs, neutrals, the stage's side of the poles and what the stage gives the bus. */
    private static void places(Trial trial, Oracle oracle, double v, double i) {
        Solution.Solved solved = trial.solved();
        Complex power = Complex.ZERO;
        for (Solution.LineValue line : solved.lines()) {
            near(oracle.volts("t" + line.phase()), line.volts(), v, trial.name() + " behind pole " + line.phase());
            power = power.plus(oracle.volts("s" + line.phase())
                    .times(oracle.amperes("line" + line.phase()).conjugate()));
        }
        assertEquals(-power.im(), solved.stages().getFirst().vars(), 3.0 * 8000.0 * i, trial.name());
        for (Solution.NeutralValue neutral : solved.neutrals()) {
            near(oracle.volts("N" + neutral.number()), neutral.volts(), v, trial.name() + " neutral");
            near(oracle.amperes("neutral" + neutral.number()), neutral.amperes(), i, trial.name() + " neutral current");
        }
        for (Solution.LegValue leg : solved.legs()) {
            Complex amperes = Complex.ZERO;
            for (Solution.UnitValue unit : solved.units()) {
                if (unit.unit().stageLeg().equals(leg.leg()) && unit.unit().at().group() == 1) {
                    amperes = amperes.plus(unit.amperes());
                }
            }
            near(amperes, leg.amperes(), i, trial.name() + " leg " + leg.leg());
        }
        for (Solution.UnitValue unit : solved.units()) {
            String[] ends = Objects.requireNonNull(trial.list().unitEnds.get(unit.unit()));
            double farads = Objects.requireNonNull(trial.list().unitFarads.get(unit.unit()));
            Complex across = oracle.volts(ends[0]).minus(oracle.volts(ends[1]));
            Complex through = across.times(new Complex(0.0, 2.0 * Math.PI * trial.list().hertz * farads));
            if (unit.inService() || farads == 0.0) {
                near(
                        through,
                        unit.amperes(),
                        i,
                        trial.name() + " through " + unit.unit().name());
            }
        }
    }

    private static Complex tap(Trial trial, Oracle oracle, String place) {
        Connection connection = trial.bank().stages().getFirst().connection();
        if (connection.isBridge()) {
            Complex middle = oracle.volts("m" + place + "l");
            Complex bottom = oracle.volts("b" + place);
            return middle.minus(bottom)
                    .minus(oracle.volts("t" + place).minus(bottom).times(0.5));
        }
        int groups = trial.bank().stages().getFirst().layoutOf(place).groups();
        int above = (groups + 1) / 2;
        String end = "e" + place;
        String tap = above == groups ? end : place + "s1n" + above;
        Complex leg = oracle.volts("t" + place.charAt(0)).minus(oracle.volts(end));
        return oracle.volts(tap).minus(oracle.volts(end)).minus(leg.times((groups - above) / (double) groups));
    }

    private static void near(Complex expected, Complex actual, double tolerance, String what) {
        assertEquals(
                0.0,
                expected.minus(actual).magnitude(),
                tolerance,
                what + ": expected " + expected + ", got " + actual);
    }
}
