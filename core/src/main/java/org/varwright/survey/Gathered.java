package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/**
 * Everything that was read on one unit.
 *
 * @param position of the unit
 * @param stage that it belongs to
 * @param known what the bank file has of it
 * @param rows in the order of the file
 * @param takes capacitance readings by leg of the unit ({@code ""} for a single-phase unit), corrected for temperature
 */
record Gathered(
        UnitPosition position, Stage stage, Optional<KnownUnit> known, List<ReadingRow> rows, List<Take> takes) {
    Gathered {
        rows = List.copyOf(rows);
        takes = List.copyOf(takes);
    }

    /**
     * One reading of one leg.
     *
     * @param leg of a three-phase unit; empty for a single-phase unit
     * @param row of the table
     * @param measured as read; a plain value is corrected for temperature
     * @param hasTemperature whether the temperature was read
     */
    record Take(String leg, int row, Measured measured, boolean hasTemperature) {
        OptionalDouble farads() {
            return measured.value();
        }
    }

    UnitType type() {
        return stage.unit();
    }

    /** Serial number as read last, else as the bank file has it. */
    Optional<String> serial() {
        return readSerial().or(() -> known.flatMap(KnownUnit::serial));
    }

    Optional<String> readSerial() {
        return rows.stream().flatMap(row -> row.serial().stream()).reduce((a, b) -> b);
    }

    Optional<String> instrument() {
        return rows.stream().flatMap(row -> row.instrument().stream()).findFirst();
    }

    OptionalDouble factoryFarads() {
        return known.map(KnownUnit::capacitanceFarads).orElse(OptionalDouble.empty());
    }

    /** The middle one of the plain readings, to find mates and common errors by; empty where there is none. */
    OptionalDouble middle() {
        double[] values = takes.stream()
                .flatMapToDouble(take -> take.farads().stream())
                .sorted()
                .toArray();
        return values.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Robust.median(values));
    }

    static List<Gathered> of(Bank bank, Readings readings, SurveySettings settings) {
        Map<UnitPosition, List<ReadingRow>> byPosition = new LinkedHashMap<>();
        bank.positions().forEach(position -> byPosition.put(position, new ArrayList<>()));
        readings.rows()
                .forEach(row -> byPosition
                        .computeIfAbsent(row.position(), ignored -> new ArrayList<>())
                        .add(row));
        List<Gathered> all = new ArrayList<>();
        byPosition.forEach((position, rows) -> {
            Stage stage = bank.stage(position.stage()).orElseThrow();
            all.add(new Gathered(position, stage, bank.unitAt(position), rows, takes(stage.unit(), rows, settings)));
        });
        return all;
    }

    private static List<Take> takes(UnitType type, List<ReadingRow> rows, SurveySettings settings) {
        List<Take> takes = new ArrayList<>();
        Map<Terminals, ReadingRow> pairs = new LinkedHashMap<>();
        for (ReadingRow row : rows) {
            if (row.capacitance().isEmpty()) {
                continue;
            }
            boolean pair = row.terminals().isPresent()
                    && type.threePhase().isPresent()
                    && row.capacitance().get() instanceof Measured.Value;
            if (pair) {
                pairs.put(row.terminals().orElseThrow(), row);
            } else {
                takes.add(take("", row, row.capacitance().get(), settings));
            }
        }
        type.threePhase().ifPresent(inside -> takes.addAll(fromPairs(inside, pairs, settings)));
        return takes;
    }

    private static Take take(String leg, ReadingRow row, Measured measured, SurveySettings settings) {
        boolean warm = row.temperature()
                .flatMap(t -> t instanceof Measured.Value v ? Optional.of(v) : Optional.empty())
                .isPresent();
        return new Take(leg, row.row(), corrected(measured, row, settings), warm);
    }

    /** {@code C/(1 + α·(T − T_ref))} (SRV-6). */
    private static Measured corrected(Measured measured, ReadingRow row, SurveySettings settings) {
        if (measured instanceof Measured.Value value
                && row.temperature().isPresent()
                && row.temperature().get() instanceof Measured.Value warm) {
            double factor = 1.0 + settings.capacitancePerKelvin() * (warm.si() - settings.referenceCelsius());
            return new Measured.Value(value.si() / factor, value.raw());
        }
        return measured;
    }

    private static List<Take> fromPairs(
            InternalConnection inside, Map<Terminals, ReadingRow> pairs, SurveySettings settings) {
        List<Take> takes = new ArrayList<>();
        if (pairs.size() == Terminals.values().length && pairs.values().stream().allMatch(row -> farads(row) > 0.0)) {
            ThreeTerminal legs = ThreeTerminal.of(
                    inside, farads(pairs, Terminals.AB), farads(pairs, Terminals.BC), farads(pairs, Terminals.CA));
            pairs.forEach((terminals, row) -> {
                double leg = legs.of(terminals);
                Measured measured = Double.isFinite(leg) && leg >= 0.0
                        ? new Measured.Value(leg, raw(row))
                        : new Measured.OverRange(raw(row));
                takes.add(take(ThreeTerminal.leg(inside, terminals), row, measured, settings));
            });
            return takes;
        }
        pairs.forEach((terminals, row) -> takes.add(take(
                terminals.name() + " alone",
                row,
                new Measured.Value(farads(row) / ThreeTerminal.pairFactor(inside), raw(row)),
                settings)));
        return takes;
    }

    private static double farads(Map<Terminals, ReadingRow> pairs, Terminals terminals) {
        ReadingRow row = pairs.get(terminals);
        return row == null ? 0.0 : farads(row);
    }

    private static double farads(ReadingRow row) {
        return row.capacitance()
                .map(Measured::value)
                .orElse(OptionalDouble.empty())
                .orElse(0.0);
    }

    private static String raw(ReadingRow row) {
        return row.capacitance().map(Measured::raw).orElse("");
    }
}
