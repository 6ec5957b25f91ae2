package org.varwright.interlock;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The moves out of one state at a time, without objects: after {@link #of} the rules used and the states after them lie in this object's arrays. Not for several threads.
 */
final class Expansion {
    private final Circuits circuits;
    private final Numbering numbering;
    private final Symmetry symmetry;
    private final boolean symmetric;
    private final long plantBits;
    private final long accessBits;
    private final long closedMask;
    private final long chargeMask;
    private final long doorMask;
    private final List<Rule> rules;
    private final GuardTable guards;
    private final long[] allowed;
    private final long[] plantClear;
    private final long[] plantSet;
    private final long[] accessClear;
    private final long[] accessSet;
    private final long[] switching;
    private final int[] device;
    private final long[] waits;
    private final boolean[] counts;
    private final int devices;
    private final Map<Long, Node> nodes = new HashMap<>();
    private final List<Long> deviceBits = new ArrayList<>();

    /** The state that was expanded last. */
    private Node node;

    private long plant;
    private long access;

    /** For each move out of it: its rule, the state after it and, where it changes what is closed, the circuit after it. */
    final int[] rule;

    final long[] after;
    final Circuit[] circuitAfter;

    Expansion(Scheme scheme, Numbering numbering, Symmetry symmetry) {
        this.numbering = numbering;
        this.symmetry = symmetry;
        symmetric = !symmetry.isTrivial();
        circuits = scheme.circuits();
        rules = scheme.rules();
        Layout layout = scheme.layout();
        closedMask = layout.closedMask();
        chargeMask = layout.chargeMask();
        doorMask = layout.doorMask();
        guards = new GuardTable(rules);
        allowed = new long[guards.words()];
        int n = rules.size();
        plantClear = new long[n];
        plantSet = new long[n];
        accessClear = new long[n];
        accessSet = new long[n];
        switching = new long[n];
        device = new int[n];
        waits = new long[n];
        counts = new boolean[n];
        rule = new int[n];
        after = new long[n];
        circuitAfter = new Circuit[n];
        for (int r = 0; r < n; r++) {
            Rule one = rules.get(r);
            plantClear[r] = ~one.effect().plantMask();
            plantSet[r] = one.effect().plantValue();
            accessClear[r] = ~one.effect().accessMask();
            accessSet[r] = one.effect().accessValue();
            switching[r] = one.switching();
            waits[r] = one.waits();
            counts[r] = !one.counted().isEmpty();
            if (switching[r] != 0 && !deviceBits.contains(switching[r])) {
                deviceBits.add(switching[r]);
            }
            device[r] = deviceBits.indexOf(switching[r]);
        }
        devices = deviceBits.size();
        plantBits = layout.isNarrow() ? ~accessUsed(layout) : -1L;
        accessBits = layout.isNarrow() ? accessUsed(layout) : -1L;
        node = node(scheme.start().plant() & closedMask);
    }

    private static long accessUsed(Layout layout) {
        long used = layout.doorMask();
        for (int i = 0; i < layout.isolation.locks().size(); i++) {
            used |= Guard.bit(layout.lockBit(i), true).accessMask();
        }
        for (int i = 0; i < layout.isolation.exchanges().size(); i++) {
            used |= Guard.bit(layout.exchangeBit(i), true).accessMask();
        }
        return used;
    }

    /** A circuit with those that differ from it in one device. */
    private static final class Node {
        final Circuit circuit;
        final Node[] toggled;

        Node(Circuit circuit, int devices) {
            this.circuit = circuit;
            toggled = new Node[devices];
        }
    }

    private Node node(long closed) {
        Node known = nodes.get(closed);
        if (known == null) {
            known = new Node(circuits.of(closed), devices);
            nodes.put(closed, known);
        }
        return known;
    }

    State state(long number) {
        return new State(numbering.plant(number) & plantBits, numbering.access(number) & accessBits);
    }

    /** The number of a state, or of the one that stands for all that differ from it only by swapping stages that are alike. */
    long number(State state) {
        return number(state.plant(), state.access());
    }

    private long number(long ofPlant, long ofAccess) {
        if (!symmetric) {
            return numbering.number(ofPlant, ofAccess);
        }
        symmetry.settle(ofPlant, ofAccess);
        return numbering.number(symmetry.plant, symmetry.access);
    }

    /** How many states the one that was expanded last stands for. */
    long standsFor() {
        return symmetric ? symmetry.count(plant, access) : 1;
    }

    /** Goes to a state without looking at its moves. */
    void goTo(long number) {
        plant = numbering.plant(number) & plantBits;
        access = numbering.access(number) & accessBits;
        long closed = plant & closedMask;
        if (node.circuit.closed != closed) {
            node = node(closed);
        }
    }

    /** Looks at every move out of a state; how many there are. */
    int of(long number) {
        goTo(number);
        guards.look(plant, access, allowed);
        long live = node.circuit.liveStages;
        int count = 0;
        for (int w = 0; w < allowed.length; w++) {
            for (long left = allowed[w]; left != 0; left &= left - 1) {
                int r = (w << 6) + Long.numberOfTrailingZeros(left);
                if (r >= rule.length || (waits[r] & live) != 0 || (counts[r] && !keysFree(r))) {
                    continue;
                }
                long plantAfter = (plant & plantClear[r]) | plantSet[r];
                Circuit circuit = node.circuit;
                if (switching[r] != 0 && (plantAfter & closedMask) != circuit.closed) {
                    circuit = toggled(device[r]).circuit;
                    plantAfter |= circuit.liveStages;
                }
                rule[count] = r;
                circuitAfter[count] = circuit;
                after[count] = number(plantAfter, (access & accessClear[r]) | accessSet[r]);
                count++;
            }
        }
        return count;
    }

    private boolean keysFree(int r) {
        for (Rule.KeyCount key : rules.get(r).counted()) {
            if (!key.isFree(plant, access)) {
                return false;
            }
        }
        return true;
    }

    private Node toggled(int of) {
        Node other = node.toggled[of];
        if (other == null) {
            other = node(node.circuit.closed ^ deviceBits.get(of));
            node.toggled[of] = other;
        }
        return other;
    }

    /** Properties broken by the state that was expanded last. */
    int brokenByState() {
        return Broken.byState(node.circuit, access & doorMask, plant & chargeMask);
    }

    /** Properties broken by its {@code i}-th move. */
    int brokenByMove(int i) {
        long moved = switching[rule[i]];
        return moved == 0 ? 0 : Broken.byMove(node.circuit, circuitAfter[i], plant & chargeMask, moved);
    }

    Circuit circuit(long closed) {
        return node(closed & closedMask).circuit;
    }

    long bytes() {
        return nodes.size() * (240L + 24L * devices);
    }
}
