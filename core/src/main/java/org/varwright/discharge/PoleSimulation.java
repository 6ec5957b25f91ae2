package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import org.varwright.quantity.Complex;

/**
 * Opens the poles of a stage one after another, each at the zero of its own current.
 *
 * <p><b>Model.</b> Capacitances and three ideal sinusoidal sources behind ideal poles. Between two clearings the voltages are sinusoids about constants, so every
 * current zero is found exactly; a node that was cut off keeps its charge (DIS-11). The contacts part just before the first pole's zero.
 * <p><b>Not modelled.</b> Restrikes, current chopping, source and reactor inductance, discharge resistors within the half cycle that it takes.
 * <p><b>Accuracy.</b> Rounding.
 * <p><b>Source.</b> First principles.
 */
final class PoleSimulation {
    private static final List<String> PHASES = List.of("A", "B", "C");

    /** Moments closer than this part of a cycle count as one. */
    private static final double TIE_RADIANS = 1e-7;

    private final StageCircuit circuit;
    private final double[][] capacitance;
    private final List<Complex> source;
    private final double omega;

    /**
     * A stage about to be opened.
     *
     * @param circuit of the stage
     * @param peakVolts peak of line to neutral voltage [V], above 0
     * @param hertz frequency [Hz], above 0
     * @param faultOnA whether phase A stands at ground: then B and C stand at line voltage against ground
     */
    PoleSimulation(StageCircuit circuit, double peakVolts, double hertz, boolean faultOnA) {
        this.circuit = circuit;
        omega = 2.0 * Math.PI * hertz;
        List<Complex> volts = new ArrayList<>();
        Complex shift = Complex.polar(faultOnA ? peakVolts : 0.0, 0.0);
        for (int p = 0; p < 3; p++) {
            volts.add(Complex.polar(peakVolts, -120.0 * p).minus(shift));
        }
        source = List.copyOf(volts);
        int n = circuit.nodes().size();
        capacitance = new double[n][n];
        for (StageCircuit.Leg leg : circuit.legs()) {
            double farads = leg.farads();
            capacitance[leg.from()][leg.from()] += farads;
            capacitance[leg.to()][leg.to()] += farads;
            capacitance[leg.from()][leg.to()] -= farads;
            capacitance[leg.to()][leg.from()] -= farads;
        }
    }

    /** One opening with every pole in turn the first to clear. */
    List<PoleOpening> all() {
        List<PoleOpening> openings = new ArrayList<>();
        for (int first = 0; first < 3; first++) {
            openings.add(open(first));
        }
        return openings;
    }

    /** The state between two clearings: node voltages are {@code Re(phasor·e^(jωt)) + constant}. */
    private static final class Span {
        private final List<Complex> phasors;
        private final double[] constants;

        private Span(List<Complex> phasors, double[] constants) {
            this.phasors = phasors;
            this.constants = constants;
        }

        double volts(int node, double angle) {
            Complex v = phasors.get(node);
            return v.re() * Math.cos(angle) - v.im() * Math.sin(angle) + constants[node];
        }
    }

    private PoleOpening open(int first) {
        return run(first).opening;
    }

    /** One opening with the voltages on the way: {@code spans.get(i)} holds from {@code angles.get(i)} on, the first from ever. */
    private record Run(PoleOpening opening, double start, List<Double> angles, List<Span> spans) {}

    /**
     * Voltages of all legs at one moment of an opening [V].
     *
     * @param first pole that clears first, 0 to 2
     * @param seconds after it cleared [s]; before it below 0
     */
    double[][] legVolts(int first, double[] seconds) {
        Run run = run(first);
        double[][] volts = new double[circuit.legs().size()][seconds.length];
        for (int i = 0; i < seconds.length; i++) {
            double angle = run.start + omega * seconds[i];
            int k = 0;
            while (k + 1 < run.angles.size() && angle >= run.angles.get(k + 1)) {
                k++;
            }
            // after the last clearing every leg keeps what it had
            double at = k == run.spans.size() ? run.angles.getLast() : angle;
            Span span = run.spans.get(Math.min(k, run.spans.size() - 1));
            for (int l = 0; l < volts.length; l++) {
                StageCircuit.Leg leg = circuit.legs().get(l);
                volts[l][i] = span.volts(leg.from(), at) - span.volts(leg.to(), at);
            }
        }
        return volts;
    }

    /** Angle of the source at which the first pole clears, phase A being at its crest at 0 [rad]. */
    double startRadians(int first) {
        return run(first).start;
    }

    private Run run(int first) {
        int n = circuit.nodes().size();
        double[] charge = new double[n];
        boolean[] closed = {true, true, true};
        Span span = span(closed, charge);
        double angle = zero(span, first, 0.0);
        if (polarity(span, first, angle) < 0.0) {
            angle += Math.PI;
        }
        double start = angle;
        List<Double> angles = new ArrayList<>(List.of(Double.NEGATIVE_INFINITY));
        List<Span> spans = new ArrayList<>(List.of(span));
        List<PoleOpening.Clearing> clearings = new ArrayList<>();
        while (closed[0] || closed[1] || closed[2]) {
            List<String> cleared = new ArrayList<>();
            double[] held = charges(span, angle);
            for (int p = 0; p < 3; p++) {
                if (closed[p] && clears(span, p, angle)) {
                    closed[p] = false;
                    cleared.add(PHASES.get(p));
                    charge[circuit.terminals().get(p)] =
                            held[circuit.terminals().get(p)];
                }
            }
            clearings.add(new PoleOpening.Clearing(cleared, (angle - start) / omega));
            angles.add(angle);
            if (closed[0] || closed[1] || closed[2]) {
                span = span(closed, charge);
                spans.add(span);
                angle = next(span, closed, angle);
            }
        }
        return new Run(result(first, clearings, span, angle), start, angles, spans);
    }

