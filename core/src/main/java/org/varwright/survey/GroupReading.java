package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/**
 * One reading of units together, corrected for temperature and instrument.
 *
 * @param row of the table
 * @param name of the place
 * @param stage that it belongs to
 * @param units that were read together
 * @param layout of the units between the leads: parallel units, groups in series, strings in parallel
 * @param measured as read; a plain value is corrected
 * @param sigmaFarads standard uncertainty of the meter [F]; 0 where there is no plain value
 */
record GroupReading(
        int row,
        String name,
        Stage stage,
        List<UnitPosition> units,
        LegLayout layout,
        Measured measured,
        double sigmaFarads) {
    GroupReading {
        units = List.copyOf(units);
    }

    double farads() {
        return measured.value().orElse(0.0);
    }

    boolean isParallel() {
        return layout.groups() == 1 && layout.strings() == 1;
    }

    /** What would be read were every unit so [F]. */
    double of(Map<UnitPosition, Double> farads) {
        double[][] groups = new double[layout.strings()][layout.groups()];
        for (UnitPosition unit : units) {
            int string = isParallel() ? 0 : unit.string() - 1;
            int group = isParallel() ? 0 : unit.group() - 1;
            groups[string][group] += farads.getOrDefault(unit, 0.0);
        }
        double whole = 0.0;
        for (double[] string : groups) {
            double elastance = 0.0;
            for (double group : string) {
                elastance += 1.0 / group;
            }
            whole += 1.0 / elastance;
        }
        return whole;
    }

    /** What one unit's factor makes of the whole, all units alike. */
    double factor(double unitFactor) {
        double group = 1.0 + (unitFactor - 1.0) / layout.units();
        double string = layout.groups() / (layout.groups() - 1.0 + 1.0 / group);
        return 1.0 + (string - 1.0) / layout.strings();
    }

    /** The whole over one unit, all units alike. */
    double perUnit() {
        return layout.units() * (double) layout.strings() / layout.groups();
    }

    UnitType type() {
        return stage.unit();
    }

    static List<GroupReading> of(
            Bank bank, List<SpotRow> rows, Map<String, Double> instrumentFactors, SurveySettings settings) {
        List<GroupReading> all = new ArrayList<>();
        for (SpotRow row : rows) {
            if (row.kind() != SpotRow.Kind.CAPACITANCE) {
                continue;
            }
            Measured measured = Gathered.corrected(row.measured(), row.temperature(), settings);
            double factor = instrumentFactors.getOrDefault(row.instrument().orElse(""), 1.0);
            if (measured instanceof Measured.Value value) {
                measured = new Measured.Value(value.si() / factor, value.raw());
            }
            double sigma =
                    settings.meterSigma(row.instrument()) * measured.value().orElse(0.0);
            of(bank, row, measured, sigma).ifPresent(all::add);
        }
        return List.copyOf(all);
    }

    private static Optional<GroupReading> of(Bank bank, SpotRow row, Measured measured, double sigma) {
        return switch (row.spot()) {
            case Spot.Together together -> {
                Stage stage = bank.stage(together.stage()).orElseThrow();
                LegLayout layout = new LegLayout(1, 1, together.units().size());
                yield Optional.of(
                        new GroupReading(row.row(), together.name(), stage, together.units(), layout, measured, sigma));
            }
            case Spot.Leg leg -> {
                Stage stage = bank.stage(leg.stage()).orElseThrow();
                List<UnitPosition> units = stage.positions().stream()
                        .filter(unit -> unit.leg().equals(leg.leg()))
                        .toList();
                yield Optional.of(new GroupReading(
                        row.row(), leg.name(), stage, units, stage.layoutOf(leg.leg()), measured, sigma));
            }
            case Spot.Phase ignored -> Optional.empty();
            case Spot.Pole ignored -> Optional.empty();
        };
    }
}
