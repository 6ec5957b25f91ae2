package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Stage;
import org.varwright.basis.Verdict;
import org.varwright.energize.Band;
import org.varwright.energize.BusVolts;
import org.varwright.energize.Comparison;
import org.varwright.energize.Energize;
import org.varwright.energize.ExpectedCurrent;
import org.varwright.energize.ExpectedSensor;
import org.varwright.energize.Explanation;
import org.varwright.page.Enumeration;
import org.varwright.picture.EnergizePhasors;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** What each line, leg and sensor should show at the first energization, beside what was read. */
final class EnergizeSection {
    private static final String TITLE = "First energization";

    private static final int STAGES_ON_A_PAGE = 2;

    private EnergizeSection() {}

    static Section of(Optional<Energize> energize) {
        return energize.map(EnergizeSection::present)
                .orElseGet(
                        () -> Section.absent(TITLE, "No bus voltage was given in this job: no current was predicted."));
    }

    private static Section present(Energize energize) {
        List<Block> blocks = new ArrayList<>();
        BusVolts bus = energize.bus();
        blocks.add(new Block.Paragraph("At a bus voltage of A\u2013B " + volts(bus.ab()) + ", B\u2013C "
                + volts(bus.bc()) + ", C\u2013A " + volts(bus.ca())
                + ". At another voltage every value changes in proportion. The bands allow for voltage "
                + percent(energize.uncertainty().busVolts()) + ", ammeter "
                + percent(energize.uncertainty().ammeter()) + ", measured capacitance "
                + percent(energize.uncertainty().capacitance()) + ", sensor "
                + percent(energize.uncertainty().sensor()) + ", units known by nameplate only their tolerance."));
        blocks.add(new Block.Bullets(energize.cautions()));
        blocks.add(currents(energize));
        if (!energize.sensors().isEmpty()) {
            blocks.add(sensors(energize));
        }
        List<Stage> stages = energize.bank().stages();
        for (int i = 0; i < stages.size(); i += STAGES_ON_A_PAGE) {
            List<Stage> some = stages.subList(i, Math.min(stages.size(), i + STAGES_ON_A_PAGE));
            blocks.add(new Block.Figure(
                    EnergizePhasors.of(energize, some).svg(Width.PAGE),
                    "currents and sensor readings to expect of "
                            + Enumeration.of(some.stream().map(Stage::name).toList())
                            + ", the circle within which each may lie, and what was measured"));
        }
        if (!energize.explanations().isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Notice.Weight.CAUTION,
                    "CAUTION: outside the band",
                    energize.explanations().stream()
                            .map((Explanation e) -> e.stage() + ": " + e.sentence())
                            .toList()));
        }
        blocks.add(new Block.Subheading("After 15 minutes"));
        blocks.add(new Block.Ticks(energize.after15Minutes()));
        blocks.add(new Block.Subheading("After 8 hours"));
        blocks.add(new Block.Ticks(energize.after8Hours()));
        return new Section(TITLE, Section.PageStart.NEW_PAGE, blocks);
    }

    private static Block currents(Energize energize) {
        List<Row> rows = new ArrayList<>();
        for (ExpectedCurrent current : energize.currents()) {
            rows.add(row(
                    energize, current.name(), current.line() ? "line" : "leg", current.amperes(), Dimension.CURRENT));
        }
        return table("Currents", "Line or leg", rows);
    }

    private static Block sensors(Energize energize) {
        List<Row> rows = new ArrayList<>();
        for (ExpectedSensor sensor : energize.sensors()) {
            Dimension dimension = sensor.senses().dimension();
            String side = sensor.secondary().isPresent() ? "at the relay" : "primary";
            rows.add(row(energize, sensor.name(), side, sensor.read(), dimension));
        }
        return table("Sensors", "Sensor", rows);
    }

    private static Block table(String caption, String first, List<Row> rows) {
        return new Block.Table(
                caption,
                List.of(
                        Column.left(first, 27),
                        Column.left("", 13),
                        Column.right("Expected", 13),
                        Column.right("Band", 22),
                        Column.left("Measured", 25)),
                rows);
    }

    private static Row row(Energize energize, String name, String what, Band band, Dimension dimension) {
        Optional<Comparison> measured = energize.comparison().stream()
                .filter(c -> c.name().equals(name))
                .findFirst();
        return new Row(List.of(
                new Cell.Text(name),
                new Cell.Text(what),
                new Cell.Text(dimension.format(band.expected())),
                new Cell.Text(dimension.format(band.low()) + " to " + dimension.format(band.high())),
                measured.map(c -> measured(c, dimension)).orElse(new Cell.ToFillIn())));
    }

    private static Cell measured(Comparison comparison, Dimension dimension) {
        String value = dimension.format(comparison.measured());
        return comparison.verdict() == Verdict.PASS
                ? new Cell.Text(value + ", " + comparison.words())
                : new Cell.Strong(value + ": " + comparison.words());
    }

    private static String volts(double value) {
        return Dimension.VOLTAGE.format(value);
    }

    private static String percent(double part) {
        return Dimension.FRACTION.format(part);
    }
}
