package org.varwright.report.pdf;

import java.util.List;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;

/** How much room a block takes, roughly, in lines of text: to decide what is kept on one page. */
final class Bulk {
    /** What is no larger than this is kept together: about a third of a page. */
    private static final double SMALL = 22.0;

    private static final double PER_LINE = 100.0;

    private Bulk() {}

    static boolean isSmall(Block block) {
        return of(block) <= SMALL;
    }

    /** How many blocks at the start of a section are kept with its heading: up to its first table, or all of a small section. */
    static int leading(List<Block> blocks) {
        double lines = 3.0;
        int fitting = 0;
        int upToTable = 0;
        for (Block block : blocks) {
            lines += of(block);
            if (lines > SMALL) {
                break;
            }
            fitting++;
            if (!(block instanceof Block.Paragraph) && upToTable == 0) {
                upToTable = fitting;
            }
        }
        return fitting == blocks.size() ? fitting : upToTable;
    }

    private static double of(Block block) {
        return switch (block) {
            case Block.Subheading subheading -> 2.0;
            case Block.Paragraph(String text) -> text(text);
            case Block.Bullets(List<String> points) ->
                points.stream().mapToDouble(Bulk::text).sum();
            case Block.Notice notice ->
                2.0 + notice.points().stream().mapToDouble(Bulk::text).sum();
            case Block.Facts facts -> 1.3 * facts.facts().size();
            case Block.Table table ->
                2.0 + table.rows().stream().mapToDouble(r -> row(r.cells())).sum();
            case Block.Steps steps -> 12.0 * steps.steps().size();
            case Block.Ticks(List<String> lines) -> 2.0 + 2.0 * lines.size();
            case Block.Signatures(List<String> roles) -> 2.0 + 2.5 * roles.size();
            case Block.Figure figure -> 60.0;
            case Block.Photograph photograph -> 30.0;
        };
    }

    private static double text(String text) {
        return 0.3 + Math.ceil(text.length() / PER_LINE);
    }

    private static double row(List<Cell> cells) {
        double most = 1.4;
        for (Cell cell : cells) {
            most = Math.max(
                    most,
                    switch (cell) {
                        case Cell.Text(String text) -> 1.4 + Math.floorDiv(text.length(), 60);
                        case Cell.Strong(String text) -> 1.4 + Math.floorDiv(text.length(), 60);
                        case Cell.Explained(String text, List<String> reasons) ->
                            1.4 + reasons.stream().mapToDouble(Bulk::text).sum();
                        case Cell.ToFillIn() -> 1.7;
                        case Cell.ToTick() -> 1.7;
                    });
        }
        return most;
    }
}
