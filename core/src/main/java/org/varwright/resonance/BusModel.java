package org.varwright.resonance;

import java.util.ArrayList;
import java.util.List;
import org.varwright.quantity.Complex;

/**
 * Source, load and some stages on one bus, one phase, at any order.
 *
 * <pre>
 *           ┌── R(h) + jhX ──(E_h)── ground          background voltage behind the source
 *  I_h ──▶ bus ── load R ∥ jhX
 *           ├── R + jhωL ──‖── neutral               stage 1
 *           └── R + jhωL ──‖── neutral               stage 2 …
 * </pre>
 *
 * <p><b>Model.</b> {@code Z_bus = 1/(1/Z_s + Y_load + ΣY_stage)} (RES-6); amplification {@code |Z_bus(h)|/|Z_bus(h) without stages|}, which holds for a
 * current injected at the bus and for a voltage behind the source alike (RES-7).
 * <p><b>Not modelled.</b> Differences between phases; lines and cables as distributed; other capacitors in the network; the zero-sequence impedance of the
 * source, for which its positive-sequence impedance stands.
 * <p><b>Source.</b> First principles. Checked against ngspice.
 *
 * @param source impedance
 * @param load beside the stages
 * @param stages that are on; none for the bus without its bank
 * @param omega1 angular frequency of the system [rad/s]
 * @param law how the source's resistance follows the order
 */
public record BusModel(
        SourceImpedance source,
        LoadCase load,
        List<StageModel> stages,
        double omega1,
        SourceImpedance.ResistanceLaw law) {
    /** Highest order that is looked at for resonances. */
    public static final double HIGHEST_ORDER = 50.0;

    private static final int BISECTIONS = 200;

    public BusModel {
        stages = List.copyOf(stages);
    }

    /** The same bus with no stage on. */
    public BusModel withoutStages() {
        return new BusModel(source, load, List.of(), omega1, law);
    }

    /** Admittance of all at the bus [S]. */
    public Complex siemens(double order) {
        Complex sum = Complex.ONE.dividedBy(source.ohms(order, law)).plus(load.siemens(order));
        for (StageModel stage : stages) {
            sum = sum.plus(stage.siemens(order * omega1));
        }
        return sum;
    }

    /** Magnitude of the impedance seen from the bus [Ω]; infinite in a resonance that nothing damps. */
    public double ohms(double order) {
        Complex y = siemens(order);
        // A series resonance that nothing damps is a short circuit: its admittance is no finite number.
        return y.isFinite() ? 1.0 / y.magnitude() : 0.0;
    }

    /** How many times higher a harmonic stands at the bus than without the stages; infinite in a resonance that nothing damps. */
    public double amplification(double order) {
        return ohms(order) / withoutStages().ohms(order);
    }

    /**
     * Orders of parallel resonance up to {@link #HIGHEST_ORDER}, rising: where the susceptance without losses passes zero upward.
     *
     * <p><b>Model.</b> Between two neighbouring series resonances the susceptance of a lossless network rises from −∞ to +∞ (Foster), so there is exactly
     * one in between; one below the lowest; one above the highest where some branch has no reactor (RES-8).
     * <p><b>Accuracy.</b> Rounding.
     */
    public List<Double> parallelOrders() {
        List<Double> found = new ArrayList<>();
        double low = 0.0;
        for (double pole : seriesOrders(Double.POSITIVE_INFINITY)) {
            if (low >= HIGHEST_ORDER) {
                break;
            }
            addZero(found, low, pole);
            low = pole;
        }
        if (low < HIGHEST_ORDER && (load.isCapacitive() || hasBareCapacitors())) {
            double high = Math.max(1.0, 2.0 * low);
            while (losslessSiemens(high) < 0.0 && high < HIGHEST_ORDER) {
                high *= 2.0;
            }
            if (losslessSiemens(high) >= 0.0) {
                addZero(found, low, high);
            }
        }
        return found.stream().filter(h -> h <= HIGHEST_ORDER).toList();
    }

    /** Orders up to a highest at which a stage's reactors are in resonance with its capacitors, rising, each once. */
    public List<Double> seriesOrders(double highest) {
        List<Double> poles = new ArrayList<>();
        stages.stream()
                .flatMap(s -> s.branches().stream())
                .mapToDouble(b -> b.tunedOrder(omega1))
                .filter(h -> Double.isFinite(h) && h <= highest)
                .sorted()
                .forEach(h -> {
                    if (poles.isEmpty() || h > poles.getLast() * (1.0 + 1e-9)) {
                        poles.add(h);
                    }
                });
        return poles;
    }

    private boolean hasBareCapacitors() {
        return stages.stream().flatMap(s -> s.branches().stream()).anyMatch(b -> b.henries() == 0.0);
    }

    private void addZero(List<Double> found, double from, double to) {
        double low = from;
        double high = to;
        for (int i = 0; i < BISECTIONS; i++) {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high) {
                break;
            }
            if (losslessSiemens(middle) < 0.0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        found.add(0.5 * (low + high));
    }

    private double losslessSiemens(double order) {
        double sum = -1.0 / (order * source.reactanceOhms()) + load.losslessSiemens(order);
        for (StageModel stage : stages) {
            for (SeriesBranch branch : stage.branches()) {
                sum += branch.losslessSiemens(order * omega1);
            }
        }
        return sum;
    }
}
