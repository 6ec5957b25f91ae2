package org.varwright.report;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.varwright.job.Counted;
import org.varwright.job.Fact;
import org.varwright.job.JobEvent;
import org.varwright.job.LoggedEvent;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Who vouches for the record, and every entry of it. */
final class JobLogSection {
    private static final int HASH_SHOWN = 12;

    private JobLogSection() {}

    static Section signatures(JobReport report) {
        List<Block> blocks = new ArrayList<>();
        List<Row> rows = new ArrayList<>();
        for (Counted<Fact.Signed> signed : report.job().counted(Fact.Signed.class)) {
            rows.add(Row.of(
                    signed.fact().role(),
                    signed.event().by(),
                    report.times().minute(signed.event()),
                    signed.fact().logHash()));
        }
        if (rows.isEmpty()) {
            blocks.add(new Block.Paragraph("Nobody has signed in the log."));
        } else {
            blocks.add(new Block.Table(
                    "Signed in the log, with the hash of the log as it stood",
                    List.of(
                            Column.left("As", 16),
                            Column.left("Name", 20),
                            Column.left("When", 16),
                            Column.left("Hash of the log", 48)),
                    rows));
        }
        blocks.add(new Block.Signatures(
                List.of("Person in charge", "Second person", "Licensed or authorized person", "For the owner")));
        return new Section("Signatures", Section.PageStart.RUN_ON, blocks);
    }

    static Section events(JobReport report) {
        Set<String> withdrawn = new HashSet<>(report.job().withdrawn());
        Set<JobEvent> refused = new HashSet<>();
        report.job().notCounted().forEach(n -> refused.add(n.event()));
        List<Row> rows = new ArrayList<>();
        for (LoggedEvent logged : report.job().log().events()) {
            JobEvent event = logged.event();
            String counts =
                    refused.contains(event) ? "NOT COUNTED" : withdrawn.contains(event.id()) ? "TAKEN BACK" : "";
            rows.add(new Row(List.of(
                    new Cell.Text(event.id()),
                    new Cell.Text(report.times().second(event)),
                    new Cell.Text(event.by()),
                    counts.isEmpty() ? new Cell.Text(event.type()) : new Cell.Strong(event.type() + ": " + counts),
                    new Cell.Text(logged.hash().substring(0, HASH_SHOWN)))));
        }
        return Section.of(
                "The log",
                new Block.Paragraph("Every entry, in the order in which it counts. SHA-256 of the set of all "
                        + report.job().log().events().size() + " entries: "
                        + report.job().log().hash()),
                new Block.Table(
                        "",
                        List.of(
                                Column.left("Entry", 22),
                                Column.left("Written", 20),
                                Column.left("By", 22),
                                Column.left("What", 22),
                                Column.left("SHA-256 begins", 14)),
                        rows));
    }
}
