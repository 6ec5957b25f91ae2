package org.varwright.discharge;

import java.util.Comparator;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/**
 * Capacitance and discharge resistance of single units.
 *
 * @param bank whose file may give capacitances
 * @param readings taken since, which go before those in the file
 */
record UnitValues(Bank bank, UnitReadings readings) {
    /** Measured, else the nameplate's upper tolerance: for times, which grow with it [F]. */
    double slowFarads(Stage stage, UnitPosition at) {
        return measuredFarads(at).orElse(upperFarads(stage));
    }

    /** Whether the capacitance of any unit of a stage is measured. */
    boolean anyMeasured(Stage stage) {
        return stage.positions().stream().anyMatch(p -> measuredFarads(p).isPresent());
    }

    /**
     * For sharing between units in series, where a tolerance that all have in common doesn't count: measured, else the nameplate; of a stage of which nothing is
     * measured the upper tolerance [F].
     *
     * @param anyMeasured whether anything of the stage is measured
     */
    double sharingFarads(Stage stage, UnitPosition at, boolean anyMeasured) {
        return measuredFarads(at).orElse(anyMeasured ? stage.unit().capacitanceFarads() : upperFarads(stage));
    }

    /** Read on the unit, else the type's at the slow end [Ω]; infinite where the resistor is open or nothing is known of it. */
    double ohms(UnitPosition at, Resistance ofType) {
        Double read = readings.ohms().get(at);
        if (read != null) {
            return read;
        }
        return switch (ofType) {
            case Resistance.Known known -> known.ohms();
            case Resistance.NotKnown ignored -> Double.POSITIVE_INFINITY;
        };
    }

    /**
     * The slowest unit of a stage of which resistor or capacitance was read, those with an open resistor left out; empty where none was read.
     *
     * @param ofType resistance of a unit of which the capacitance alone was read
     */
    Optional<Slowest> slowestRead(Stage stage, Resistance ofType) {
        return stage.positions().stream()
                .filter(at ->
                        readings.ohms().containsKey(at) || readings.farads().containsKey(at))
                .map(at -> new Slowest(slowFarads(stage, at), ohms(at, ofType)))
                .filter(read -> Double.isFinite(read.ohms()))
                .max(Comparator.comparingDouble(s -> s.farads() * s.ohms()));
    }

    /** Capacitance [F] and resistance [Ω] of one unit. */
    record Slowest(double farads, double ohms) {}

    private OptionalDouble measuredFarads(UnitPosition at) {
        Double read = readings.farads().get(at);
        return read != null
                ? OptionalDouble.of(read)
                : bank.unitAt(at).map(KnownUnit::capacitanceFarads).orElse(OptionalDouble.empty());
    }

    private static double upperFarads(Stage stage) {
        return stage.unit().capacitanceFarads()
                * (1.0 + Math.max(0.0, stage.unit().tolerance().high()));
    }
}