    private PoleOpening result(int first, List<PoleOpening.Clearing> clearings, Span span, double angle) {
        double phasePeak = source.get(1).minus(source.get(2)).magnitude() / Math.sqrt(3.0);
        boolean delta = circuit.nodes().size() == 3;
        List<PoleOpening.LegHold> legs = new ArrayList<>();
        for (StageCircuit.Leg leg : circuit.legs()) {
            double volts = span.volts(leg.from(), angle) - span.volts(leg.to(), angle);
            double peak = delta ? Math.sqrt(3.0) * phasePeak : phasePeak * share(leg);
            legs.add(new PoleOpening.LegHold(leg.name(), volts, volts / peak));
        }
        List<PoleOpening.Potential> potentials = new ArrayList<>();
        for (int i = 0; i < circuit.nodes().size(); i++) {
            double volts = span.volts(i, angle);
            potentials.add(new PoleOpening.Potential(circuit.nodes().get(i), volts, volts / phasePeak));
        }
        return new PoleOpening(PHASES.get(first), clearings, legs, potentials);
    }

    /** Part of the phase voltage that stands across a leg: half on each quarter of a bridge, named such as {@code A-ul}. */
    private static double share(StageCircuit.Leg leg) {
        return leg.name().contains("-") ? 0.5 : 1.0;
    }

    /** Voltages of all nodes while these poles are closed. */
    private Span span(boolean[] closed, double[] charge) {
        int n = circuit.nodes().size();
        List<Integer> free = new ArrayList<>();
        Complex[] phasors = new Complex[n];
        for (int i = 0; i < n; i++) {
            int phase = circuit.terminals().indexOf(i);
            if (circuit.grounded() && i == 0) {
                phasors[i] = Complex.ZERO;
            } else if (phase >= 0 && closed[phase]) {
                phasors[i] = source.get(phase);
            } else {
                free.add(i);
            }
        }
        double[] constants = new double[n];
        if (!free.isEmpty()) {
            int m = free.size();
            double[][] own = new double[m][m];
            double[] re = new double[m];
            double[] im = new double[m];
            double[] dc = new double[m];
            for (int i = 0; i < m; i++) {
                dc[i] = charge[free.get(i)];
                for (int j = 0; j < m; j++) {
                    own[i][j] = capacitance[free.get(i)][free.get(j)];
                }
                for (int k = 0; k < n; k++) {
                    if (!free.contains(k)) {
                        re[i] -= capacitance[free.get(i)][k] * phasors[k].re();
                        im[i] -= capacitance[free.get(i)][k] * phasors[k].im();
                    }
                }
            }
            Cholesky factors = Cholesky.of(own);
            double[] x = factors.solve(re);
            double[] y = factors.solve(im);
            double[] z = factors.solve(dc);
            for (int i = 0; i < m; i++) {
                phasors[free.get(i)] = new Complex(x[i], y[i]);
                constants[free.get(i)] = z[i];
            }
        }
        return new Span(List.of(phasors), constants);
    }

    /** Charge of a pole's node as a phasor; its current is {@code jω} times that. */
    private Complex chargePhasor(Span span, int pole) {
        Complex sum = Complex.ZERO;
        int node = circuit.terminals().get(pole);
        for (int k = 0; k < circuit.nodes().size(); k++) {
            sum = sum.plus(span.phasors.get(k).times(capacitance[node][k]));
        }
        return sum;
    }

    private double[] charges(Span span, double angle) {
        int n = circuit.nodes().size();
        double[] charge = new double[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                charge[i] += capacitance[i][k] * span.volts(k, angle);
            }
        }
        return charge;
    }

    /** The first zero of a pole's current from {@code angle} on: its charge is at a crest there. */
    private double zero(Span span, int pole, double angle) {
        Complex q = chargePhasor(span, pole);
        double crest = -Math.atan2(q.im(), q.re());
        double steps = Math.ceil((angle - crest) / Math.PI - TIE_RADIANS);
        return crest + steps * Math.PI;
    }

    private static double polarity(Complex q, double angle) {
        return q.re() * Math.cos(angle) - q.im() * Math.sin(angle);
    }

    private double polarity(Span span, int pole, double angle) {
        return polarity(chargePhasor(span, pole), angle);
    }

    private boolean carriesNothing(Span span, int pole) {
        int node = circuit.terminals().get(pole);
        return chargePhasor(span, pole).magnitude()
                <= 1e-9
                        * capacitance[node][node]
                        * source.get(1).minus(source.get(2)).magnitude();
    }

    private boolean clears(Span span, int pole, double angle) {
        if (carriesNothing(span, pole)) {
            return true;
        }
        Complex q = chargePhasor(span, pole);
        double offCrest = Math.abs(Math.sin(angle + Math.atan2(q.im(), q.re())));
        return offCrest < 10.0 * TIE_RADIANS;
    }

    private double next(Span span, boolean[] closed, double angle) {
        double soonest = Double.POSITIVE_INFINITY;
        for (int p = 0; p < 3; p++) {
            if (closed[p]) {
                soonest = Math.min(soonest, carriesNothing(span, p) ? angle : zero(span, p, angle));
            }
        }
        return soonest;
    }
}
