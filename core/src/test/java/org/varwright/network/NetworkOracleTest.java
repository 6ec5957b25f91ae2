package org.varwright.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.bank.Bank;
import org.varwright.quantity.Complex;

/** The network against ngspice, for every kind of bank, healthy and failed; against a naive twin in {@link NetworkTwinTest}. */
class NetworkOracleTest {
    @Test
    void agreesWithNgspice(@TempDir Path folder) throws IOException, InterruptedException {
        List<Trials.Trial> trials = Trials.of(7L, 2);
        assertTrue(trials.size() > 80, "trials: " + trials.size());
        compareWithNgspice(trials, folder);
    }

    /** Each kind of failure at each kind of bank, behind the impedance of the source. */
    @Test
    void everyFailureOfEveryConnectionAgreesWithNgspice(@TempDir Path folder) throws IOException, InterruptedException {
        Random random = new Random(11L);
        List<Trials.Trial> trials = new ArrayList<>();
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
                trials.add(
                        new Trials.Trial(name, bank, solved, Trials.netlist(bank, supply, values, failures), failures));
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

    private static void compareWithNgspice(List<Trials.Trial> trials, Path folder)
            throws IOException, InterruptedException {
        StringBuilder deck = new StringBuilder("* varwright network trials\n.options rshunt=1e14\n");
        for (int t = 0; t < trials.size(); t++) {
            write(deck, trials.get(t).list(), "x" + t + "_");
        }
        deck.append(".control\nset filetype=binary\nac lin 1 60 60\nwrite trials.raw\nquit\n.endc\n.end\n");
        Map<String, Complex> written = ngspice(folder, deck.toString());
        for (int t = 0; t < trials.size(); t++) {
            String x = "x" + t + "_";
            Trials.compare(
                    trials.get(t),
                    new Trials.Oracle() {
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
