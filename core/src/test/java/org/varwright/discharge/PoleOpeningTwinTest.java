package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/**
 * Openings against a twin that knows no phasors: it walks through the cycle in small steps, keeps the charge of every node that was cut off, and opens a pole
 * where the charge that it carries turns.
 */
class PoleOpeningTwinTest {
    private static final int STEPS_A_TURN = 4000;
    private static final double STEP = 2.0 * Math.PI / STEPS_A_TURN;

    /** Of the peak: a step off in the moment of a clearing is 0.16 % of a radian. */
    private static final double NEAR = 0.008;

    private static final UnitType UNIT =
            BankSketch.type("U", 300e3, 7960, 60, new Tolerance(0.0, 0.0), 0, 0, false, Optional.empty());

    private static StageCircuit circuit(Connection connection, LegLayout layout, SplittableRandom random) {
        BankSketch sketch = new BankSketch().stage("s", connection, layout, UNIT);
        for (UnitPosition at : sketch.build().stages().getFirst().positions()) {
            sketch.known(at.name(), "", 12e-6 * random.nextDouble(0.7, 1.3));
        }
        Bank bank = sketch.build();
        return StageCircuit.of(
                new UnitValues(bank, UnitReadings.NONE), bank.stages().getFirst(), new Resistance.NotKnown());
    }

    /** One opening, step by step. */
    private static final class Walk {
        private final StageCircuit circuit;
        private final boolean fault;
        private final double[] held;
        private final boolean[] closed = {true, true, true};

        /** Voltage of every leg over time, one entry a step, the first pole's clearing among them at {@code start}. */
        private final List<double[]> volts = new ArrayList<>();

        private final List<Integer> order = new ArrayList<>();
        private final int[] clearedAt = new int[3];
        private int start = -1;

        Walk(StageCircuit circuit, int first, boolean fault) {
            this.circuit = circuit;
            this.fault = fault;
            held = new double[circuit.nodes().size()];
            double[] before = charges(nodes(0));
            double[] now = charges(nodes(1));
            volts.add(legs(nodes(0)));
            volts.add(legs(nodes(1)));
            for (int n = 2; n < 3 * STEPS_A_TURN; n++) {
                double[] next = charges(nodes(n));
                boolean isFirst = start < 0 && turns(before, now, next, first) && now[terminal(first)] > 0.0;
                if (isFirst) {
                    start = n - 1;
                    open(first, now, n - 1);
                }
                if (start >= 0) {
                    boolean again = true;
                    while (again) {
                        again = false;
                        double[] then = charges(nodes(n - 1));
                        double[] later = charges(nodes(n));
                        for (int p = 0; p < 3; p++) {
                            if (closed[p] && (turns(before, then, later, p) || idle(then, later, p))) {
                                open(p, then, n - 1);
                                again = true;
                                break;
                            }
                        }
                    }
                }
                before = now;
                now = charges(nodes(n));
                volts.add(legs(nodes(n)));
            }
        }

        private int terminal(int pole) {
            return circuit.terminals().get(pole);
        }

        private boolean turns(double[] before, double[] now, double[] next, int pole) {
            int t = terminal(pole);
            return (now[t] - before[t]) * (next[t] - now[t]) <= 0.0;
        }

        /** A pole that stands in series with one that has opened carries nothing from then on. */
        private boolean idle(double[] now, double[] next, int pole) {
            int t = terminal(pole);
            return Math.abs(next[t] - now[t]) < 1e-12;
        }

        private void open(int pole, double[] charges, int step) {
            closed[pole] = false;
            held[terminal(pole)] = charges[terminal(pole)];
            order.add(pole);
            clearedAt[pole] = step;
        }

