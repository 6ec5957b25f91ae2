package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.jobsheet.JobSheet;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Who has a lock on the bank: each puts on a lock of their own and takes off no other. */
final class PeopleSection {
    private static final int SPARE_LINES = 4;

    private PeopleSection() {}

    static Section of(JobSheet job) {
        List<Row> rows = new ArrayList<>();
        for (JobSheet.Person person : job.people()) {
            rows.add(row(new Cell.Text(
                    person.name() + person.role().map(r -> ", " + r).orElse(""))));
        }
        for (int i = 0; i < SPARE_LINES; i++) {
            rows.add(row(new Cell.ToFillIn()));
        }
        return Section.of(
                "People locked on",
                new Block.Paragraph(
                        "Each person puts on a lock of their own before the first hand goes in and takes off that"
                                + " lock, and no other, when done. The way back begins when every line below is closed."),
                new Block.Table(
                        "",
                        List.of(
                                Column.left("Name", 28),
                                Column.left("Lock no.", 10),
                                Column.left("Lock on: time", 13),
                                Column.left("Signature", 18),
                                Column.left("Lock off: time", 13),
                                Column.left("Signature", 18)),
                        rows));
    }

    private static Row row(Cell name) {
        List<Cell> cells = new ArrayList<>(List.of(name));
        for (int i = 0; i < 5; i++) {
            cells.add(new Cell.ToFillIn());
        }
        return new Row(cells);
    }
}
