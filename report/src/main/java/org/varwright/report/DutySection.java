package org.varwright.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.basis.Check;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.duty.Duty;
import org.varwright.duty.DutyQuestion;
import org.varwright.duty.LoadAnswer;
import org.varwright.duty.StageDuty;
import org.varwright.duty.WrongSpare;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;
import org.varwright.resonance.CombinationResult;
import org.varwright.resonance.Peak;
import org.varwright.resonance.Resonance;
import org.varwright.resonance.ResonanceQuestion;
import org.varwright.resonance.ScanChart;

/** What service asks of the units, and which combinations of stages to have on and to avoid. */
final class DutySection {
    private static final String TITLE = "Duty and resonance";
    private static final int MOST_ROWS = 24;

    private DutySection() {}

    /** The duty of a bank as its file has it. */
    static Duty duty(Bank bank) {
        return Duty.of(bank, DutyQuestion.PLAIN);
    }

    /** Of the units in service every stage's worst case, and all else. */
    static List<Check> checks(Duty duty) {
        Map<String, StageDuty> worst = new LinkedHashMap<>();
        for (StageDuty stage : duty.stages()) {
            worst.merge(
                    stage.stage(),
                    stage,
                    (a, b) -> b.stress().current() > a.stress().current() ? b : a);
        }
        List<Check> checks = new ArrayList<>();
        worst.values().forEach(s -> checks.addAll(s.checks()));
        checks.addAll(duty.otherChecks());
        return checks;
    }

    static Section of(Bank bank, Duty duty) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(units(bank, duty));
        Resonance resonance = Resonance.of(bank, ResonanceQuestion.PLAIN);
        if (!resonance.combinations().isEmpty()) {
            blocks.add(combinations(resonance));
            avoid(resonance, blocks);
            blocks.add(new Block.Figure(
                    ScanChart.of(resonance).svg(Width.PAGE),
                    "impedance seen from the bus by order, without and with " + bank.name()));
        }
        loads(duty, blocks);
        spares(duty, blocks);
        List<String> gaps = new ArrayList<>();
        for (Unanswered gap : duty.unanswered()) {
            gaps.add(gap.print() + ".");
        }
        if (!gaps.isEmpty()) {
            blocks.add(new Block.Subheading("Not answered"));
            blocks.add(new Block.Bullets(gaps));
        }
        return new Section(TITLE, Section.PageStart.RUN_ON, blocks);
    }

    private static Block units(Bank bank, Duty duty) {
        List<Row> rows = duty.stages().stream()
                .map(s -> new Row(List.of(
                        new Cell.Text(s.stage()),
                        new Cell.Text(s.at().print()),
                        new Cell.Text(s.harmonics()),
                        cell(s, 0),
                        cell(s, 1),
                        cell(s, 2),
                        cell(s, 3))))
                .toList();
        return new Block.Table(
                "Hardest-worked units in service, multiples of rated",
                List.of(
                        Column.left(Values.capital(bank.words().stage()), 14),
                        Column.left("Bus", 19),
                        Column.left("Harmonics", 31),
                        Column.right("rms V", 9),
                        Column.right("Crest", 9),
                        Column.right("rms I", 9),
                        Column.right("kvar", 9)),
                rows);
    }

    private static Cell cell(StageDuty stage, int limit) {
        Check check = stage.checks().get(limit);
        String text = Dimension.digits(check.value(), 3);
        return check.verdict() == Verdict.PASS ? new Cell.Text(text) : new Cell.Strong(text + " over");
    }

    private static Block combinations(Resonance resonance) {
        List<CombinationResult> shown = resonance.combinations();
        if (shown.size() > MOST_ROWS) {
            shown = resonance
                    .avoid()
                    .subList(0, Math.min(MOST_ROWS, resonance.avoid().size()));
        }
        List<Row> rows = shown.stream()
                .map(c -> new Row(List.of(
                        new Cell.Text(c.combination().name()),
                        new Cell.Text(Dimension.REACTIVE_POWER.format(c.vars())),
                        new Cell.Text(String.join(
                                ", ",
                                c.peaks().stream()
                                        .limit(3)
                                        .map((Peak p) -> Dimension.digits(p.order(), 3))
                                        .toList())),
                        c.isToAvoid() ? new Cell.Strong("avoid") : new Cell.Text("clear"))))
                .toList();
        return new Block.Table(
                "Combinations: resonance with the source",
                List.of(
                        Column.left("On", 48),
                        Column.right("Gives", 16),
                        Column.right("Resonance at order", 20),
                        Column.left("", 16)),
                rows);
    }

    private static void avoid(Resonance resonance, List<Block> blocks) {
        List<String> points = resonance.avoid().stream()
                .limit(MOST_ROWS)
                .map(c -> c.combination().name() + ": " + String.join("; ", c.reasons()) + ".")
                .toList();
        if (!points.isEmpty()) {
            blocks.add(new Block.Notice(Block.Notice.Weight.CAUTION, "CAUTION: combinations to avoid", points));
        }
    }

    private static void loads(Duty duty, List<Block> blocks) {
        List<String> points = new ArrayList<>();
        for (LoadAnswer a : duty.loads()) {
            a.use()
                    .ifPresent(u -> points.add(a.load() + ": " + u.combination() + ", power factor "
                            + Dimension.digits(u.powerFactor(), 3)
                            + (u.isToAvoid() ? ", but resonance speaks against it" : "") + "."));
            a.clear()
                    .ifPresent(u -> points.add(a.load() + ", clear of resonance: " + u.combination() + ", power factor "
                            + Dimension.digits(u.powerFactor(), 3) + "."));
        }
        if (!points.isEmpty()) {
            blocks.add(new Block.Subheading("What to have on"));
            blocks.add(new Block.Bullets(points));
        }
    }

    private static void spares(Duty duty, List<Block> blocks) {
        List<String> points = new ArrayList<>();
        for (WrongSpare w : duty.wrongSpares()) {
            points.add((w.serial().isEmpty() ? "type " + w.type() : w.serial()) + " in " + w.stage() + ": "
                    + w.differs() + "; it would give " + Dimension.REACTIVE_POWER.format(w.vars()) + " instead of "
                    + Dimension.REACTIVE_POWER.format(w.wantedVars()) + ".");
        }
        if (!points.isEmpty()) {
            blocks.add(new Block.Notice(
                    Block.Notice.Weight.CAUTION, "CAUTION: spares with the right kvar that must not go in", points));
        }
    }
}