        /** Node voltages at a step, with the poles as they stand. */
        private double[] nodes(int step) {
            int n = circuit.nodes().size();
            double[][] rows = new double[n][n + 1];
            for (StageCircuit.Leg leg : circuit.legs()) {
                rows[leg.from()][leg.from()] += leg.farads() * 1e5;
                rows[leg.to()][leg.to()] += leg.farads() * 1e5;
                rows[leg.from()][leg.to()] -= leg.farads() * 1e5;
                rows[leg.to()][leg.from()] -= leg.farads() * 1e5;
            }
            for (int i = 0; i < n; i++) {
                rows[i][n] = held[i] * 1e5;
            }
            for (int p = 0; p < 3; p++) {
                if (closed[p]) {
                    fix(rows, terminal(p), source(p, step) - (fault ? source(0, step) : 0.0));
                }
            }
            if (circuit.grounded()) {
                fix(rows, 0, 0.0);
            } else if (!closed[0] && !closed[1] && !closed[2]) {
                // all floats: voltages across legs don't depend on where
                fix(rows, 0, 0.0);
            }
            return solve(rows);
        }

        private static void fix(double[][] rows, int node, double volts) {
            Arrays.fill(rows[node], 0.0);
            rows[node][node] = 1.0;
            rows[node][rows.length] = volts;
        }

        private static double source(int phase, int step) {
            return Math.cos(step * STEP - phase * 2.0 * Math.PI / 3.0);
        }

        private double[] charges(double[] volts) {
            double[] charge = new double[volts.length];
            for (StageCircuit.Leg leg : circuit.legs()) {
                double q = leg.farads() * (volts[leg.from()] - volts[leg.to()]);
                charge[leg.from()] += q;
                charge[leg.to()] -= q;
            }
            return charge;
        }

        private double[] legs(double[] nodes) {
            return circuit.legs().stream()
                    .mapToDouble(l -> nodes[l.from()] - nodes[l.to()])
                    .toArray();
        }

        private static double[] solve(double[][] rows) {
            int n = rows.length;
            for (int p = 0; p < n; p++) {
                int best = p;
                for (int r = p + 1; r < n; r++) {
                    best = Math.abs(rows[r][p]) > Math.abs(rows[best][p]) ? r : best;
                }
                double[] swap = rows[p];
                rows[p] = rows[best];
                rows[best] = swap;
                for (int r = 0; r < n; r++) {
                    double f = r == p ? 0.0 : rows[r][p] / rows[p][p];
                    for (int c = p; c <= n && f != 0.0; c++) {
                        rows[r][c] -= f * rows[p][c];
                    }
                }
            }
            double[] x = new double[n];
            for (int i = 0; i < n; i++) {
                x[i] = rows[i][n] / rows[i][i];
            }
            return x;
        }
    }

    private static void same(StageCircuit circuit, int first, boolean fault, String what) {
        Walk walk = new Walk(circuit, first, fault);
        assertEquals(3, walk.order.size(), what);
        PoleSimulation simulation = new PoleSimulation(circuit, 1.0, 60.0, fault);
        PoleOpening opening = simulation.all().get(first);
        double peak = circuit.isDelta() || fault ? Math.sqrt(3.0) : 1.0;
        double[] last = walk.volts.getLast();
        for (int l = 0; l < last.length; l++) {
            assertEquals(last[l], opening.legs().get(l).volts(), NEAR * peak, what + " leg " + l);
        }
        assertEquals("ABC".substring(first, first + 1), opening.firstPole(), what);
        for (PoleOpening.Clearing clearing : opening.clearings()) {
            for (String pole : clearing.poles()) {
                double seconds = (walk.clearedAt["ABC".indexOf(pole)] - walk.start) / (60.0 * STEPS_A_TURN);
                assertEquals(seconds, clearing.seconds(), 2.1 / (60.0 * STEPS_A_TURN), what + " pole " + pole);
            }
        }
        // on the way: before the first clearing, between clearings, after the last
        int[] at = {-700, -1, 300, 640, 900, 1800, 2500};
        double[] seconds =
                Arrays.stream(at).mapToDouble(s -> s / (60.0 * STEPS_A_TURN)).toArray();
        double[][] course = simulation.legVolts(first, seconds);
        for (int i = 0; i < at.length; i++) {
            if (walk.start + at[i] >= 0) {
                double[] expected = walk.volts.get(walk.start + at[i]);
                for (int l = 0; l < expected.length; l++) {
                    assertEquals(expected[l], course[l][i], NEAR * peak, what + " leg " + l + " at step " + at[i]);
                }
            }
        }
        double turn = 2.0 * Math.PI;
        double angle = simulation.startRadians(first) - walk.start * STEP;
        assertEquals(0.0, Math.abs(angle - turn * Math.round(angle / turn)), 2.0 * STEP, what);
    }

