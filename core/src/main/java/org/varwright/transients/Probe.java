package org.varwright.transients;

import java.util.ArrayList;
import java.util.List;

/**
 * A quantity to watch: a sum of branch currents, capacitor voltages and node voltages, each with a factor.
 *
 * @param name for a person
 * @param terms of the sum
 */
public record Probe(String name, List<Term> terms) {
    public Probe {
        terms = List.copyOf(terms);
    }

    /** What a term is of. */
    public enum Kind {
        /** Current of a branch [A], from its first node to its second. */
        AMPERES,
        /** Voltage across the capacitor of a branch [V]. */
        CAPACITOR_VOLTS,
        /** Voltage of a node to ground [V]. */
        NODE_VOLTS
    }

    /**
     * One term.
     *
     * @param kind of quantity
     * @param index of the branch or node
     * @param factor any
     */
    public record Term(Kind kind, int index, double factor) {}

    public static Probe amperes(String name, int branch) {
        return new Probe(name, List.of(new Term(Kind.AMPERES, branch, 1.0)));
    }

    public static Probe capacitorVolts(String name, int branch) {
        return new Probe(name, List.of(new Term(Kind.CAPACITOR_VOLTS, branch, 1.0)));
    }

    public static Probe nodeVolts(String name, int node) {
        return new Probe(name, List.of(new Term(Kind.NODE_VOLTS, node, 1.0)));
    }

    /** Voltage from one node to another. */
    public static Probe between(String name, int from, int to) {
        return new Probe(name, List.of(new Term(Kind.NODE_VOLTS, from, 1.0), new Term(Kind.NODE_VOLTS, to, -1.0)));
    }

    /** The sum of some of one kind. */
    public static Probe sum(String name, Kind kind, List<Integer> indices, List<Double> factors) {
        List<Term> terms = new ArrayList<>();
        for (int i = 0; i < indices.size(); i++) {
            terms.add(new Term(kind, indices.get(i), factors.get(i)));
        }
        return new Probe(name, terms);
    }
}
