package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.drawing.DrawingOptions;
import org.varwright.drawing.OneLineDrawing;
import org.varwright.job.Counted;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobDrawing;
import org.varwright.job.LogFinding;
import org.varwright.job.Order;
import org.varwright.report.document.Block;
import org.varwright.report.document.Section;

/** Which job, where it stands, and what must be known before anything else is believed. */
final class JobCoverSection {
    private JobCoverSection() {}

    static Section of(JobReport report) {
        Job job = report.job();
        Bank bank = report.bank();
        Times times = report.times();
        List<Block.Facts.Fact> facts = new ArrayList<>();
        job.title().ifPresent(title -> facts.add(fact("Job", title)));
        report.results().job().number().ifPresent(n -> facts.add(fact("Number", n)));
        facts.add(fact("Bank", bank.name()));
        bank.label().ifPresent(label -> facts.add(fact("Label on the bank", label)));
        facts.add(fact("Site", bank.site().orElse("not given in the bank file")));
        facts.add(fact("Alarm", report.results().job().alarm().orElse("none written down")));
        facts.add(fact("Reason", report.results().job().reason().orElse("none written down")));
        var first = job.log().events().getFirst().event();
        var last = job.log().events().getLast().event();
        facts.add(fact("Begun", times.minute(first) + " by " + first.by()));
        facts.add(fact("Last entry", times.minute(last) + " by " + last.by()));
        facts.add(fact(
                "Times",
                "as the writing device\u2019s clock showed them, in "
                        + report.zone().getId()));
        facts.add(fact("Stands", stands(job)));
        facts.add(fact(
                "Log",
                job.log().events().size() + " entries, SHA-256 of the set "
                        + job.log().hash()));
        return Section.of("Job", new Block.Facts(facts));
    }

    private static Block.Facts.Fact fact(String name, String value) {
        return new Block.Facts.Fact(name, value);
    }

    private static String stands(Job job) {
        List<Counted<Fact.Closed>> closed = job.counted(Fact.Closed.class);
        if (job.isClosed() && !closed.isEmpty()) {
            return "closed: " + closed.getLast().fact().outcome();
        }
        if (job.isStopped()) {
            return "STOPPED: "
                    + job.counted(Fact.Stopped.class).getLast().fact().reason();
        }
        if (job.orders().isEmpty()) {
            return "open, no order of work yet";
        }
        Order order = job.orders().getLast();
        if (order.standing() != Order.Standing.CURRENT) {
            return "OPEN, NO ORDER OF WORK TO GO BY: "
                    + order.why().orElse(order.standing().code());
        }
        int done = order.confirmed().size();
        int all = order.work().steps().size();
        return switch (order.phase()) {
            case WAY_IN -> "OPEN: on the way in, " + done + " of " + all + " steps confirmed";
            case WORK -> "OPEN: at work, the way in is confirmed, the way back is not begun";
            case WAY_BACK -> "OPEN: on the way back, " + done + " of " + all + " steps confirmed";
            case IN_SERVICE -> "every step is confirmed; the job is not closed yet";
        };
    }

    /** What speaks against the record itself; empty where nothing does. */
    static Optional<Section> disagreements(JobReport report) {
        Job job = report.job();
        List<Block> blocks = new ArrayList<>();
        notice(
                blocks,
                "CAUTION: the log itself is not whole",
                job.log().findings().stream().map(LogFinding::text).toList());
        notice(
                blocks,
                "CAUTION: devices disagree, and nobody has said which holds",
                job.conflicts().stream()
                        .map(c -> c.about() + ": entries " + String.join(", ", c.events()))
                        .toList());
        notice(
                blocks,
                "Kept, but not counted: the rules refuse these entries",
                job.notCounted().stream()
                        .map(n -> n.event().id() + ", " + n.event().type() + ", by "
                                + n.event().by() + ", " + report.times().minute(n.event()) + ": "
                                + String.join("; ", n.reasons()))
                        .toList());
        notice(blocks, "Not used in this report", report.remarks());
        return blocks.isEmpty()
                ? Optional.empty()
                : Optional.of(new Section("What must be cleared up", Section.PageStart.RUN_ON, blocks));
    }

    private static void notice(List<Block> blocks, String title, List<String> points) {
        if (!points.isEmpty()) {
            blocks.add(new Block.Notice(
                    title.startsWith("CAUTION") ? Block.Notice.Weight.CAUTION : Block.Notice.Weight.NOTE,
                    title,
                    points));
        }
    }

    /** The bank as the last confirmed step left it. */
    static Optional<Section> drawing(JobReport report) {
        DrawingOptions sheet =
                new DrawingOptions(DrawingOptions.Page.A4_PORTRAIT, DrawingOptions.Colours.BLACK_AND_WHITE);
        return JobDrawing.of(report.job())
                .map(state -> new Section(
                        "One-line diagram",
                        Section.PageStart.NEW_PAGE,
                        List.of(new Block.Figure(
                                OneLineDrawing.draw(report.bank(), state, sheet),
                                "one-line diagram of " + report.bank().name() + "; state: " + state.name()))));
    }
}
