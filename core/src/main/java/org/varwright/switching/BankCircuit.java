package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Connection;
import org.varwright.bank.Reactor;
import org.varwright.transients.Branch;
import org.varwright.transients.Emf;
import org.varwright.transients.Probe;
import org.varwright.transients.SwitchedCircuit;

/**
 * Stages on one bus behind a source, as a circuit in time.
 *
 * <pre>
 *   ground ──(e)─R─L── bus A ──┬──[pole]─R─L── top A ──┤├─R─L── star ── (ground)     one row a phase; a grounded star
 *                              ├──[pole]─R─L── …                                     is ground itself
 *                              └──[fault]── ground                                   only for outrush
 * </pre>
 */
final class BankCircuit {
    private static final String[] PHASES = {"A", "B", "C"};
    private static final int NODES_BEFORE = 4;
    private static final int NODES_A_STAGE = 4;

    private final List<SwitchedStage> stages;
    private final double perMetre;
    private final double peakVolts;
    private final List<Branch> branches = new ArrayList<>();
    private final int[][] poles;
    private final int[] faults = {-1, -1, -1};
    private final List<List<LegPlace>> legs = new ArrayList<>();
    private final SwitchedCircuit circuit;

    /**
     * One leg.
     *
     * @param name of the leg
     * @param volts across its capacitors
     * @param amperes through it
     * @param peakVolts in service at nominal voltage
     */
    record LegPlace(String name, Probe volts, Probe amperes, double peakVolts) {}

    private BankCircuit(Source source, List<SwitchedStage> stages, double perMetre, boolean fault) {
        this.stages = stages;
        this.perMetre = perMetre;
        peakVolts = source.peakVolts();
        poles = new int[stages.size()][3];
        Source.Behind behind = source.behind().orElseThrow();
        for (int p = 0; p < 3; p++) {
            branches.add(Branch.source(
                    "source " + PHASES[p], 1 + p, behind.ohms(), behind.henries(), new Emf(peakVolts, -120.0 * p)));
        }
        for (int s = 0; s < stages.size(); s++) {
            legs.add(stage(s));
        }
        if (fault) {
            for (int p = 0; p < 3; p++) {
                faults[p] = add(Branch.line("fault " + PHASES[p], 1 + p, 0, 0.0, 0.0));
            }
        }
        circuit =
                new SwitchedCircuit(NODES_BEFORE + NODES_A_STAGE * stages.size(), branches, source.radiansPerSecond());
    }

    /** Stages that are on or are being switched. */
    static BankCircuit of(Source source, List<SwitchedStage> stages, double perMetre) {
        return new BankCircuit(source, stages, perMetre, false);
    }

    /** The same with a fault from each phase of the bus to ground, open at first. */
    static BankCircuit withFault(Source source, List<SwitchedStage> stages, double perMetre) {
        return new BankCircuit(source, stages, perMetre, true);
    }

    SwitchedCircuit circuit() {
        return circuit;
    }

    List<SwitchedStage> stages() {
        return stages;
    }

    int pole(int stage, int phase) {
        return poles[stage][phase];
    }

    /** Branches of a stage's three poles. */
    List<Integer> poles(int stage) {
        return List.of(poles[stage][0], poles[stage][1], poles[stage][2]);
    }

    List<Integer> faults() {
        return List.of(faults[0], faults[1], faults[2]);
    }

    List<LegPlace> legs(int stage) {
        return legs.get(stage);
    }

    /** Current of a pole, from the bus. */
    Probe poleAmperes(int stage, int phase) {
        return Probe.amperes(stages.get(stage).name() + " pole " + PHASES[phase], poles[stage][phase]);
    }

    Probe busVolts(int phase) {
        return Probe.nodeVolts("bus " + PHASES[phase], 1 + phase);
    }

    /** Voltage across a pole. */
    Probe acrossPole(int stage, int phase) {
        return Probe.between(stages.get(stage).name() + " across pole " + PHASES[phase], 1 + phase, top(stage, phase));
    }

