package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.network.Solution;

/**
 * What the same failure does wherever it stands in a stage: the worst of its places.
 *
 * @param kind as in {@link FailureRow}
 * @param count as in {@link FailureRow}
 * @param rows one a place, at least one
 */
public record FailureLine(String kind, int count, List<FailureRow> rows) {
    /**
     * Least and most that a sensor shows.
     *
     * @param low [V] or [A], at the relay where the ratio is known, else primary
     * @param high the same
     */
    public record Shown(double low, double high) {}

    public FailureLine {
        rows = List.copyOf(rows);
    }

    /** The lines of a stage, in the order of the failure table; where certain positions were asked for, one for each choice of them. */
    public static List<FailureLine> of(Unbalance unbalance, Stage stage) {
        Map<String, List<FailureRow>> alike = new LinkedHashMap<>();
        for (FailureRow row : unbalance.failures()) {
            if (row.stage().equals(stage.name())) {
                String places = unbalance.isTable() ? "" : row.positions().toString();
                alike.computeIfAbsent(row.kind() + " " + row.count() + places, k -> new ArrayList<>())
                        .add(row);
            }
        }
        return alike.values().stream()
                .map(same ->
                        new FailureLine(same.getFirst().kind(), same.getFirst().count(), same))
                .toList();
    }

    /** Highest voltage on a unit, a multiple of its rated one; empty where a place of it is a short circuit across the supply. */
    public OptionalDouble unitPerRated() {
        return highest(Effect::highestUnitPerRated);
    }

    /** The same of a section inside a unit, a multiple of its share of the unit's rated voltage. */
    public OptionalDouble sectionPerRated() {
        return highest(Effect::highestSectionPerRated);
    }

    private OptionalDouble highest(ToDoubleFunction<Effect> voltage) {
        boolean isSolved = rows.stream().allMatch(r -> r.effect().isPresent());
        return isSolved
                ? rows.stream()
                        .flatMap(r -> r.effect().stream())
                        .mapToDouble(voltage)
                        .max()
                : OptionalDouble.empty();
    }

    /** The verdict on its worst place. */
    public RunVerdict verdict() {
        return rows.stream().map(FailureRow::verdict).max(RunVerdict::compareTo).orElseThrow();
    }

    /** What a sensor of the stage shows, over all places; empty where a place of it is a short circuit across the supply. */
    public Optional<Shown> shown(Protection sensor) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0.0;
        for (FailureRow row : rows) {
            if (row.effect().isEmpty()) {
                return Optional.empty();
            }
            double shown = 0.0;
            for (Solution.SensorValue value : row.effect().get().sensors()) {
                if (value.senses() == sensor.senses()) {
                    shown = Math.max(
                            shown, value.secondary().orElse(value.primary()).magnitude());
                }
            }
            low = Math.min(low, shown);
            high = Math.max(high, shown);
        }
        return Optional.of(new Shown(low, high));
    }
}
