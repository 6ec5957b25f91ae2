package org.varwright.fit;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Predicate;
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
     * <p><b>Model.</b> Standing unbalance {@code s0}, at the highest voltage of the system; from each group one, two … mean units more are taken out until the
     * voltage limit breaks. Only what reads more than {@code s0} can be told from it: alarm half way from {@code s0} to the least such signal;
     * trip half way from the largest signal below the first that breaks the limit to that one. Legs whose next unit makes the reading fall or stay are named.
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
        String[] legs = new String[model.groupCount];
        for (UnitPosition position : stage.positions()) {
            int g = model.groupOf(position);
            sums[g] += after.farads(position);
            units[g] += after.farads(position) > 0.0 ? 1 : 0;
            legs[g] = position.leg().isEmpty() ? stage.name() : position.leg();
        }
        StageState state = new StageState(model, sums);
        double standing = Math.sqrt(state.squared()) * model.highestPerNominal;
        List<Next> next = new ArrayList<>();
        for (int g = 0; g < sums.length; g++) {
            for (int n = 1; n < units[g]; n++) {
                state.set(g, sums[g] * (units[g] - n) / units[g]);
                double seen = Math.sqrt(state.squared());
                next.add(new Next(
                        legs[g],
                        n,
                        seen,
                        seen > standing * (1.0 + 1e-9),
                        state.highestUnitPerRated() > FitLimits.VOLTS_PER_RATED * (1.0 + 1e-9)));
            }
            state.set(g, sums[g]);
        }
        if (next.isEmpty()) {
            return Optional.empty();
        }
        OptionalDouble first =
                next.stream().filter(Next::isSeen).mapToDouble(Next::signal).min();
        OptionalDouble bad = next.stream()
                .filter(n -> n.isBroken() && n.isSeen())
                .mapToDouble(Next::signal)
                .min();
        double good = next.stream()
                .filter(n -> !n.isBroken() && n.isSeen() && n.signal() < bad.orElse(0.0))
                .mapToDouble(Next::signal)
                .max()
                .orElse(standing);
        OptionalDouble alarm = times(first, f -> (standing + f) / 2.0 * base);
        OptionalDouble trip = times(bad, b -> (good + b) / 2.0 * base);
        double present = signal.alarmPerUnit() / model.rise(signal.kind());
        return Optional.of(new RunOn.Settings(
                alarm,
                trip,
                atRelay(sensor.get(), alarm),
                atRelay(sensor.get(), trip),
                first.isPresent() && present > standing && present < first.getAsDouble(),
                legs(next, n -> n.count() == 1 && !n.isSeen()),
                legs(next, n -> n.isBroken() && !n.isSeen())));
    }

    /**
     * The stage with units more out of one group.
     *
     * @param leg of the group
     * @param count of units more
     * @param signal at nominal voltage, per unit
     * @param isSeen whether the signal is more than what stands anyway
     * @param isBroken whether a unit is beyond its voltage limit
     */
    private record Next(String leg, int count, double signal, boolean isSeen, boolean isBroken) {}

    private static List<String> legs(List<Next> next, Predicate<Next> which) {
        return List.copyOf(
                new LinkedHashSet<>(next.stream().filter(which).map(Next::leg).toList()));
    }

    private static OptionalDouble atRelay(Protection sensor, OptionalDouble primary) {
        return sensor.ratio().isPresent()
                ? times(primary, p -> p * sensor.ratio().get().factor())
                : OptionalDouble.empty();
    }

    private static OptionalDouble times(OptionalDouble value, DoubleUnaryOperator change) {
        return value.isPresent()
                ? OptionalDouble.of(change.applyAsDouble(value.getAsDouble()))
                : OptionalDouble.empty();
    }
}