    /** Current that all stages send into the bus in one phase. */
    Probe outrush(int phase) {
        List<Integer> all = new ArrayList<>();
        List<Double> factors = new ArrayList<>();
        for (int[] stage : poles) {
            all.add(stage[phase]);
            factors.add(-1.0);
        }
        return Probe.sum("outrush " + PHASES[phase], Probe.Kind.AMPERES, all, factors);
    }

    /**
     * Voltages that trapped charge puts on the capacitors of a stage, one a branch of the circuit [V].
     *
     * @param stage index
     * @param perPeak by phase, or by leg of a delta: multiples of the leg's peak in service
     */
    List<Double> trapped(int stage, Map<String, Double> perPeak) {
        List<Double> volts = new ArrayList<>(branches.stream().map(b -> 0.0).toList());
        SwitchedStage of = stages.get(stage);
        for (int b = 0; b < branches.size(); b++) {
            for (int p = 0; p < 3; p++) {
                String phase = PHASES[p];
                if (branches.get(b).farads().isPresent()
                        && branches.get(b).name().startsWith(of.name() + " leg " + phase)) {
                    volts.set(b, trappedOn(of, p, perPeak));
                }
            }
        }
        return volts;
    }

    private double trappedOn(SwitchedStage of, int phase, Map<String, Double> perPeak) {
        if (of.stage().connection() != Connection.DELTA) {
            return perPeak.getOrDefault(PHASES[phase], 0.0) * peakVolts;
        }
        double linePeak = peakVolts * Math.sqrt(3.0);
        if (hasLegReactors(of)) {
            return perPeak.getOrDefault(of.stage().legs().get(phase), 0.0) * linePeak;
        }
        // The star on paper: A stands at 0, B and C follow from the voltages of the legs.
        return switch (phase) {
            case 1 -> -perPeak.getOrDefault("AB", 0.0) * linePeak;
            case 2 -> perPeak.getOrDefault("CA", 0.0) * linePeak;
            default -> 0.0;
        };
    }

    private static boolean hasLegReactors(SwitchedStage of) {
        return of.stage()
                .reactor()
                .filter(r -> r.position() == Reactor.Position.NEUTRAL)
                .isPresent();
    }

    private static int top(int stage, int phase) {
        return NODES_BEFORE + NODES_A_STAGE * stage + phase;
    }

    private static int star(int stage) {
        return NODES_BEFORE + NODES_A_STAGE * stage + 3;
    }

    private int add(Branch branch) {
        branches.add(branch);
        return branches.size() - 1;
    }

    private List<LegPlace> stage(int s) {
        SwitchedStage of = stages.get(s);
        boolean inLeg = hasLegReactors(of);
        for (int p = 0; p < 3; p++) {
            poles[s][p] = add(Branch.line(
                    of.name() + " pole " + PHASES[p],
                    1 + p,
                    top(s, p),
                    inLeg ? 0.0 : of.path().ohms(),
                    of.path().aheadHenries(perMetre)));
        }
        if (inLeg && of.stage().connection() == Connection.DELTA) {
            return deltaLegs(s);
        }
        if (inLeg && of.stage().connection().isDoubleWye()) {
            return legByLeg(s);
        }
        return starLegs(s);
    }

    /** One branch a phase, whatever the legs are. */
    private List<LegPlace> starLegs(int s) {
        SwitchedStage of = stages.get(s);
        int end = of.stage().connection().isGrounded() && !StarFarads.isOnPaper(of.stage()) ? 0 : star(s);
        boolean inLeg = hasLegReactors(of);
        int[] branch = new int[3];
        for (int p = 0; p < 3; p++) {
            branch[p] = add(Branch.capacitor(
                    of.name() + " leg " + PHASES[p],
                    top(s, p),
                    end,
                    inLeg ? of.path().ohms() : 0.0,
                    of.path().neutralHenries(),
                    of.star().of(p)));
        }
        List<LegPlace> places = new ArrayList<>();
        for (String leg : of.stage().legs()) {
            places.add(
                    of.stage().connection() == Connection.DELTA ? deltaLeg(of, leg, branch) : starLeg(of, leg, branch));
        }
        return places;
    }

