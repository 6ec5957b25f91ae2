package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.job.Counted;
import org.varwright.job.Fact;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Notes, and which files belong to the job. */
final class JobNotesSection {
    private JobNotesSection() {}

    static Section notes(JobReport report) {
        List<Counted<Fact.Noted>> notes = report.job().counted(Fact.Noted.class);
        if (notes.isEmpty()) {
            return Section.absent("Notes", "None was written in this job.");
        }
        List<Row> rows = notes.stream()
                .map(n -> Row.of(
                        report.times().minute(n.event()) + " " + n.event().by(),
                        n.fact().text()))
                .toList();
        return Section.of(
                "Notes", new Block.Table("", List.of(Column.left("When, by", 30), Column.left("Note", 70)), rows));
    }

    /** What disturbance records said; empty where none was read. */
    static Optional<Section> records(JobReport report) {
        List<Counted<Fact.RecordRead>> records = report.job().counted(Fact.RecordRead.class);
        if (records.isEmpty()) {
            return Optional.empty();
        }
        List<Block> blocks = new ArrayList<>();
        for (Counted<Fact.RecordRead> each : records) {
            blocks.add(new Block.Subheading(each.fact().name()));
            blocks.add(new Block.Paragraph("Read " + report.times().minute(each.event()) + " by "
                    + each.event().by() + ". SHA-256 " + each.fact().sha256()));
            blocks.add(new Block.Bullets(each.fact().findings()));
        }
        return Optional.of(new Section("Disturbance records", Section.PageStart.RUN_ON, blocks));
    }

    static Section attachments(JobReport report) {
        List<Counted<Fact.Attached>> attached = report.job().counted(Fact.Attached.class);
        if (attached.isEmpty()) {
            return Section.absent("Attachments", "None belongs to this job.");
        }
        List<Row> rows = new ArrayList<>();
        for (Counted<Fact.Attached> each : attached) {
            rows.add(Row.of(
                    each.fact().name(),
                    Values.count(each.fact().bytes()) + " bytes, " + each.fact().mediaType(),
                    report.times().minute(each.event()) + " " + each.event().by(),
                    each.fact().sha256()));
        }
        return Section.of(
                "Attachments",
                new Block.Table(
                        "",
                        List.of(
                                Column.left("Name", 22),
                                Column.left("What", 20),
                                Column.left("When, by", 22),
                                Column.left("SHA-256", 36)),
                        rows));
    }

    /** What a person calls the attachment of that hash; the hash's beginning where nobody has named it. */
    static String name(JobReport report, String sha256) {
        return report.job().counted(Fact.Attached.class).stream()
                .filter(a -> a.fact().sha256().equals(sha256))
                .map(a -> a.fact().name())
                .findFirst()
                .orElse("SHA-256 " + sha256.substring(0, Math.min(12, sha256.length())) + "\u2026");
    }
}
