package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.basis.Check;
import org.varwright.basis.CheckText;
import org.varwright.network.Solution;
import org.varwright.page.Page;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;

/** {@link Unbalance} as text for people: 100 columns, to be printed and taken to site. */
public final class UnbalanceText {
    private UnbalanceText() {}

    public static String of(Unbalance unbalance) {
        Page page = new Page();
        page.heading("Unbalance  " + unbalance.bank().name());
        page.text("Voltages at the bus: "
                + String.join(
                        ", ",
                        unbalance.supply().phaseVolts().stream()
                                .map(v -> Dimension.VOLTAGE.format(v.magnitude()))
                                .toList())
                + " phase to " + unbalance.bank().words().ground() + ". Multiples are of rated voltage.");
        if (!unbalance.healthy().isEmpty()) {
            healthy(page, unbalance);
        }
        for (Stage stage : unbalance.bank().stages()) {
            List<FailureRow> rows = unbalance.failures().stream()
                    .filter(r -> r.stage().equals(stage.name()))
                    .toList();
            if (!rows.isEmpty()) {
                stage(page, unbalance, stage, rows);
            }
        }
        unbalance.settings().forEach(study -> settings(page, study));
        if (!unbalance.checks().isEmpty()) {
            checks(page, unbalance.checks());
        }
        return page.print();
    }

    private static void healthy(Page page, Unbalance unbalance) {
        page.heading("Nothing failed: what the sensors show with the units as they are");
        List<List<String>> rows = new ArrayList<>();
        for (Solution.SensorValue sensor : unbalance.healthy()) {
            rows.add(List.of(
                    sensor.name(),
                    value(sensor.senses(), sensor.primary().magnitude()),
                    sensor.secondary()
                            .map(s -> value(sensor.senses(), s.magnitude()))
                            .orElse("no ratio given"),
                    degrees(sensor.primary())));
        }
        page.table(List.of("sensor", "primary", "at the relay", "angle"), rows, 1, 2, 3);
    }

    private static void stage(Page page, Unbalance unbalance, Stage stage, List<FailureRow> rows) {
        LegLayout layout = stage.layout();
        page.heading(stage.name() + ", " + unbalance.bank().words().connection(stage.connection()) + ", "
                + layout.strings() + " × " + layout.groups() + " × " + layout.units());
        List<Protection> sensors = unbalance.bank().protection().stream()
                .filter(p -> p.stage().equals(stage.name()))
                .toList();
        boolean table = unbalance.isTable();
        Map<String, List<FailureRow>> alike = new LinkedHashMap<>();
        for (FailureRow row : rows) {
            alike.computeIfAbsent(
                            row.kind() + " " + row.count() + (table ? "" : row.positions()), k -> new ArrayList<>())
                    .add(row);
        }
        // Two sensors and more don't fit beside the voltages.
        List<Protection> beside = sensors.size() < 2 ? sensors : List.of();
        List<String> header = new ArrayList<>(List.of("failure", "count", "unit", "section"));
        beside.forEach(p -> header.add(p.senses().code()));
        header.add("verdict");
        page.table(
                header, alike.values().stream().map(same -> line(same, beside)).toList(), 1, 2, 3);
        if (sensors.size() > 1) {
            List<String> codes = new ArrayList<>(List.of("failure", "count"));
            sensors.forEach(p -> codes.add(p.senses().code()));
            page.blank()
                    .table(
                            codes,
                            alike.values().stream()
                                    .map(same -> seen(same, sensors))
                                    .toList(),
                            1);
        }
        if (table) {
            String where = sensors.stream().anyMatch(p -> p.ratio().isPresent()) ? "at the relay" : "primary";
            page.text("Each line: the worst place for voltages and verdict"
                    + (sensors.isEmpty()
                            ? "; no sensor watches this "
                                    + unbalance.bank().words().stage() + "."
                            : "; for sensors the least and the most that the failure gives anywhere, " + where + "."));
        }
        rows.stream()
                .filter(r -> !table)
                .forEach(r -> page.item("  " + r.verdict().words() + ": ", r.reason()));
    }

    private static List<String> line(List<FailureRow> same, List<Protection> sensors) {
        FailureRow first = same.getFirst();
        FailureRow worst = first;
        double unit = 0.0;
        double section = 0.0;
        boolean solved = true;
        for (FailureRow row : same) {
            worst = row.verdict().compareTo(worst.verdict()) > 0 ? row : worst;
            solved &= row.effect().isPresent();
            unit = Math.max(unit, row.effect().map(Effect::highestUnitPerRated).orElse(0.0));
            section = Math.max(
                    section, row.effect().map(Effect::highestSectionPerRated).orElse(0.0));
        }
        List<String> cells = new ArrayList<>(List.of(
                first.kind(),
                String.valueOf(first.count()),
                solved ? multiple(unit) : "-",
                solved ? multiple(section) : "-"));
        for (Protection sensor : sensors) {
            cells.add(range(sensor, same));
        }
        cells.add(worst.verdict().words());
        return cells;
    }

    private static List<String> seen(List<FailureRow> same, List<Protection> sensors) {
        List<String> cells = new ArrayList<>(
                List.of(same.getFirst().kind(), String.valueOf(same.getFirst().count())));
        sensors.forEach(sensor -> cells.add(range(sensor, same)));
        return cells;
    }

    private static String range(Protection sensor, List<FailureRow> rows) {
        double low = Double.POSITIVE_INFINITY;
        double high = 0.0;
        for (FailureRow row : rows) {
            if (row.effect().isEmpty()) {
                return "-";
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
        String least = value(sensor.senses(), low);
        String most = value(sensor.senses(), high);
        return least.equals(most) ? most : least + " to " + most;
    }

    private static void settings(Page page, SettingStudy study) {
        Protection.Senses senses = study.protection().senses();
        page.heading("Settings of " + study.name() + ", against " + study.kind());
        page.row("alarm proposed", proposal(study, study.alarm()));
        page.row("trip proposed", proposal(study, study.trip()));
        page.row(
                "may show in good order",
                value(senses, study.error().total()) + " primary: "
                        + value(senses, study.error().bank()) + " unequal legs ("
                        + (study.error().bankIsMeasured() ? "as measured" : "assumed") + "), "
                        + value(senses, study.error().system()) + " unequal voltages (assumed)");
        study.remarks().forEach(remark -> page.item("  - ", remark));
    }

    private static String proposal(SettingStudy study, OptionalDouble primary) {
        if (primary.isEmpty()) {
            return "none";
        }
        Protection.Senses senses = study.protection().senses();
        String text = value(senses, primary.getAsDouble()) + " primary";
        return study.protection()
                .ratio()
                .map(r -> value(senses, primary.getAsDouble() * r.factor()) + " at the relay, " + text)
                .orElse(text);
    }

    private static void checks(Page page, List<Check> checks) {
        page.heading("Checks");
        CheckText.add(page, checks);
    }

    private static String value(Protection.Senses senses, double value) {
        return senses.unit().equals("V") ? Dimension.VOLTAGE.format(value) : Dimension.CURRENT.format(value);
    }

    private static String multiple(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }

    private static String degrees(Complex value) {
        return String.format(Locale.ROOT, "%.0f°", value.degrees());
    }
}
