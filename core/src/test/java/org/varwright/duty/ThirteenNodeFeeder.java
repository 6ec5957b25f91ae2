package org.varwright.duty;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.quantity.Complex;

/**
 * The IEEE 13-node test feeder, solved phase by phase with plain sweeps: currents up the tree, voltages down, until nothing moves.
 *
 * <pre>
 *  646 ── 645 ── 632 ── 633 ── 634 (transformer)
 *                 │
 *  611 ── 684 ── 671 ── 692 ── 675 (bank)      650 ── regulator ── 632
 *          │      │
 *         652    680
 * </pre>
 *
 * <p>Data: IEEE PES Distribution System Analysis Subcommittee, "IEEE 13 Node Test Feeder". Line charging (a few kvar) is left out; the load spread along 632 to
 * 671 stands half at each end.
 */
final class ThirteenNodeFeeder {
    private static final double PHASE_VOLTS = 4160.0 / Math.sqrt(3.0);
    private static final double FEET_A_MILE = 5280.0;

    /** Ω a mile, upper triangle row by row: aa ab ac bb bc cc as R, X. */
    private static final double[] C601 = {
        0.3465, 1.0179, 0.1560, 0.5017, 0.1580, 0.4236, 0.3375, 1.0478, 0.1535, 0.3849, 0.3414, 1.0348
    };

    private static final double[] C602 = {
        0.7526, 1.1814, 0.1580, 0.4236, 0.1560, 0.5017, 0.7475, 1.1983, 0.1535, 0.3849, 0.7436, 1.2112
    };
    private static final double[] C603 = {0, 0, 0, 0, 0, 0, 1.3294, 1.3471, 0.2066, 0.4591, 1.3238, 1.3569};
    private static final double[] C604 = {1.3238, 1.3569, 0, 0, 0.2066, 0.4591, 0, 0, 0, 0, 1.3294, 1.3471};
    private static final double[] C605 = {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1.3292, 1.3475};
    private static final double[] C606 = {
        0.7982, 0.4463, 0.3192, 0.0328, 0.2849, -0.0143, 0.7891, 0.4041, 0.3192, 0.0328, 0.7982, 0.4463
    };
    private static final double[] C607 = {1.3425, 0.5124, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0};

    private enum Kind {
        POWER,
        CURRENT,
        IMPEDANCE
    }

    private record Segment(String from, String to, List<List<Complex>> ohms) {}

    /** A load between a phase and neutral ({@code to} −1) or between two phases [VA]. */
    private record Load(String node, int from, int to, Complex voltAmperes, Kind kind) {}

    private final List<Segment> segments = new ArrayList<>();
    private final List<Load> loads = new ArrayList<>();
    private final Map<String, Complex[]> volts = new LinkedHashMap<>();

    private ThirteenNodeFeeder(boolean bank) {
        segment("650", "632", 2000, C601);
        segment("632", "633", 500, C602);
        double base = 4160.0 * 4160.0 / 500e3;
        segments.add(new Segment("633", "634", diagonal(new Complex(0.011 * base, 0.02 * base))));
        segment("632", "645", 500, C603);
        segment("645", "646", 300, C603);
        segment("632", "671", 2000, C601);
        segment("671", "680", 1000, C601);
        segment("671", "684", 300, C604);
        segment("684", "611", 300, C605);
        segment("684", "652", 800, C607);
        segments.add(new Segment("671", "692", diagonal(Complex.ZERO)));
        segment("692", "675", 500, C606);
        wye("634", Kind.POWER, 160, 110, 120, 90, 120, 90);
        wye("645", Kind.POWER, 0, 0, 170, 125, 0, 0);
        delta("646", Kind.IMPEDANCE, 0, 0, 230, 132, 0, 0);
        wye("652", Kind.IMPEDANCE, 128, 86, 0, 0, 0, 0);
        delta("671", Kind.POWER, 385, 220, 385, 220, 385, 220);
        wye("675", Kind.POWER, 485, 190, 68, 60, 290, 212);
        delta("692", Kind.CURRENT, 0, 0, 0, 0, 170, 151);
        wye("611", Kind.CURRENT, 0, 0, 0, 0, 170, 80);
        wye("632", Kind.POWER, 8.5, 5, 33, 19, 58.5, 34);
        wye("671", Kind.POWER, 8.5, 5, 33, 19, 58.5, 34);
        wye("611", Kind.IMPEDANCE, 0, 0, 0, 0, 0, -100);
        if (bank) {
            wye("675", Kind.IMPEDANCE, 0, -200, 0, -200, 0, -200);
        }
        // Taps of 5/8 %: 10, 8, 11 raise node 650 to the regulator's output.
        double[] raise = {1.0 + 10 * 0.00625, 1.0 + 8 * 0.00625, 1.0 + 11 * 0.00625};
        Complex[] head = new Complex[3];
        for (int p = 0; p < 3; p++) {
            head[p] = Complex.polar(PHASE_VOLTS * raise[p], -120.0 * p);
        }
        volts.put("650", head);
        segments.forEach(s -> volts.put(s.to(), head.clone()));
    }

