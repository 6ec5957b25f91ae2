package org.varwright.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.UnitPosition;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;

/**
 * Nodes, capacitive branches and links of some stages on one bus, without values of capacitance.
 *
 * <pre>
 *  ground ──E─Z──▶ bus ──pole, line reactor──▶ top ══ leg ══ end ──neutral reactor──▶ neutral ──▶ ground (or to the other neutral)
 *
 *  leg: strings in parallel, each string      top ─┬─‖─┬─ node ─┬─‖─┬─ end      a bridge: two halves a phase, their middles joined by the sensor
 *  groups in series, each group units              └─‖─┘        └─‖─┘
 *  in parallel
 * </pre>
 *
 * <p>Every link has an unknown current, so that a switch pole, a current transformer or a stiff source is exact and not a large admittance.
 */
final class Circuit {
    static final int GROUND = -1;
    static final List<String> PHASES = List.of("A", "B", "C");

    /** A capacitive branch between two nodes. */
    record Branch(UnitBranch unit, Stage stage, int from, int to, int group) {}

    /** A group of units in parallel: {@code string} and {@code group} are 1-based. */
    record Group(Stage stage, String leg, int string, int group, int from, int to) {}

    /** A link whose current is an unknown: {@code V_from − V_to − Z·I = −E}. */
    record Link(int from, int to, Complex ohms, Complex emf) {}

    /** One leg with its ends; of three-phase units with a star point each, the ends of the first unit. */
    record Leg(Stage stage, String name, int top, int end) {}

    /**
     * A stage's own places.
     *
     * @param poles link of each phase's pole
     * @param neutrals nodes of the neutrals: none, one or two
     * @param neutralLinks links of neutrals: to ground each, or from the first to the second; empty where there are none
     * @param bridgeLinks link across the middle of each phase; empty where there is none
     */
    record StagePlaces(
            Stage stage,
            List<Integer> poles,
            List<Integer> neutrals,
            List<Integer> neutralLinks,
            List<Integer> bridgeLinks,
            List<Leg> legs) {}

    private final List<Branch> branches = new ArrayList<>();
    private final List<Group> groups = new ArrayList<>();
    private final List<Link> links = new ArrayList<>();
    private final List<StagePlaces> stages = new ArrayList<>();
    private final List<String> nodeNames = new ArrayList<>();
    private final Map<UnitBranch, Integer> indexOf = new HashMap<>();
    private final double omega;

    private Circuit(double omega) {
        this.omega = omega;
    }

    static Circuit of(SupplySystem system, List<Stage> stages, Supply supply) {
        Circuit circuit = new Circuit(system.angularFrequency());
        List<Complex> emf = supply.phaseVolts();
        int[] bus = new int[3];
        for (int p = 0; p < 3; p++) {
            bus[p] = circuit.node("bus " + PHASES.get(p));
            circuit.link(GROUND, bus[p], supply.ohms(), emf.get(p));
        }
        for (Stage stage : stages) {
            circuit.addStage(stage, bus);
        }
        return circuit;
    }

    /** The branches of the unit at a position: one, or three inside a three-phase unit. */
    static List<UnitBranch> branchesOf(Stage stage, UnitPosition position) {
        if (!stage.hasThreePhaseUnits()) {
            return List.of(UnitBranch.of(position));
        }
        return stage.legs().stream().map(leg -> new UnitBranch(position, leg)).toList();
    }

    List<Branch> branches() {
        return branches;
    }

    List<Group> groups() {
        return groups;
    }

    List<Link> links() {
        return links;
    }

    List<StagePlaces> stages() {
        return stages;
    }

    int nodes() {
        return nodeNames.size();
    }

    double omega() {
        return omega;
    }

    /**
     * Index of a branch.
     *
     * @throws VarwrightException {@code BRANCH_UNKNOWN} where it is in none of the stages
     */
    int requireBranch(UnitBranch unit) {
        Integer index = indexOf.get(unit);
        if (index == null) {
            throw new VarwrightException(Message.BRANCH_UNKNOWN, Place.NOWHERE, unit.name());
        }
        return index;
    }

    /** The same number for groups between the same two nodes. */
    long pair(Group group) {
        return (group.from() + 1L) * (nodes() + 1L) + group.to() + 1L;
    }

    private int node(String name) {
        nodeNames.add(name);
        return nodeNames.size() - 1;
    }

    private int link(int from, int to, Complex ohms, Complex emf) {
        links.add(new Link(from, to, ohms, emf));
        return links.size() - 1;
    }

    private void addStage(Stage stage, int[] bus) {
        Complex lineOhms = reactorOhms(stage, Reactor.Position.LINE);
        List<Integer> poles = new ArrayList<>();
        int[] top = new int[3];
        for (int p = 0; p < 3; p++) {
            top[p] = node(stage.name() + " phase " + PHASES.get(p));
            poles.add(link(bus[p], top[p], lineOhms, Complex.ZERO));
        }
        if (stage.hasThreePhaseUnits()) {
            stages.add(threePhaseUnits(stage, poles, top));
            return;
        }
        stages.add(
                switch (stage.connection()) {
                    case DELTA -> delta(stage, poles, top);
                    case WYE_GROUNDED, WYE_UNGROUNDED, DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED ->
                        wyes(stage, poles, top);
                    case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> bridge(stage, poles, top);
                });
    }

