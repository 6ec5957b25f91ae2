package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/**
 * A stage as capacitances between its terminals, its neutral and, of a bridge, the middles of its phases; reactors are left out.
 *
 * <pre>
 *  wye        A ──‖── 0        delta   A(0) ──‖── B       bridge   A ─┬─‖─ A middle ─┬─‖─ 0
 *  (one or    B ──‖── 0                B ──‖── C                      └─‖────┘ └─────‖─┘
 *   two)      C ──‖── 0                C ──‖── A(0)                B, C alike
 *
 *  0: ground with a grounded neutral, else the neutral, which floats; of a delta terminal A
 * </pre>
 *
 * @param stage what it is a picture of
 * @param nodes names of the nodes; the first is the reference
 * @param terminals indices of the nodes behind the poles of A, B and C
 * @param grounded whether the reference is ground
 * @param legs in the order of the stage
 */
record StageCircuit(Stage stage, List<String> nodes, List<Integer> terminals, boolean grounded, List<Leg> legs) {
    StageCircuit {
        nodes = List.copyOf(nodes);
        terminals = List.copyOf(terminals);
        legs = List.copyOf(legs);
    }

    /**
     * Units in parallel.
     *
     * @param string 1-based
     * @param group 1-based
     * @param farads of all together [F]
     * @param siemens of their discharge resistors together [S]
     * @param at where they are
     */
    record Group(int string, int group, double farads, double siemens, List<UnitPosition> at) {
        Group {
            at = List.copyOf(at);
        }

        /** The same with so many of its discharge resistors, all of one resistance, open. */
        Group open(int resistors) {
            return new Group(string, group, farads, siemens * (at.size() - resistors) / at.size(), at);
        }

        Group withSiemens(double value) {
            return new Group(string, group, farads, value, at);
        }
    }

    /**
     * One leg; a quarter of a bridge.
     *
     * @param name as the stage calls it
     * @param from node
     * @param to node
     * @param strings in parallel, each of groups in series
     */
    record Leg(String name, int from, int to, List<List<Group>> strings) {
        Leg {
            strings = strings.stream().map(List::copyOf).toList();
        }

        double farads() {
            return strings.stream().mapToDouble(StageCircuit::farads).sum();
        }
    }

    /** Capacitance of groups in series [F]. */
    static double farads(List<Group> string) {
        return 1.0 / string.stream().mapToDouble(g -> 1.0 / g.farads()).sum();
    }

    /** Conductance of groups in series [S]; 0 where one of them has none. */
    static double siemens(List<Group> string) {
        return string.stream().anyMatch(g -> g.siemens() == 0.0)
                ? 0.0
                : 1.0 / string.stream().mapToDouble(g -> 1.0 / g.siemens()).sum();
    }

    static StageCircuit of(UnitValues values, Stage stage, Resistance ofType) {
        boolean delta = stage.isDelta();
        boolean bridge = stage.connection().isBridge();
        boolean grounded = stage.connection().isGrounded() && !stage.hasThreePhaseUnits();
        List<String> nodes = new ArrayList<>(
                delta ? List.of("A", "B", "C") : List.of(grounded ? "ground" : "neutral", "A", "B", "C"));
        List<Integer> terminals = delta ? List.of(0, 1, 2) : List.of(1, 2, 3);
        if (bridge) {
            nodes.addAll(List.of("middle of A", "middle of B", "middle of C"));
        }
        List<Leg> legs = new ArrayList<>();
        boolean anyMeasured = values.anyMeasured(stage);
        List<UnitPosition> positions = stage.positions();
        for (int l = 0; l < stage.legs().size(); l++) {
            String leg = stage.legs().get(l);
            List<UnitPosition> own = positions.stream()
                    .filter(p -> stage.hasThreePhaseUnits() || p.leg().equals(leg))
                    .toList();
            List<List<Group>> strings = strings(values, stage, leg, own, ofType, anyMeasured);
            if (delta) {
                legs.add(new Leg(leg, l, (l + 1) % 3, strings));
            } else if (bridge) {
                int phase = l / 4;
                boolean upper = leg.contains("-u");
                legs.add(new Leg(leg, upper ? 1 + phase : 4 + phase, upper ? 4 + phase : 0, strings));
            } else {
                legs.add(new Leg(leg, 1 + l % 3, 0, strings));
            }
        }
        return new StageCircuit(stage, nodes, terminals, grounded, legs);
    }

    private static List<List<Group>> strings(
            UnitValues values,
            Stage stage,
            String leg,
            List<UnitPosition> positions,
            Resistance ofType,
            boolean anyMeasured) {
        List<List<Group>> strings = new ArrayList<>();
        for (int s = 1; s <= stage.layoutOf(leg).strings(); s++) {
            List<Group> groups = new ArrayList<>();
            for (int g = 1; g <= stage.layoutOf(leg).groups(); g++) {
                int string = s;
                int group = g;
                List<UnitPosition> at = positions.stream()
                        .filter(p -> p.string() == string && p.group() == group)
                        .toList();
                groups.add(new Group(
                        s,
                        g,
                        at.stream()
                                .mapToDouble(p -> values.sharingFarads(stage, p, anyMeasured))
                                .sum(),
                        at.stream()
                                .mapToDouble(p -> 1.0 / values.ohms(p, ofType))
                                .sum(),
                        at));
            }
            strings.add(groups);
        }
        return strings;
    }

    boolean isDelta() {
        return nodes.size() == 3;
    }

    /** The same with one unit of a group cut off. */
    StageCircuit withOneOut(int leg, int string, int group) {
        List<Leg> changed = new ArrayList<>(legs);
        Leg old = legs.get(leg);
        List<List<Group>> strings = new ArrayList<>(old.strings());
        List<Group> groups = new ArrayList<>(strings.get(string));
        Group whole = groups.get(group);
        List<UnitPosition> left = whole.at().subList(1, whole.at().size());
        double part = (double) left.size() / whole.at().size();
        groups.set(group, new Group(whole.string(), group + 1, part * whole.farads(), part * whole.siemens(), left));
        strings.set(string, groups);
        changed.set(leg, new Leg(old.name(), old.from(), old.to(), strings));
        return new StageCircuit(stage, nodes, terminals, grounded, changed);
    }

    /** The most that any unit holds after an opening [V]. */
    double highestUnitVolts(PoleOpening opening) {
        double highest = 0.0;
        for (int l = 0; l < legs.size(); l++) {
            double across = Math.abs(opening.legs().get(l).volts());
            for (List<Group> string : legs.get(l).strings()) {
                double whole = farads(string);
                for (Group group : string) {
                    highest = Math.max(highest, across * whole / group.farads());
                }
            }
        }
        return highest;
    }

    /** How many groups stand in series between a terminal and the far side at most. */
    int seriesGroups() {
        int longest = legs.stream()
                .flatMap(leg -> leg.strings().stream())
                .mapToInt(List::size)
                .max()
                .orElse(1);
        return stage.connection().isBridge() ? 2 * longest : longest;
    }
}
