package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.plot.Width;
import org.varwright.record.ChannelMatching;
import org.varwright.record.Finding;
import org.varwright.record.Located;
import org.varwright.record.RecordPicture;
import org.varwright.record.RecordStudy;
import org.varwright.record.RecordStudyText;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;
import org.varwright.unbalance.Candidate;

/** What the disturbance record of the event said: which channel measured what, what happened, what failed, what the record can't tell. */
final class RecordSection {
    private static final String TITLE = "Disturbance record";

    private RecordSection() {}

    /** Empty where no record belongs to the job. */
    static Optional<Section> of(Optional<ReadRecord> record) {
        return record.map(r -> present(r.name(), r.study()));
    }

    private static Section present(String name, RecordStudy study) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph("Read from " + name
                + ". Times count from its first sample. It shows what was recorded then, not what is so now, and proves nothing"
                + " dead, open or discharged."));
        List<Located> located = study.located();
        if (!located.isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Notice.Weight.NOTE,
                    "What failed",
                    located.stream().map(RecordSection::located).toList()));
        }
        study.matching()
                .map(ChannelMatching::open)
                .filter(q -> !q.isEmpty())
                .ifPresent(open -> blocks.add(new Block.Notice(
                        Block.Notice.Weight.CAUTION,
                        "CAUTION: it is not clear what some channels measure; nothing below leans on them",
                        open.stream().map(q -> Values.capital(q.what()) + ".").toList())));
        RecordPicture.svg(study, Width.PAGE)
                .ifPresent(
                        svg -> blocks.add(new Block.Figure(svg, "waveforms around what matters most in the record")));
        blocks.add(findings(study));
        if (!study.unanswered().isEmpty()) {
            blocks.add(new Block.Subheading("Not answered by the record"));
            blocks.add(new Block.Bullets(
                    study.unanswered().stream().map(RecordStudyText::sentence).toList()));
        }
        return new Section(TITLE, Section.PageStart.NEW_PAGE, blocks);
    }

    private static String located(Located located) {
        if (!located.locate().isExplained() || located.locate().candidates().isEmpty()) {
            return RecordStudyText.sentence(located);
        }
        Candidate best = located.locate().candidates().getFirst();
        String others = located.locate().candidates().size() > 1
                ? " Next: " + located.locate().candidates().get(1).words() + " ("
                        + RecordStudyText.likely(
                                located.locate().candidates().get(1).probability()) + ")."
                : "";
        return located.sensor() + ", " + located.channel() + ": " + best.words() + ", "
                + RecordStudyText.likely(best.probability()) + " likely, from "
                + RecordStudyText.at(located.fromSeconds())
                + " to " + RecordStudyText.at(located.toSeconds()) + "." + others;
    }

    private static Block findings(RecordStudy study) {
        List<Row> rows = new ArrayList<>();
        for (Finding f : study.findings()) {
            rows.add(new Row(List.of(
                    new Cell.Text(RecordStudyText.at(f.seconds())),
                    switch (f.weight()) {
                        case NOTE -> new Cell.Text("");
                        case LOOK -> new Cell.Strong("look");
                        case FAILED -> new Cell.Strong("FAILED");
                    },
                    new Cell.Text(f.words()))));
        }
        return new Block.Table(
                "What happened",
                List.of(Column.right("At", 11), Column.left("", 10), Column.left("What the record shows", 79)),
                rows);
    }
}
