package org.varwright.report;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.varwright.job.Counted;
import org.varwright.job.Fact;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Units by serial number: what came out, what went in; and how selectors were left. */
final class JobPartsSection {
    private static final String PARTS = "Units lifted";
    private static final String AS_LEFT = "Selectors as left";

    private JobPartsSection() {}

    static Section of(JobReport report) {
        List<Counted<Fact.UnitMoved>> moves = report.job().counted(Fact.UnitMoved.class);
        if (moves.isEmpty()) {
            return Section.absent(PARTS, "No unit was lifted in this job.");
        }
        List<Row> rows = new ArrayList<>();
        for (Counted<Fact.UnitMoved> move : moves) {
            rows.add(new Row(List.of(
                    new Cell.Strong(move.fact().serial()),
                    new Cell.Text(move.fact().from().orElse("the store")),
                    new Cell.Text(move.fact().to().orElse("out, not fitted again")),
                    new Cell.Text(report.times().minute(move.event()) + " "
                            + move.event().by()))));
        }
        return Section.of(
                PARTS,
                new Block.Table(
                        "",
                        List.of(
                                Column.left("Serial", 22),
                                Column.left("From", 24),
                                Column.left("To", 24),
                                Column.left("When, by", 30)),
                        rows));
    }

    /** Positions whose unit was taken out in this job. */
    static Set<String> lifted(JobReport report) {
        Set<String> lifted = new LinkedHashSet<>();
        report.job().counted(Fact.UnitMoved.class).forEach(m -> m.fact().from().ifPresent(lifted::add));
        return lifted;
    }

    static Section asLeft(JobReport report) {
        List<Counted<Fact.AsLeft>> left = report.job().counted(Fact.AsLeft.class);
        if (left.isEmpty()) {
            return Section.absent(
                    AS_LEFT,
                    "Nothing was written down of how selectors were left: look whether the bank is in automatic.");
        }
        List<Row> rows = left.stream()
                .map(l -> Row.of(
                        l.fact().selector(),
                        l.fact().position(),
                        report.times().minute(l.event()) + " " + l.event().by()))
                .toList();
        return Section.of(
                AS_LEFT,
                new Block.Table(
                        "",
                        List.of(Column.left("Selector", 30), Column.left("Position", 30), Column.left("When, by", 40)),
                        rows));
    }
}