    @Test
    void everyConnectionWithUnlikeCapacitancesOpensAsTheTwinDoes() {
        SplittableRandom random = new SplittableRandom(20);
        for (Connection connection : Connection.values()) {
            for (LegLayout layout : List.of(new LegLayout(1, 1, 1), new LegLayout(2, 2, 1))) {
                StageCircuit circuit = circuit(connection, layout, random);
                for (int first = 0; first < 3; first++) {
                    same(circuit, first, false, connection.code() + " " + layout + " first " + first);
                }
                // phase A at ground: the poles of B and C carry line voltage's current
                if (connection.isGrounded()) {
                    same(circuit, 1, true, connection.code() + " with a fault, first 1");
                    same(circuit, 2, true, connection.code() + " with a fault, first 2");
                }
            }
        }
    }

    /** The most that any unit holds where one was out before opening: of all openings without one unit of a group, the highest of its units. */
    @Test
    void aUnitThatIsOutMakesItsMatesHoldMore() {
        for (Connection connection : List.of(Connection.WYE_UNGROUNDED, Connection.WYE_GROUNDED, Connection.DELTA)) {
            Bank bank = new BankSketch()
                    .stage("s", connection, new LegLayout(1, 2, 3), UNIT)
                    .build();
            StageCourse course = Discharge.of(bank, Optional.empty()).courses().getFirst();
            StageCircuit circuit = StageCircuit.of(
                    new UnitValues(bank, UnitReadings.NONE), bank.stages().getFirst(), new Resistance.NotKnown());
            double phase = Discharge.of(bank, Optional.empty())
                    .stages()
                    .getFirst()
                    .opening()
                    .phasePeakVolts(circuit.isDelta());
            // by hand: two groups of three in series, one of them down to two units: 2/3·C in series with C
            double leg = circuit.legs().getFirst().farads();
            double changed = leg * 2.0 * (2.0 / 3.0) / (1.0 + 2.0 / 3.0);
            double share = 1.0 / (1.0 + 2.0 / 3.0);
            double highest = 0.0;
            for (int out = 0; out < 3; out++) {
                List<StageCircuit.Leg> legs = new ArrayList<>(circuit.legs());
                StageCircuit.Leg old = legs.get(out);
                StageCircuit.Group lumped = new StageCircuit.Group(1, 1, changed, 0.0, List.of());
                legs.set(out, new StageCircuit.Leg(old.name(), old.from(), old.to(), List.of(List.of(lumped))));
                StageCircuit less = new StageCircuit(
                        circuit.stage(), circuit.nodes(), circuit.terminals(), circuit.grounded(), legs);
                for (int first = 0; first < 3; first++) {
                    double[] held = new Walk(less, first, false).volts.getLast();
                    for (int l = 0; l < 3; l++) {
                        highest = Math.max(highest, Math.abs(held[l]) * (l == out ? share : 0.5));
                    }
                }
            }
            assertEquals(highest * phase, course.oneOutVolts().orElseThrow(), NEAR * phase, connection.code());
        }
        Bank single = new BankSketch()
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 2, 1), UNIT)
                .build();
        assertTrue(Discharge.of(single, Optional.empty())
                .courses()
                .getFirst()
                .oneOutVolts()
                .isEmpty());
    }
}
