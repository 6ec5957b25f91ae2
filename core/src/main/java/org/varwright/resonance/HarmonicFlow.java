package org.varwright.resonance;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Harmonic;
import org.varwright.quantity.Complex;

/**
 * Harmonic voltages at the bus and who carries the currents.
 *
 * <p><b>Model.</b> {@code V_h = E_h·|Z_bus/Z_s| + I_h·|Z_bus|}: what comes from the source and what is injected at the bus are added as if in phase
 * (RES-9); a stage carries {@code V_h·|Y_stage|}, its capacitors {@code V_h} times their share.
 * <p><b>Not modelled.</b> Phase angles between sources of one order. Voltages of orders divisible by three are taken as typed, as if of positive sequence.
 * <p><b>Source.</b> First principles.
 *
 * @param bus with the stages that are on
 * @param orders by rising order
 */
public record HarmonicFlow(BusModel bus, List<Order> orders) {
    /** A little off, where a series resonance without any resistance would divide by zero. */
    private static final double NUDGE = 1.0 + 1e-9;

    public HarmonicFlow {
        orders = List.copyOf(orders);
    }

    /**
     * One order.
     *
     * @param order multiple of the system's frequency
     * @param busVolts phase to neutral at the bus [V]
     * @param busVoltsWithout the same with no stage on [V]
     * @param sourceAmperes upper bound of the current between source and bus [A]
     * @param loadAmperes in the load's model [A]
     * @param stages in the order of the bus's
     */
    public record Order(
            int order,
            double busVolts,
            double busVoltsWithout,
            double sourceAmperes,
            double loadAmperes,
            List<StageFlow> stages) {
        public Order {
            stages = List.copyOf(stages);
        }
    }

    /**
     * One stage at one order.
     *
     * @param stage its name
     * @param amperes in its line [A]
     * @param capacitorVolts across the capacitors of one phase [V]
     */
    public record StageFlow(String stage, double amperes, double capacitorVolts) {}

    /**
     * What a spectrum does.
     *
     * @param bus with the stages that are on
     * @param spectrum background voltages behind the source, currents injected at the bus
     * @param nominalPhaseVolts of which the voltages are parts [V]
     */
    public static HarmonicFlow of(BusModel bus, List<Harmonic> spectrum, double nominalPhaseVolts) {
        List<Order> orders = new ArrayList<>();
        for (Harmonic harmonic : spectrum) {
            orders.add(order(bus, harmonic, nominalPhaseVolts));
        }
        return new HarmonicFlow(bus, orders);
    }

    private static Order order(BusModel bus, Harmonic harmonic, double nominalPhaseVolts) {
        double h = harmonic.order();
        if (!bus.siemens(h).isFinite()) {
            h *= NUDGE;
        }
        double background = harmonic.voltageFraction().orElse(0.0) * nominalPhaseVolts;
        double injected = harmonic.currentAmperes().orElse(0.0);
        Complex source = bus.source().ohms(h, bus.law());
        double without = volts(bus.withoutStages(), h, background, injected, source);
        double volts = volts(bus, h, background, injected, source);
        Complex rest = bus.siemens(h).minus(Complex.ONE.dividedBy(source));
        // E/(Z_s + Z_rest) = E·Y_rest/(1 + Z_s·Y_rest)
        double fromSource = background
                * rest.magnitude()
                / Complex.ONE.plus(source.times(rest)).magnitude();
        double toSource = injected * bus.ohms(h) / source.magnitude();
        List<StageFlow> stages = new ArrayList<>();
        for (StageModel stage : bus.stages()) {
            double omega = h * bus.omega1();
            stages.add(new StageFlow(
                    stage.stage().name(),
                    volts * stage.siemens(omega).magnitude(),
                    volts * stage.capacitorShare(omega)));
        }
        return new Order(
                harmonic.order(),
                volts,
                without,
                fromSource + toSource,
                volts * bus.load().siemens(h).magnitude(),
                stages);
    }

    private static double volts(BusModel bus, double h, double background, double injected, Complex source) {
        return (background / source.magnitude() + injected) * bus.ohms(h);
    }

    /** Total harmonic distortion of the bus voltage: root of the sum of squares over a fundamental [V]. */
    public double distortion(double fundamentalPhaseVolts) {
        double squares = 0.0;
        for (Order order : orders) {
            squares += order.busVolts() * order.busVolts();
        }
        return Math.sqrt(squares) / fundamentalPhaseVolts;
    }
}