    private LegPlace starLeg(SwitchedStage of, String leg, int[] branch) {
        int p = phase(leg);
        double volts = 1.0;
        double amperes = 1.0;
        if (of.stage().connection().isDoubleWye()) {
            amperes = of.legs().of(leg) / of.star().of(p);
        } else if (of.stage().connection().isBridge()) {
            boolean upper = leg.charAt(2) == 'u';
            double own = pair(of, leg, upper);
            double other = pair(of, leg, !upper);
            volts = other / (own + other);
            amperes = of.legs().of(leg) / own;
        }
        return new LegPlace(
                leg,
                one(of.name() + "/" + leg + " volts", Probe.Kind.CAPACITOR_VOLTS, branch[p], volts),
                one(of.name() + "/" + leg, Probe.Kind.AMPERES, branch[p], amperes),
                peakVolts * volts);
    }

    private static double pair(SwitchedStage of, String leg, boolean upper) {
        String half = upper ? "u" : "l";
        return of.legs().of(leg.charAt(0) + "-" + half + "l") + of.legs().of(leg.charAt(0) + "-" + half + "r");
    }

    /** A leg of a delta that is simulated as a star: {@code u_AB = u_A − u_B}, {@code i_AB = C_AB·(i_A/C_A − i_B/C_B)}. */
    private LegPlace deltaLeg(SwitchedStage of, String leg, int[] branch) {
        int first = phase(leg);
        int second = (first + 1) % 3;
        List<Integer> both = List.of(branch[first], branch[second]);
        double farads = of.legs().of(leg);
        return new LegPlace(
                leg,
                Probe.sum(of.name() + "/" + leg + " volts", Probe.Kind.CAPACITOR_VOLTS, both, List.of(1.0, -1.0)),
                Probe.sum(
                        of.name() + "/" + leg,
                        Probe.Kind.AMPERES,
                        both,
                        List.of(
                                farads / of.star().of(first),
                                -farads / of.star().of(second))),
                peakVolts * Math.sqrt(3.0));
    }

    /** A delta with a reactor in each leg. */
    private List<LegPlace> deltaLegs(int s) {
        SwitchedStage of = stages.get(s);
        List<LegPlace> places = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            String leg = of.stage().legs().get(p);
            int branch = add(Branch.capacitor(
                    of.name() + " leg " + leg,
                    top(s, p),
                    top(s, (p + 1) % 3),
                    3.0 * of.path().ohms(),
                    3.0 * of.path().neutralHenries(),
                    of.legs().of(leg)));
            places.add(place(of, leg, branch, peakVolts * Math.sqrt(3.0)));
        }
        return places;
    }

    /** Two wyes with a reactor in each leg. */
    private List<LegPlace> legByLeg(int s) {
        SwitchedStage of = stages.get(s);
        int end = of.stage().connection().isGrounded() ? 0 : star(s);
        List<LegPlace> places = new ArrayList<>();
        for (String leg : of.stage().legs()) {
            int branch = add(Branch.capacitor(
                    of.name() + " leg " + leg,
                    top(s, phase(leg)),
                    end,
                    2.0 * of.path().ohms(),
                    2.0 * of.path().neutralHenries(),
                    of.legs().of(leg)));
            places.add(place(of, leg, branch, peakVolts));
        }
        return places;
    }

    private static LegPlace place(SwitchedStage of, String leg, int branch, double peak) {
        return new LegPlace(
                leg,
                Probe.capacitorVolts(of.name() + "/" + leg + " volts", branch),
                Probe.amperes(of.name() + "/" + leg, branch),
                peak);
    }

    private static Probe one(String name, Probe.Kind kind, int branch, double factor) {
        return Probe.sum(name, kind, List.of(branch), List.of(factor));
    }

    private static int phase(String leg) {
        return leg.charAt(0) - 'A';
    }
}
