package org.varwright.network;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.quantity.Complex;

/** The network against a naive twin and against ngspice, for every kind of bank, healthy and failed. */
class NetworkOracleTest {
    /** Everything that either oracle can be asked. */
    private interface Oracle {
        Complex volts(String node);

        Complex amperes(String part);
    }

    /** One question to an oracle, with the network's answer. */
    private record Trial(String name, Bank bank, Solution.Solved solved, Netlist list, List<Failure> failures) {}

    @Test
    void agreesWithTheNaiveTwin() {
        long seed = 20260101L;
        int compared = 0;
        for (Trial trial : trials(seed, 6)) {
            NaiveNodal twin = assertDoesNotThrow(() -> new NaiveNodal(trial.list()), trial.name());
            compare(
                    trial,
                    new Oracle() {
                        @Override
                        public Complex volts(String node) {
                            return twin.between(node, "0");
                        }

                        @Override
                        public Complex amperes(String part) {
                            return twin.amperes.getOrDefault(part, Complex.ZERO);
                        }
                    },
                    1e-9);
            compared++;
        }
        assertTrue(compared > 200, "trials compared: " + compared);
    }

    @Test
    void agreesWithNgspice(@TempDir Path folder) throws IOException, InterruptedException {
        List<Trial> trials = trials(7L, 2);
        assertTrue(trials.size() > 80, "trials: " + trials.size());
        compareWithNgspice(trials, folder);
    }

    /** Each kind of failure at each kind of bank, behind the impedance of the source. */
    @Test
    void everyFailureOfEveryConnectionAgreesWithNgspice(@TempDir Path folder) throws IOException, InterruptedException {
        Random random = new Random(11L);
        List<Trial> trials = new ArrayList<>();
        for (Banks.Plan plan : Banks.everyKind()) {
            Bank bank = plan.bank();
            Supply supply = new Supply.Thevenin(13800.0, 280e6, 11.0);
            Capacitances values = Banks.scattered(bank, random, 0.05);
            Network network = Network.of(bank, bank.stages().getFirst(), values, supply);
            for (List<Failure> failures : eachKind(network.branches(), random)) {
                String name = plan.connection() + " " + plan.layout() + " " + plan.reactor() + " "
                        + failures.stream()
                                .map(f -> f.kind() + " at " + f.where())
                                .toList();
                Solution.Solved solved = assertInstanceOf(Solution.Solved.class, network.solve(failures), name);
                trials.add(new Trial(name, bank, solved, netlist(bank, supply, values, failures), failures));
            }
        }
        assertEquals(6 * Banks.everyKind().size(), trials.size());
        compareWithNgspice(trials, folder);
    }

    /** Unit out, sections shorted, elements out, unit shorted, a whole group out, a phase open; somewhere in the bank. */
    private static List<List<Failure>> eachKind(List<UnitBranch> branches, Random random) {
        UnitBranch at = branches.get(random.nextInt(branches.size()));
        List<Failure> wholeGroup = branches.stream()
                .filter(b -> b.stageLeg().equals(at.stageLeg())
                        && b.at().string() == at.at().string()
                        && b.at().group() == at.at().group())
                .<Failure>map(Failure.UnitOut::new)
                .toList();
        return List.of(
                List.of(new Failure.UnitOut(at)),
                List.of(new Failure.SectionsShorted(at, 1 + random.nextInt(3))),
                List.of(new Failure.ElementsOut(at, 1 + random.nextInt(9))),
                List.of(new Failure.UnitShorted(at)),
                wholeGroup,
                List.of(new Failure.PhaseOpen(Banks.STAGE, Circuit.PHASES.get(random.nextInt(3)))));
    }

    private static void compareWithNgspice(List<Trial> trials, Path folder) throws IOException, InterruptedException {
        StringBuilder deck = new StringBuilder("* varwright network trials\n.options rshunt=1e14\n");
        for (int t = 0; t < trials.size(); t++) {
            write(deck, trials.get(t).list(), "x" + t + "_");
        }
        deck.append(".control\nset filetype=binary\nac lin 1 60 60\nwrite trials.raw\nquit\n.endc\n.end\n");
        Map<String, Complex> written = ngspice(folder, deck.toString());
        for (int t = 0; t < trials.size(); t++) {
            String x = "x" + t + "_";
            compare(
                    trials.get(t),
                    new Oracle() {
                        @Override
                        public Complex volts(String node) {
                            Complex v = node.equals("0")
                                    ? Complex.ZERO
                                    : written.get("v(" + (x + node).toLowerCase(Locale.ROOT) + ")");
                            return v == null ? Complex.ZERO : v;
                        }

                        @Override
                        public Complex amperes(String part) {
                            Complex i = written.get("i(v" + (x + part).toLowerCase(Locale.ROOT) + ")");
                            return i == null ? Complex.ZERO : i;
                        }
                    },
                    1e-9);
        }
    }

    private static List<Trial> trials(long seed, int each) {
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
    private static Netlist netlist(Bank bank, Supply supply, Capacitances values, List<Failure> failures) {
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

    private static void compare(Trial trial, Oracle oracle, double relative) {
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

    private static void write(StringBuilder deck, Netlist list, String x) {
        for (Netlist.Part part : list.parts) {
            String ends = x + part.name() + " " + node(x, part.from()) + " " + node(x, part.to()) + " ";
            switch (part) {
                case Netlist.Part.Capacitor c -> deck.append("C").append(ends).append(c.farads());
                // ngspice finds the direct-current state first, in which loops of inductors are singular: at one
                // frequency
                // an inductor is the same as a negative capacitor.
                case Netlist.Part.Inductor l -> {
                    double omega = 2 * Math.PI * list.hertz;
                    deck.append("C").append(ends).append(-1.0 / (omega * omega * l.henries()));
                }
                case Netlist.Part.Resistor r -> deck.append("R").append(ends).append(r.ohms());
                case Netlist.Part.Source s ->
                    deck.append("V")
                            .append(ends)
                            .append("dc 0 ac ")
                            .append(s.volts().magnitude())
                            .append(' ')
                            .append(s.volts().degrees());
            }
            deck.append('\n');
        }
    }

    private static String node(String x, String name) {
        return name.equals("0") ? "0" : x + name;
    }

    private static Map<String, Complex> ngspice(Path folder, String deck) throws IOException, InterruptedException {
        Files.writeString(folder.resolve("trials.cir"), deck, StandardCharsets.UTF_8);
        Path out = folder.resolve("out.txt");
        try {
            new ProcessBuilder("ngspice", "-b", "trials.cir")
                    .directory(folder.toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(out.toFile())
                    .start()
                    .waitFor();
        } catch (IOException e) {
            throw new AssertionError("ngspice is needed for this test; on Debian install the package ngspice", e);
        }
        Path raw = folder.resolve("trials.raw");
        assertTrue(Files.exists(raw), () -> "ngspice wrote nothing; it says " + text(out));
        return NgspiceFile.read(Files.readAllBytes(raw)).getFirst();
    }

    private static String text(Path file) {
        try {
            return Files.readString(file, StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
