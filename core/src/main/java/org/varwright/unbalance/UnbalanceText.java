package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
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
            List<FailureLine> lines = FailureLine.of(unbalance, stage);
            if (!lines.isEmpty()) {
                stage(page, unbalance, stage, lines);
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

    private static void stage(Page page, Unbalance unbalance, Stage stage, List<FailureLine> lines) {
        LegLayout layout = stage.layout();
        page.heading(stage.name() + ", " + unbalance.bank().words().connection(stage.connection()) + ", "
                + layout.strings() + " × " + layout.groups() + " × " + layout.units());
        List<Protection> sensors = unbalance.bank().protection().stream()
                .filter(p -> p.stage().equals(stage.name()))
                .toList();
        // Two sensors and more don't fit beside the voltages.
        List<Protection> beside = sensors.size() < 2 ? sensors : List.of();
        List<String> header = new ArrayList<>(List.of("failure", "count", "unit", "section"));
        beside.forEach(p -> header.add(p.senses().code()));
        header.add("verdict");
        page.table(header, lines.stream().map(line -> cells(line, beside)).toList(), 1, 2, 3);
        if (sensors.size() > 1) {
            List<String> codes = new ArrayList<>(List.of("failure", "count"));
            sensors.forEach(p -> codes.add(p.senses().code()));
            page.blank()
                    .table(
                            codes,
                            lines.stream().map(line -> seen(line, sensors)).toList(),
                            1);
        }
        if (unbalance.isTable()) {
            String where = sensors.stream().anyMatch(p -> p.ratio().isPresent()) ? "at the relay" : "primary";
            page.text("Each line: the worst place for voltages and verdict"
                    + (sensors.isEmpty()
                            ? "; no sensor watches this "
                                    + unbalance.bank().words().stage() + "."
                            : "; for sensors the least and the most that the failure gives anywhere, " + where + "."));
        } else {
            lines.forEach(line ->
                    line.rows().forEach(r -> page.item("  " + r.verdict().words() + ": ", r.reason())));
        }
    }

    private static List<String> cells(FailureLine line, List<Protection> sensors) {
        List<String> cells = new ArrayList<>(List.of(
                line.kind(),
                String.valueOf(line.count()),
                multiple(line.unitPerRated()),
                multiple(line.sectionPerRated())));
        sensors.forEach(sensor -> cells.add(shown(sensor, line)));
        cells.add(line.verdict().words());
        return cells;
    }

    private static List<String> seen(FailureLine line, List<Protection> sensors) {
        List<String> cells = new ArrayList<>(List.of(line.kind(), String.valueOf(line.count())));
        sensors.forEach(sensor -> cells.add(shown(sensor, line)));
        return cells;
    }

    /** What a sensor shows of a failure, such as {@code 6.277 V to 6.342 V}. */
    public static String shown(Protection sensor, FailureLine line) {
        return line.shown(sensor)
                .map(s -> {
                    String least = value(sensor.senses(), s.low());
                    String most = value(sensor.senses(), s.high());
                    return least.equals(most) ? most : least + " to " + most;
                })
                .orElse("-");
    }

    private static void settings(Page page, SettingStudy study) {
        Protection.Senses senses = study.protection().senses();
        page.heading("Settings of " + study.name() + ", against " + study.kind());
        page.row("alarm proposed", setting(study, study.alarm()));
        page.row("trip proposed", setting(study, study.trip()));
        page.row(
                "may show in good order",
                value(senses, study.error().total()) + " primary: "
                        + value(senses, study.error().bank()) + " unequal legs ("
                        + (study.error().bankIsMeasured() ? "as measured" : "assumed") + "), "
                        + value(senses, study.error().system()) + " unequal voltages (assumed)");
        study.remarks().forEach(remark -> page.item("  - ", remark));
    }

    /** A setting at the relay and primary, as far as the ratio is known; {@code none} where there is none. */
    public static String setting(SettingStudy study, OptionalDouble primary) {
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
        return senses.dimension().format(value);
    }

    private static String multiple(OptionalDouble value) {
        return value.isPresent() ? String.format(Locale.ROOT, "%.3f", value.getAsDouble()) : "-";
    }

    private static String degrees(Complex value) {
        return String.format(Locale.ROOT, "%.0f°", value.degrees());
    }
}
