package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.varwright.fuse.FuseNotes;
import org.varwright.fuse.FusePlot;
import org.varwright.fuse.FuseStudy;
import org.varwright.fuse.Fuses;
import org.varwright.fuse.Link;
import org.varwright.fuse.Proposal;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Whether the fuses suit their places, and which standard links would. */
final class FuseSection {
    private static final String TITLE = "Fuses";

    private FuseSection() {}

    static Section of(Fuses fuses) {
        if (fuses.studies().isEmpty()) {
            return Section.absent(
                    TITLE,
                    String.join(
                            " ",
                            fuses.unfused().stream().map(FuseNotes::unfused).toList()));
        }
        List<Block> blocks = new ArrayList<>();
        blocks.add(currents(fuses));
        blocks.add(links(fuses));
        FusePlot.first(fuses).ifPresent(chart -> blocks.add(new Block.Figure(chart.svg(Width.PAGE), chart.title())));
        if (!fuses.notAnswered().isEmpty()) {
            blocks.add(new Block.Subheading("Not answered"));
            blocks.add(new Block.Bullets(
                    fuses.notAnswered().stream().map(u -> u.print() + ".").toList()));
        }
        blocks.add(new Block.Subheading("Bear in mind"));
        blocks.add(new Block.Bullets(FuseNotes.cautions(fuses)));
        return new Section(TITLE, Section.PageStart.RUN_ON, blocks);
    }

    private static Block currents(Fuses fuses) {
        List<Row> rows = fuses.studies().stream()
                .map(s -> Row.of(
                        s.name(),
                        amperes(s.carriesAmperes()),
                        amperes(s.neededAmperes()),
                        amperes(s.faultAmperes()),
                        s.faultAmperes().isPresent()
                                ? FuseNotes.time(
                                        s.curve().clearing(s.faultAmperes().getAsDouble()))
                                : "not known"))
                .toList();
        return new Block.Table(
                "What the fuses carry and clear",
                List.of(
                        Column.left("Fuse", 38),
                        Column.right("Carries", 12),
                        Column.right("Must carry", 12),
                        Column.right("With a unit shorted", 14),
                        Column.left("Cleared", 24)),
                rows);
    }

    private static Block links(Fuses fuses) {
        List<Row> rows = new ArrayList<>();
        for (FuseStudy study : fuses.studies()) {
            for (Proposal proposal : study.proposals()) {
                if (proposal.recommended()) {
                    List<String> neighbours = new ArrayList<>();
                    proposal.notSmaller().ifPresent(neighbours::add);
                    proposal.notLarger().ifPresent(neighbours::add);
                    rows.add(new Row(List.of(
                            new Cell.Text(study.name()),
                            new Cell.Strong(proposal.link().map(Link::name).orElse("none")),
                            new Cell.Explained(
                                    proposal.why(),
                                    proposal.left().stream()
                                            .map(l -> "but " + l)
                                            .toList()),
                            new Cell.Text(String.join("; ", neighbours)))));
                }
            }
        }
        return new Block.Table(
                "Standard links that suit best",
                List.of(
                        Column.left("Fuse", 24),
                        Column.left("Link", 8),
                        Column.left("Why", 34),
                        Column.left("Why not the next", 34)),
                rows);
    }

    private static String amperes(OptionalDouble value) {
        return value.isPresent() ? Dimension.CURRENT.format(value.getAsDouble(), 3) : "not known";
    }
}
