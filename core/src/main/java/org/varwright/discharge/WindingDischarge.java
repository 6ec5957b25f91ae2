package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.DischargePath;
import org.varwright.quantity.SymmetricEigen;

/**
 * Charge that flows off through the windings of a voltage transformer or coil.
 *
 * @param ohms of one winding [Ω]
 * @param henries of one winding [H]; empty where not given
 * @param farads capacitance that the slowest way of flowing off sees in one winding [F] (DIS-13)
 * @param initialVolts highest voltage across a winding at opening [V]
 * @param behaviour how it flows off
 * @param peakAmperes highest current in a winding [A]: with an inductance its crest, else the upper bound {@code v0/R}
 * @param secondsToSafe until the voltage stays below the safe one [s]; empty without an inductance, which can only make it longer
 * @param leastSeconds what it takes at least, inductance left out: {@code R·C·ln(v0/V)} [s]
 * @param oscillationHertz frequency of the swinging [Hz]; empty where it doesn't swing or is not known
 * @param windingJoules the most that one winding takes in one discharge [J]
 * @param leftVolts what the windings leave on every leg alike [V]: windings between lines don't drain what all lines hold in common against a grounded neutral
 */
public record WindingDischarge(
        double ohms,
        OptionalDouble henries,
        double farads,
        double initialVolts,
        Behaviour behaviour,
        double peakAmperes,
        OptionalDouble secondsToSafe,
        double leastSeconds,
        OptionalDouble oscillationHertz,
        double windingJoules,
        double leftVolts) {
    /** How the charge flows off. */
    public enum Behaviour {
        /** It swings: the voltage comes back with the other sign, each time lower. */
        OSCILLATING,
        /** It creeps towards zero. */
        CREEPING,
        /** Not known without an inductance. */
        NOT_KNOWN
    }

    /** Nearer than this to critical damping counts as critical: the formulas of both sides meet there. */
    private static final double NEARLY_CRITICAL = 1e-9;

    /**
     * The discharge of a stage through its path; empty where there is none, or where the file joins it to a neutral that the stage does not have.
     *
     * @param stage how it discharges by itself
     * @param circuit of it
     * @param openings with every pole the first to clear
     */
    static Optional<WindingDischarge> of(StageDischarge stage, StageCircuit circuit, List<PoleOpening> openings) {
        Optional<DischargePath> path = stage.stage().dischargePath();
        if (path.isEmpty() || (circuit.isDelta() && path.get().between() == DischargePath.Between.LINE_TO_NEUTRAL)) {
            return Optional.empty();
        }
        boolean lines = path.get().between() == DischargePath.Between.LINES;
        double legVolts = stage.opening().initialVolts() * stage.opening().seriesGroups();
        double between = stage.opening().betweenConductorsVolts(stage.opening().initialVolts());
        double[][] elastance = elastance(circuit, lines);
        return Optional.of(of(
                elastance,
                path.get().resistanceOhms(),
                path.get().henries(),
                lines ? between : legVolts,
                stage.chosen().volts(),
                lines ? stage.stagePeakJoules() : stage.legCharge().joules(),
                lines && circuit.grounded() ? common(circuit, openings) : 0.0));
    }

    /** Charge of all legs over their capacitance: what stays when their lines are brought together. */
    private static double common(StageCircuit circuit, List<PoleOpening> openings) {
        double highest = 0.0;
        for (PoleOpening opening : openings) {
            double charge = 0.0;
            double farads = 0.0;
            for (int l = 0; l < circuit.legs().size(); l++) {
                if (circuit.terminals().contains(circuit.legs().get(l).from())) {
                    charge += circuit.legs().get(l).farads()
                            * opening.legs().get(l).volts();
                    farads += circuit.legs().get(l).farads();
                }
            }
            int halves = circuit.stage().connection().isBridge() ? 2 : 1;
            highest = Math.max(highest, halves * Math.abs(charge) / farads);
        }
        return highest;
    }

    /**
     * The slowest way in which a stage empties through its windings.
     *
     * <p><b>Model.</b> {@code L·di/dt + R·i = v}, {@code C·dv/dt = −i} for every mode of capacitances and windings (DIS-13); {@code α = R/2L},
     * {@code ω0 = 1/√(LC)}.
     * <p><b>Not modelled.</b> Saturation of the core, which lowers L and makes it quicker with a higher current, up to {@code v0/R} at most; the units' own
     * resistors; burden on the secondary side.
     * <p><b>Source.</b> First principles.
     *
     * @param elastance eigenvalue sought among these: {@code bᵀ·C⁻¹·b} between all windings [1/F]
     * @param ohms of one winding [Ω], above 0
     * @param henries of one winding [H]
     * @param initialVolts highest voltage across a winding [V], above 0
     * @param safeVolts [V], above 0
     * @param windingJoules energy that one winding takes at most [J]
     * @param leftVolts what they leave on every leg alike [V]
     */
    private static WindingDischarge of(
            double[][] elastance,
            double ohms,
            OptionalDouble henries,
            double initialVolts,
            double safeVolts,
            double windingJoules,
            double leftVolts) {
        double farads = 1.0 / slowest(elastance);
        double least = Decay.secondsTo(farads, ohms, initialVolts, safeVolts);
        if (henries.isEmpty()) {
            return new WindingDischarge(
                    ohms,
                    henries,
                    farads,
                    initialVolts,
                    Behaviour.NOT_KNOWN,
                    initialVolts / ohms,
                    OptionalDouble.empty(),
                    least,
                    OptionalDouble.empty(),
                    windingJoules,
                    leftVolts);
        }
        Swing swing = new Swing(farads, ohms, henries.getAsDouble(), initialVolts);
        return new WindingDischarge(
                ohms,
                henries,
                farads,
                initialVolts,
                swing.oscillates() ? Behaviour.OSCILLATING : Behaviour.CREEPING,
                swing.peakAmperes(),
                OptionalDouble.of(swing.secondsTo(safeVolts)),
                least,
                swing.oscillates() ? OptionalDouble.of(swing.hertz()) : OptionalDouble.empty(),
                windingJoules,
                leftVolts);
    }

    /**
     * {@code bᵀ·C⁻¹·b} between all windings [1/F].
     *
     * @param circuit of the stage
     * @param lines whether the windings stand between each two lines; else from each line to the reference node
     */
    static double[][] elastance(StageCircuit circuit, boolean lines) {
        int n = circuit.nodes().size();
        double[][] matrix = new double[n - 1][n - 1];
        for (StageCircuit.Leg leg : circuit.legs()) {
            int i = leg.from() - 1;
            int j = leg.to() - 1;
            double farads = leg.farads();
            if (i >= 0) {
                matrix[i][i] += farads;
            }
            if (j >= 0) {
                matrix[j][j] += farads;
            }
            if (i >= 0 && j >= 0) {
                matrix[i][j] -= farads;
                matrix[j][i] -= farads;
            }
        }
        Cholesky capacitance = Cholesky.of(matrix);
        List<double[]> windings = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            double[] b = new double[n - 1];
            add(b, circuit.terminals().get(p), 1.0);
            add(b, lines ? circuit.terminals().get((p + 1) % 3) : 0, -1.0);
            windings.add(b);
        }
        double[][] elastance = new double[3][3];
        for (int i = 0; i < 3; i++) {
            double[] x = capacitance.solve(windings.get(i));
            for (int j = 0; j < 3; j++) {
                for (int k = 0; k < n - 1; k++) {
                    elastance[i][j] += windings.get(j)[k] * x[k];
                }
            }
        }
        return elastance;
    }

    private static void add(double[] vector, int node, double value) {
        if (node > 0) {
            vector[node - 1] += value;
        }
    }

    /** The lowest eigenvalue that is not zero: three windings between lines have one current that only goes round and drains nothing. */
    private static double slowest(double[][] elastance) {
        SymmetricEigen eigen = SymmetricEigen.of(elastance);
        double highest = 0.0;
        for (int k = 0; k < eigen.size(); k++) {
            highest = Math.max(highest, eigen.value(k));
        }
        double lowest = highest;
        for (int k = 0; k < eigen.size(); k++) {
            if (eigen.value(k) > 1e-9 * highest) {
                lowest = Math.min(lowest, eigen.value(k));
            }
        }
        return lowest;
    }

    /** One capacitance emptied through one resistance and inductance in series (DIS-13). */
    static final class Swing {
        private final double henries;
        private final double volts;
        private final double alpha;
        private final double naturalSquared;

        Swing(double farads, double ohms, double henries, double volts) {
            this.henries = henries;
            this.volts = volts;
            alpha = ohms / (2.0 * henries);
            double squared = 1.0 / (henries * farads);
            naturalSquared = Math.abs(squared - alpha * alpha) < NEARLY_CRITICAL * squared
                    ? squared * (1.0 + 2.0 * NEARLY_CRITICAL)
                    : squared;
        }

        boolean oscillates() {
            return naturalSquared > alpha * alpha;
        }

        double hertz() {
            return Math.sqrt(naturalSquared - alpha * alpha) / (2.0 * Math.PI);
        }

        /** Voltage after so many seconds [V]. */
        double voltsAfter(double t) {
            if (oscillates()) {
                double w = Math.sqrt(naturalSquared - alpha * alpha);
                return volts * Math.exp(-alpha * t) * (Math.cos(w * t) + alpha / w * Math.sin(w * t));
            }
            double b = Math.sqrt(alpha * alpha - naturalSquared);
            double slow = naturalSquared / (alpha + b);
            double quick = alpha + b;
            return volts * (quick * Math.exp(-slow * t) - slow * Math.exp(-quick * t)) / (quick - slow);
        }

        /** Current after so many seconds [A]. */
        double amperesAfter(double t) {
            if (oscillates()) {
                double w = Math.sqrt(naturalSquared - alpha * alpha);
                return volts / (w * henries) * Math.exp(-alpha * t) * Math.sin(w * t);
            }
            double b = Math.sqrt(alpha * alpha - naturalSquared);
            double slow = naturalSquared / (alpha + b);
            double quick = alpha + b;
            return volts / (henries * (quick - slow)) * (Math.exp(-slow * t) - Math.exp(-quick * t));
        }

        double peakAmperes() {
            if (oscillates()) {
                double w = Math.sqrt(naturalSquared - alpha * alpha);
                return amperesAfter(Math.atan2(w, alpha) / w);
            }
            double b = Math.sqrt(alpha * alpha - naturalSquared);
            double slow = naturalSquared / (alpha + b);
            double quick = alpha + b;
            return amperesAfter(Math.log(quick / slow) / (quick - slow));
        }

        /** Time after which the voltage stays below {@code target}: by its envelope where it swings [s]. */
        double secondsTo(double target) {
            if (volts <= target) {
                return 0.0;
            }
            if (oscillates()) {
                double w = Math.sqrt(naturalSquared - alpha * alpha);
                return Math.log(volts * Math.sqrt(naturalSquared) / (w * target)) / alpha;
            }
            double high = 1e-3;
            while (voltsAfter(high) > target) {
                high *= 2.0;
            }
            double low = 0.0;
            for (int i = 0; i < 100; i++) {
                double middle = 0.5 * (low + high);
                if (voltsAfter(middle) > target) {
                    low = middle;
                } else {
                    high = middle;
                }
            }
            return high;
        }
    }
}