    /** Voltages to ground at node 675, phases A, B, C [V]. */
    static double[] volts675(boolean bank) {
        ThirteenNodeFeeder feeder = new ThirteenNodeFeeder(bank);
        double moved = 1.0;
        for (int i = 0; i < 200 && moved > 1e-9; i++) {
            moved = feeder.sweep();
        }
        if (moved > 1e-9) {
            throw new AssertionError("the feeder does not settle: " + moved);
        }
        return Arrays.stream(feeder.at("675")).mapToDouble(Complex::magnitude).toArray();
    }

    /** From node 650 to node 675: self less mutual, mean of the phases [Ω]. */
    static double[] positiveSequenceOhms() {
        double[] sum = new double[2];
        double[][] parts = {C601, C606};
        double[] feet = {4000.0, 500.0};
        for (int i = 0; i < parts.length; i++) {
            double[] c = parts[i];
            for (int k = 0; k < 2; k++) {
                double self = (c[k] + c[6 + k] + c[10 + k]) / 3.0;
                double mutual = (c[2 + k] + c[4 + k] + c[8 + k]) / 3.0;
                sum[k] += (self - mutual) * feet[i] / FEET_A_MILE;
            }
        }
        return sum;
    }

    private Complex[] at(String node) {
        return java.util.Objects.requireNonNull(volts.get(node));
    }

    private double sweep() {
        Map<String, Complex[]> drawn = new LinkedHashMap<>();
        volts.keySet().forEach(n -> drawn.put(n, new Complex[] {Complex.ZERO, Complex.ZERO, Complex.ZERO}));
        for (Load load : loads) {
            Complex[] v = at(load.node());
            Complex across = load.to() < 0 ? v[load.from()] : v[load.from()].minus(v[load.to()]);
            double nominal = load.to() < 0 ? PHASE_VOLTS : 4160.0;
            double scale = switch (load.kind()) {
                case POWER -> 1.0;
                case CURRENT -> across.magnitude() / nominal;
                case IMPEDANCE -> across.magnitude() * across.magnitude() / nominal / nominal;
            };
            Complex amperes = load.voltAmperes().times(scale).dividedBy(across).conjugate();
            Complex[] at = java.util.Objects.requireNonNull(drawn.get(load.node()));
            at[load.from()] = at[load.from()].plus(amperes);
            if (load.to() >= 0) {
                at[load.to()] = at[load.to()].minus(amperes);
            }
        }
        for (Segment s : segments.reversed()) {
            Complex[] up = java.util.Objects.requireNonNull(drawn.get(s.from()));
            Complex[] down = java.util.Objects.requireNonNull(drawn.get(s.to()));
            for (int p = 0; p < 3; p++) {
                up[p] = up[p].plus(down[p]);
            }
        }
        double moved = 0.0;
        for (Segment s : segments) {
            Complex[] amperes = java.util.Objects.requireNonNull(drawn.get(s.to()));
            Complex[] next = new Complex[3];
            for (int p = 0; p < 3; p++) {
                next[p] = at(s.from())[p];
                for (int q = 0; q < 3; q++) {
                    next[p] = next[p].minus(s.ohms().get(p).get(q).times(amperes[q]));
                }
                moved = Math.max(moved, next[p].minus(at(s.to())[p]).magnitude());
            }
            volts.put(s.to(), next);
        }
        return moved;
    }

    private void segment(String from, String to, double feet, double[] c) {
        int[][] place = {{0, 1, 2}, {1, 3, 4}, {2, 4, 5}};
        List<List<Complex>> ohms = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            List<Complex> row = new ArrayList<>();
            for (int q = 0; q < 3; q++) {
                int i = 2 * place[p][q];
                row.add(new Complex(c[i], c[i + 1]).times(feet / FEET_A_MILE));
            }
            ohms.add(row);
        }
        segments.add(new Segment(from, to, ohms));
    }

    private static List<List<Complex>> diagonal(Complex z) {
        Complex o = Complex.ZERO;
        return List.of(List.of(z, o, o), List.of(o, z, o), List.of(o, o, z));
    }

    private void wye(String node, Kind kind, double... kilo) {
        for (int p = 0; p < 3; p++) {
            add(node, p, -1, kilo[2 * p], kilo[2 * p + 1], kind);
        }
    }

    /** Phases A-B, B-C, C-A. */
    private void delta(String node, Kind kind, double... kilo) {
        for (int p = 0; p < 3; p++) {
            add(node, p, (p + 1) % 3, kilo[2 * p], kilo[2 * p + 1], kind);
        }
    }

    private void add(String node, int from, int to, double kilowatts, double kilovars, Kind kind) {
        if (kilowatts != 0.0 || kilovars != 0.0) {
            loads.add(new Load(node, from, to, new Complex(kilowatts * 1e3, kilovars * 1e3), kind));
        }
    }
}
