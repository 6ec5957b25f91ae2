package org.varwright.survey;

import java.util.ArrayList;
import java.util.EnumMap;
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
     * @param instrument it was read with
     * @param sigmaFarads standard uncertainty of the meter [F]; 0 where there is no plain value
     */
    record Take(
            String leg,
            int row,
            Measured measured,
            boolean hasTemperature,
            Optional<String> instrument,
            double sigmaFarads) {
        OptionalDouble farads() {
            return measured.value();
        }

        /** The same of another leg. */
        Take as(String name, Measured other, double sigma) {
            return new Take(name, row, other, hasTemperature, instrument, sigma);
        }

        /** Standard uncertainty as a part of the value. */
        double part() {
            double value = farads().orElse(0.0);
            return value > 0.0 ? sigmaFarads / value : 0.0;
        }

        /** The same with the instrument's factor taken out. */
        Take over(double factor) {
            return factor != 1.0 && measured instanceof Measured.Value value
                    ? new Take(
                            leg,
                            row,
                            new Measured.Value(value.si() / factor, value.raw()),
                            hasTemperature,
                            instrument,
                            sigmaFarads / factor)
                    : this;
        }
    }

    /** The same with other capacitance readings. */
    Gathered with(List<Take> others) {
        return new Gathered(position, stage, known, rows, others);
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
        Map<Terminals, List<Take>> pairs = new EnumMap<>(Terminals.class);
        for (ReadingRow row : rows) {
            if (row.capacitance().isEmpty()) {
                continue;
            }
            boolean pair = row.terminals().isPresent()
                    && type.threePhase().isPresent()
                    && row.capacitance().get() instanceof Measured.Value;
            Take take = take("", row, row.capacitance().get(), settings);
            if (pair) {
                pairs.computeIfAbsent(row.terminals().orElseThrow(), ignored -> new ArrayList<>())
                        .add(take);
            } else {
                takes.add(take);
            }
        }
        type.threePhase().ifPresent(inside -> {
            for (Terminals.Kind kind : Terminals.Kind.values()) {
                takes.addAll(fromTerminals(inside, kind, pairs));
            }
        });
        return takes;
    }

    /** Legs solved from three readings of one kind; where one is missing, each reading as that of a unit with equal legs. */
    private static List<Take> fromTerminals(
            InternalConnection inside, Terminals.Kind kind, Map<Terminals, List<Take>> pairs) {
        List<Terminals> wanted = Terminals.of(kind);
        List<Take> takes = new ArrayList<>();
        boolean all = wanted.stream()
                .allMatch(terminals ->
                        pairs.containsKey(terminals) && middle(pairs.getOrDefault(terminals, List.of())) > 0.0);
        if (all) {
            double[] read = wanted.stream()
                    .mapToDouble(terminals -> middle(pairs.getOrDefault(terminals, List.of())))
                    .toArray();
            List<Double> legs = ThreeTerminal.of(inside, kind, read).legs();
            for (int i = 0; i < wanted.size(); i++) {
                Take first = pairs.getOrDefault(wanted.get(i), List.of()).getFirst();
                double leg = legs.get(i);
                Measured measured = Double.isFinite(leg) && leg >= -1e-3 * read[i]
                        ? new Measured.Value(
                                Math.max(0.0, leg), first.measured().raw())
                        : new Measured.OverRange(first.measured().raw());
                String name = ThreeTerminal.names(inside).get(i);
                takes.add(first.as(
                        name,
                        measured,
                        first.part() * Math.max(0.0, measured.value().orElse(0.0))));
            }
            return takes;
        }
        for (Terminals terminals : wanted) {
            for (Take take : pairs.getOrDefault(terminals, List.of())) {
                double factor = ThreeTerminal.factor(inside, kind);
                double leg = take.farads().orElse(0.0) / factor;
                String name = kind == Terminals.Kind.TO_NEUTRAL
                        ? terminals.words().substring(0, 1)
                        : terminals.words() + " alone";
                takes.add(take.as(name, new Measured.Value(leg, take.measured().raw()), take.sigmaFarads() / factor));
            }
        }
        return takes;
    }

    private static double middle(List<Take> takes) {
        return takes.isEmpty()
                ? 0.0
                : Robust.median(takes.stream()
                        .mapToDouble(take -> take.farads().orElse(0.0))
                        .toArray());
    }

    private static Take take(String leg, ReadingRow row, Measured measured, SurveySettings settings) {
        boolean warm = row.temperature()
                .flatMap(t -> t instanceof Measured.Value v ? Optional.of(v) : Optional.empty())
                .isPresent();
        Measured at = corrected(measured, row, settings);
        double sigma = settings.meterSigma(row.instrument()) * at.value().orElse(0.0);
        return new Take(leg, row.row(), at, warm, row.instrument(), sigma);
    }

    /** {@code C/(1 + α·(T − T_ref))} (SRV-6). */
    private static Measured corrected(Measured measured, ReadingRow row, SurveySettings settings) {
        return corrected(measured, row.temperature(), settings);
    }

    static Measured corrected(Measured measured, Optional<Measured> temperature, SurveySettings settings) {
        if (measured instanceof Measured.Value value
                && temperature.isPresent()
                && temperature.get() instanceof Measured.Value warm) {
            double factor = 1.0 + settings.capacitancePerKelvin() * (warm.si() - settings.referenceCelsius());
            return new Measured.Value(value.si() / factor, value.raw());
        }
        return measured;
    }
}
