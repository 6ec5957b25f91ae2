package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Signatures, and which files the report was worked out from. */
final class ClosingSection {
    private ClosingSection() {}

    static Section signatures() {
        return Section.of(
                "Signatures",
                new Block.Signatures(List.of(
                        "Person in charge", "Second person", "Licensed or authorized person", "For the owner")));
    }

    static Section files(ReportInput input) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(
                "This report was worked out from these files and no others. A file whose SHA-256 differs"
                        + " is another file, and this report says nothing of it."));
        List<Row> rows = input.files().stream()
                .map(f -> Row.of(f.what(), f.name(), f.sha256()))
                .toList();
        blocks.add(new Block.Table(
                "", List.of(Column.left("What", 11), Column.left("File", 23), Column.left("SHA-256", 66)), rows));
        return new Section("Files", Section.PageStart.RUN_ON, blocks);
    }
}
