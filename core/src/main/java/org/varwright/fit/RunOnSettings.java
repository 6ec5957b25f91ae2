package org.varwright.fit;

import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;

/** Alarm and trip for a stage that runs on short of units (FIT-6). */
final class RunOnSettings {
    private RunOnSettings() {}

    /**
     * Settings of the stage's first sensor.
     *
     * <p><b>Model.</b> Standing unbalance {@code s0}; from each group one, two … mean units more are taken out until the voltage limit breaks. Alarm half way from
     * {@code s0} to the least signal of one unit more; trip half way from the largest signal below the first that breaks the limit to that one.
     * <p><b>Not modelled.</b> Errors of sensors, supply unbalance, temperature.
     * <p><b>Source.</b> Common practice, no source.
     */
    static Optional<RunOn.Settings> of(Bank bank, Stage stage, StageModel model, Arrangement after) {
        Optional<Protection> sensor = bank.protection().stream()
                .filter(p -> p.stage().equals(stage.name()))
                .findFirst();
        if (sensor.isEmpty()) {
            return Optional.empty();
        }
        UnbalanceSignal signal = model.signals.getFirst();
        double base = UnbalanceSignal.base(bank, stage, signal.kind()) * model.rise(signal.kind());
        double[] sums = new double[model.groupCount];
        int[] units = new int[model.groupCount];
        for (UnitPosition position : stage.positions()) {
            int g = model.groupOf(position);
            sums[g] += after.farads(position);
            units[g] += after.farads(position) > 0.0 ? 1 : 0;
        }
        StageState state = new StageState(model, sums);
        double standing = Math.sqrt(state.squared());
        double first = Double.POSITIVE_INFINITY;
        double bad = Double.POSITIVE_INFINITY;
        double good = standing;
        for (int pass = 0; pass < 2; pass++) {
            for (int g = 0; g < sums.length; g++) {
                for (int n = 1; n < units[g]; n++) {
                    state.set(g, sums[g] * (units[g] - n) / units[g]);
                    double seen = Math.sqrt(state.squared());
                    boolean broken = state.highestUnitPerRated() > FitLimits.VOLTS_PER_RATED * (1.0 + 1e-9);
                    if (n == 1) {
                        first = Math.min(first, seen);
                    }
                    if (broken && pass == 0) {
                        bad = Math.min(bad, seen);
                    }
                    if (!broken && pass == 1 && seen < bad) {
                        good = Math.max(good, seen);
                    }
                }
                state.set(g, sums[g]);
            }
        }
        if (!Double.isFinite(first)) {
            return Optional.empty();
        }
        double present = signal.alarmPerUnit() / model.rise(signal.kind());
        double alarm = (standing + first) / 2.0 * base;
        OptionalDouble trip =
                Double.isFinite(bad) ? OptionalDouble.of((good + bad) / 2.0 * base) : OptionalDouble.empty();
        OptionalDouble factor = sensor.get().ratio().isPresent()
                ? OptionalDouble.of(sensor.get().ratio().get().factor())
                : OptionalDouble.empty();
        return Optional.of(new RunOn.Settings(
                alarm,
                trip,
                factor.isPresent() ? OptionalDouble.of(alarm * factor.getAsDouble()) : OptionalDouble.empty(),
                factor.isPresent() && trip.isPresent()
                        ? OptionalDouble.of(trip.getAsDouble() * factor.getAsDouble())
                        : OptionalDouble.empty(),
                present > standing && present < first));
    }
}
