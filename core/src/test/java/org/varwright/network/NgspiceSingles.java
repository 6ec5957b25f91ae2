package org.varwright.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.quantity.Complex;

/**
 * Every unit out, one after another, in one run of ngspice: a small-signal analysis at one frequency for each, with the unit's capacitance set to nothing and
 * back again. Answers are read from ngspice's binary file, so with all digits.
 */
public final class NgspiceSingles {
    /** As good as nothing, and a value that ngspice takes [F]. */
    private static final String NOTHING = "1e-30";

    /** Whose current is the sensor's; all other wires are left out and their ends are one node, which is quicker for ngspice. */
    private static final String SENSOR = "neutral1";

    private final Netlist list;
    private final List<UnitBranch> branches;
    private final Map<String, String> merged = new HashMap<>();

    private NgspiceSingles(Netlist list, List<UnitBranch> branches) {
        this.list = list;
        this.branches = branches;
        list.parts.stream().filter(NgspiceSingles::isPlainWire).forEach(w -> {
            String from = node(w.from());
            String to = node(w.to());
            merged.put(from.equals("0") ? to : from, from.equals("0") ? from : to);
        });
    }

    private static boolean isPlainWire(Netlist.Part part) {
        return part instanceof Netlist.Part.Source s
                && s.volts().equals(Complex.ZERO)
                && !s.name().equals(SENSOR);
    }

    private String node(String name) {
        String at = name;
        while (merged.containsKey(at)) {
            at = Objects.requireNonNull(merged.get(at));
        }
        return at;
    }

    /** For a bank of single-phase units without reactors, fed by a stiff supply. */
    public static NgspiceSingles of(Bank bank, Supply supply, Capacitances capacitances) {
        Map<UnitBranch, Double> farads = new HashMap<>();
        List<UnitBranch> branches =
                Network.of(bank, bank.stages().getFirst(), capacitances, supply).branches();
        branches.forEach(b -> farads.put(b, capacitances.farads(b)));
        return new NgspiceSingles(Netlist.of(bank, supply, farads, Set.of(), Set.of()), branches);
    }

    /** The units, in order of the cases. */
    public List<UnitBranch> branches() {
        return branches;
    }

    /** Solves every case and writes the answers to a file. */
    public String deck(String file) {
        return deck(branches.size(), "write " + file + "\n");
    }

    /** Solves the first cases and keeps nothing: for taking the time. */
    public String deckToTime(int cases) {
        return deck(cases, "");
    }

    private String deck(int cases, String write) {
        StringBuilder deck = new StringBuilder("* every unit out, one after another\n.options rshunt=1e14\n");
        for (Netlist.Part part : list.parts) {
            if (isPlainWire(part)) {
                continue;
            }
            String ends = part.name() + " " + node(part.from()) + " " + node(part.to()) + " ";
            deck.append(
                    switch (part) {
                        case Netlist.Part.Capacitor c -> "C" + ends + c.farads();
                        case Netlist.Part.Source s ->
                            "V" + ends + "dc 0 ac " + s.volts().magnitude() + " "
                                    + s.volts().degrees();
                        case Netlist.Part.Resistor r -> throw new IllegalArgumentException("a resistor: " + r);
                        case Netlist.Part.Inductor l -> throw new IllegalArgumentException("an inductor: " + l);
                    });
            deck.append('\n');
        }
        deck.append(".control\nset filetype=binary\nset appendwrite\n");
        String hertz = " " + list.hertz + " " + list.hertz + "\n";
        for (int n = 1; n <= cases; n++) {
            double farads = Objects.requireNonNull(list.unitFarads.get(branches.get(n - 1)));
            deck.append("alter Cu").append(n).append(" = ").append(NOTHING).append('\n');
            deck.append("ac lin 1").append(hertz).append(write);
            deck.append("alter Cu").append(n).append(" = ").append(farads).append("\ndestroy all\n");
        }
        return deck.append("quit\n.endc\n.end\n").toString();
    }

    /** Answers to one case. */
    public record Case(UnitBranch out, Map<String, Complex> values) {
        Complex value(String name) {
            Complex value = values.get(name.toLowerCase(Locale.ROOT));
            if (value == null) {
                throw new IllegalStateException("ngspice wrote no " + name + ", only " + values.keySet());
            }
            return value;
        }

        private Complex volts(String node) {
            return node.equals("0") ? Complex.ZERO : value("v(" + node + ")");
        }

        /** Current between the neutrals, or from the first one to ground [A]. */
        public Complex neutralAmperes() {
            return value("i(v" + SENSOR + ")");
        }
    }

    /** Voltage across a unit [V]. */
    public Complex volts(Case answers, UnitBranch unit) {
        String[] ends = Objects.requireNonNull(list.unitEnds.get(unit));
        return answers.volts(node(ends[0])).minus(answers.volts(node(ends[1])));
    }

    /** The cases that ngspice wrote, in order. */
    public List<Case> read(byte[] file) {
        List<Case> cases = new ArrayList<>();
        for (Map<String, Complex> values : NgspiceFile.read(file)) {
            cases.add(new Case(branches.get(cases.size()), values));
        }
        return cases;
    }
}
