package org.varwright.bankfile;

import java.util.List;
import java.util.OptionalDouble;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.FuseType;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.UnitType;

/** What nominal voltage asks of a healthy stage's units; enough to tell a plausible file from a slip of the pen. The network solver is the truth. */
final class UnitDuty {
    /** What links of type K and T carry continuously, as a multiple of their rating (common practice, no source). */
    private static final double LINK_CARRIES = 1.5;

    private UnitDuty() {}

    /** Voltage across one leg at nominal voltage [V]: a quarter's in a bridge. */
    static double legVolts(Connection connection, SupplySystem system) {
        return switch (connection) {
            case DELTA -> system.nominalVolts();
            case WYE_GROUNDED, WYE_UNGROUNDED, DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> system.phaseVolts();
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> system.phaseVolts() / 2.0;
        };
    }

    /**
     * Voltage across one capacitive part of a unit at nominal voltage [V], the rise by a series reactor included.
     *
     * <p><b>Model.</b> {@code V = V_leg/(groups·(1 − p))}, {@code p = X_L/X_C} (BNK-2). <b>Source.</b> First principles.
     */
    static double unitVolts(Stage stage, LegLayout layout, SupplySystem system) {
        double share = Math.min(reactorShare(stage, system), 0.5);
        return legVolts(stage.connection(), system) / layout.groups() / (1.0 - share);
    }

    /** The highest of them in the stage: the second wye may have fewer groups in series. */
    static double unitVolts(Stage stage, SupplySystem system) {
        return layouts(stage).stream()
                .mapToDouble(layout -> unitVolts(stage, layout, system))
                .max()
                .orElseThrow();
    }

    /** How the legs are made up: two ways where a second wye differs from the first. */
    static List<LegLayout> layouts(Stage stage) {
        return stage.second().map(s -> List.of(stage.layout(), s)).orElseGet(() -> List.of(stage.layout()));
    }

    /**
     * Time in which a unit's own resistor takes it from the peak of rated voltage to {@code volts} [s]; empty where nothing is given.
     *
     * <p><b>Model.</b> {@code t = RC·ln(√2·V_r/V)} (DIS-1); of a nameplate that gives a voltage and a time, {@code RC} follows from them.
     */
    static OptionalDouble dischargeSeconds(UnitType unit, double volts) {
        double peak = Math.sqrt(2.0) * unit.legVolts();
        double decay = Math.log(Math.max(peak / volts, 1.0));
        return unit.discharge()
                .map(device -> switch (device) {
                    case DischargeDevice.Resistor r -> OptionalDouble.of(r.ohms() * unit.capacitanceFarads() * decay);
                    case DischargeDevice.Rated r ->
                        OptionalDouble.of(r.seconds() * decay / Math.log(Math.max(peak / r.volts(), 1.001)));
                })
                .orElse(OptionalDouble.empty());
    }

    /** Reactance of the stage's reactor as a part of the reactance of its capacitors; 0 without a reactor. */
    static double reactorShare(Stage stage, SupplySystem system) {
        double omega = system.angularFrequency();
        return stage.reactor()
                .map(r -> omega * omega * r.henries() * phaseFarads(stage))
                .orElse(0.0);
    }

    /** Capacitance of one phase, as seen from the line against the neutral [F]. */
    static double phaseFarads(Stage stage) {
        double leg = legFarads(stage.unit(), stage.layout());
        return switch (stage.connection()) {
            case DELTA -> 3.0 * leg;
            case WYE_GROUNDED, WYE_UNGROUNDED, BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> leg;
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED ->
                leg + legFarads(stage.unit(), stage.second().orElse(stage.layout()));
        };
    }

    /** Current in one line at nominal voltage [A] (BNK-2). */
    static double lineAmperes(Stage stage, SupplySystem system) {
        double share = Math.min(reactorShare(stage, system), 0.5);
        return system.angularFrequency() * phaseFarads(stage) * system.phaseVolts() / (1.0 - share);
    }

    /** Capacitance of one leg by the nameplates [F]. */
    static double legFarads(UnitType unit, LegLayout layout) {
        return unit.capacitanceFarads() * layout.strings() * layout.units() / layout.groups();
    }

    /** Rated current of a unit: in its line where it has three phases [A]. */
    static double ratedAmperes(UnitType unit) {
        double single = unit.ratedVars() / unit.ratedVolts();
        return unit.threePhase().isPresent() ? single / Math.sqrt(3.0) : single;
    }

    /** What a fuse carries continuously [A]; NaN where its rating is not given. */
    static double carriedAmperes(FuseType fuse) {
        double rated = fuse.ratedAmperes().orElse(Double.NaN);
        boolean link = fuse.link().filter(l -> l.matches("[0-9]+\\s*[KkTt]")).isPresent();
        return link ? LINK_CARRIES * rated : rated;
    }
}
