package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;
import org.varwright.unbalance.FailureLine;
import org.varwright.unbalance.RunVerdict;
import org.varwright.unbalance.SettingStudy;
import org.varwright.unbalance.Unbalance;
import org.varwright.unbalance.UnbalanceText;

/** What a failure inside the bank does to the rest and shows at its sensors, and what the sensors should be set to. */
final class UnbalanceSection {
    private static final String TITLE = "Unbalance protection";

    private UnbalanceSection() {}

    static Section of(Unbalance unbalance) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(
                new Block.Paragraph(
                        "Worked out at "
                                + Dimension.VOLTAGE.format(unbalance
                                        .supply()
                                        .phaseVolts()
                                        .getFirst()
                                        .magnitude())
                                + " phase to " + unbalance.bank().words().ground()
                                + ", with the units as the bank file has them. Each line is one kind of failure at its worst place; voltages are multiples of rated."));
        for (Stage stage : unbalance.bank().stages()) {
            List<FailureLine> lines = FailureLine.of(unbalance, stage);
            if (!lines.isEmpty()) {
                blocks.add(failures(stage, sensors(unbalance, stage), lines));
            }
        }
        if (unbalance.settings().isEmpty()) {
            blocks.add(new Block.Paragraph(
                    "The bank file has no sensor: nothing takes the bank out when a unit fails but its fuses."));
        } else {
            blocks.add(settings(unbalance));
        }
        for (SettingStudy study : unbalance.settings()) {
            blocks.add(new Block.Subheading(study.name()));
            blocks.add(new Block.Bullets(study.remarks()));
        }
        return new Section(TITLE, Section.PageStart.RUN_ON, blocks);
    }

    private static List<Protection> sensors(Unbalance unbalance, Stage stage) {
        return unbalance.bank().protection().stream()
                .filter(p -> p.stage().equals(stage.name()))
                .toList();
    }

    private static Block failures(Stage stage, List<Protection> sensors, List<FailureLine> lines) {
        List<Row> rows = lines.stream()
                .map(line -> new Row(List.of(
                        new Cell.Text(line.kind()),
                        new Cell.Text(String.valueOf(line.count())),
                        new Cell.Text(multiple(line.unitPerRated())),
                        new Cell.Text(multiple(line.sectionPerRated())),
                        new Cell.Text(String.join("; ", shown(sensors, line))),
                        line.verdict() == RunVerdict.TAKE_OUT
                                ? new Cell.Strong(line.verdict().words())
                                : new Cell.Text(line.verdict().words()))))
                .toList();
        return new Block.Table(
                "What a failure does: " + stage.name(),
                List.of(
                        Column.left("Failure", 20),
                        Column.right("Count", 8),
                        Column.right("Unit", 10),
                        Column.right("Section", 10),
                        Column.left("Sensor shows", 36),
                        Column.left("Verdict", 16)),
                rows);
    }

    private static List<String> shown(List<Protection> sensors, FailureLine line) {
        return sensors.stream()
                .map(s -> (sensors.size() > 1 ? s.senses().code() + " " : "") + UnbalanceText.shown(s, line))
                .toList();
    }

    private static Block settings(Unbalance unbalance) {
        List<Row> rows = new ArrayList<>();
        for (SettingStudy study : unbalance.settings()) {
            rows.add(Row.of(
                    study.name(),
                    inFile(study.protection(), study.protection().alarm()),
                    UnbalanceText.setting(study, study.alarm()),
                    inFile(study.protection(), study.protection().trip()),
                    UnbalanceText.setting(study, study.trip())));
        }
        return new Block.Table(
                "Settings: of the bank file, and proposed",
                List.of(
                        Column.left("Sensor", 20),
                        Column.left("Alarm", 14),
                        Column.left("Proposed", 26),
                        Column.left("Trip", 14),
                        Column.left("Proposed", 26)),
                rows);
    }

    static String inFile(Protection sensor, OptionalDouble setting) {
        if (setting.isEmpty()) {
            return "not given";
        }
        Dimension dimension = sensor.senses().dimension();
        return dimension.format(setting.getAsDouble()) + (sensor.settingsArePrimary() ? " primary" : " at the relay");
    }

    private static String multiple(OptionalDouble value) {
        return value.isPresent() ? String.format(Locale.ROOT, "%.3f", value.getAsDouble()) : "short";
    }
}