    private StagePlaces delta(Stage stage, List<Integer> poles, int[] top) {
        List<Leg> legs = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            String leg = stage.legs().get(p);
            int end = endWithReactor(stage, leg, top[(p + 1) % 3]);
            legs.add(leg(stage, leg, top[p], end));
        }
        return new StagePlaces(stage, poles, List.of(), List.of(), List.of(), legs);
    }

    private StagePlaces wyes(Stage stage, List<Integer> poles, int[] top) {
        int count = stage.connection().isDoubleWye() ? 2 : 1;
        List<Integer> neutrals = new ArrayList<>();
        List<Leg> legs = new ArrayList<>();
        for (int w = 0; w < count; w++) {
            int neutral = node(stage.name() + " neutral" + (count == 2 ? " " + (w + 1) : ""));
            neutrals.add(neutral);
            for (int p = 0; p < 3; p++) {
                String leg = stage.legs().get(3 * w + p);
                legs.add(leg(stage, leg, top[p], endWithReactor(stage, leg, neutral)));
            }
        }
        return new StagePlaces(stage, poles, neutrals, neutralLinks(stage, neutrals), List.of(), legs);
    }

    private StagePlaces bridge(Stage stage, List<Integer> poles, int[] top) {
        List<Integer> neutrals = List.of(node(stage.name() + " neutral"));
        List<Integer> bridges = new ArrayList<>();
        List<Leg> legs = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            List<String> names = stage.legs().subList(4 * p, 4 * p + 4);
            int left = node(stage.name() + " middle " + PHASES.get(p) + " left");
            int right = node(stage.name() + " middle " + PHASES.get(p) + " right");
            int bottom = endWithReactor(stage, PHASES.get(p), neutrals.getFirst());
            legs.add(leg(stage, names.get(0), top[p], left));
            legs.add(leg(stage, names.get(1), left, bottom));
            legs.add(leg(stage, names.get(2), top[p], right));
            legs.add(leg(stage, names.get(3), right, bottom));
            bridges.add(link(left, right, Complex.ZERO, Complex.ZERO));
        }
        return new StagePlaces(stage, poles, neutrals, neutralLinks(stage, neutrals), bridges, legs);
    }

    private List<Integer> neutralLinks(Stage stage, List<Integer> neutrals) {
        if (stage.connection().isGrounded()) {
            return neutrals.stream()
                    .map(n -> link(n, GROUND, Complex.ZERO, Complex.ZERO))
                    .toList();
        }
        return neutrals.size() == 2
                ? List.of(link(neutrals.getFirst(), neutrals.getLast(), Complex.ZERO, Complex.ZERO))
                : List.of();
    }

    private StagePlaces threePhaseUnits(Stage stage, List<Integer> poles, int[] top) {
        InternalConnection internal = stage.unit().threePhase().orElseThrow();
        boolean delta = internal == InternalConnection.DELTA;
        Connection needed = delta ? Connection.DELTA : Connection.WYE_UNGROUNDED;
        if (stage.connection() != needed
                || stage.layout().groups() > 1
                || stage.layout().strings() > 1
                || stage.reactor()
                        .filter(r -> r.position() == Reactor.Position.NEUTRAL)
                        .isPresent()) {
            throw new VarwrightException(Message.THREE_PHASE_UNITS, Place.NOWHERE, stage.name(), needed.code());
        }
        List<Leg> legs = new ArrayList<>();
        List<UnitPosition> cans = stage.positions();
        for (UnitPosition can : cans) {
            int star = delta ? GROUND : node(can.name() + " star point");
            for (int p = 0; p < 3; p++) {
                String leg = stage.legs().get(p);
                int end = delta ? top[(p + 1) % 3] : star;
                int group = groups.size();
                if (delta && !can.equals(cans.getFirst())) {
                    group = groupOf(stage, leg);
                } else {
                    groups.add(new Group(stage, leg, 1, 1, top[p], end));
                }
                if (can.equals(cans.getFirst())) {
                    legs.add(new Leg(stage, leg, top[p], end));
                }
                addBranch(new UnitBranch(can, leg), stage, top[p], end, group);
            }
        }
        return new StagePlaces(stage, poles, List.of(), List.of(), List.of(), legs);
    }

    private int groupOf(Stage stage, String leg) {
        for (int g = 0; g < groups.size(); g++) {
            if (groups.get(g).stage().equals(stage) && groups.get(g).leg().equals(leg)) {
                return g;
            }
        }
        throw new IllegalStateException(stage.name() + " has no leg " + leg);
    }

    private int endWithReactor(Stage stage, String leg, int end) {
        Complex ohms = reactorOhms(stage, Reactor.Position.NEUTRAL);
        if (ohms.equals(Complex.ZERO)) {
            return end;
        }
        int before = node(stage.name() + " reactor " + leg);
        link(before, end, ohms, Complex.ZERO);
        return before;
    }

    private Complex reactorOhms(Stage stage, Reactor.Position position) {
        return stage.reactor()
                .filter(r -> r.position() == position)
                .map(r -> new Complex(0.0, omega * r.henries()))
                .orElse(Complex.ZERO);
    }

    private Leg leg(Stage stage, String leg, int top, int end) {
        LegLayout layout = stage.layoutOf(leg);
        List<UnitPosition> units =
                stage.positions().stream().filter(p -> p.leg().equals(leg)).toList();
        int next = 0;
        for (int s = 1; s <= layout.strings(); s++) {
            int from = top;
            for (int g = 1; g <= layout.groups(); g++) {
                int to = g == layout.groups()
                        ? end
                        : node(stage.name() + "/" + leg + " string " + s + " below group " + g);
                groups.add(new Group(stage, leg, s, g, from, to));
                for (int u = 1; u <= layout.units(); u++) {
                    addBranch(UnitBranch.of(units.get(next++)), stage, from, to, groups.size() - 1);
                }
                from = to;
            }
        }
        return new Leg(stage, leg, top, end);
    }

    private void addBranch(UnitBranch unit, Stage stage, int from, int to, int group) {
        indexOf.put(unit, branches.size());
        branches.add(new Branch(unit, stage, from, to, group));
    }
}
