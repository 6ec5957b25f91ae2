package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.interlock.Interlocking;
import org.varwright.interlock.Property;
import org.varwright.interlock.Step;
import org.varwright.interlock.Verification;
import org.varwright.interlock.Verification.Outcome;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Notice.Weight;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** What keys and locks enforce, what they don't, and the shortest way to show it. */
final class InterlockSection {
    private static final String TITLE = "What the keys and locks enforce";

    private InterlockSection() {}

    static Section of(Optional<Interlocking> interlocking) {
        return interlocking
                .map(InterlockSection::present)
                .orElseGet(() -> Section.absent(
                        TITLE, "The interlocking was not verified in this job: count on no lock to stop anything."));
    }

    private static Section present(Interlocking interlocking) {
        Verification verification = interlocking.verification();
        List<Block> blocks = new ArrayList<>();
        blocks.add(
                new Block.Paragraph(
                        "Every order of moves that anyone can make was followed: "
                                + Values.count(verification.states()) + " states and "
                                + Values.count(verification.moves())
                                + " moves"
                                + (verification.complete()
                                        ? ", which is all of them."
                                        : ", which is NOT all of them. What is undecided below is not known, and counts as not enforced.")));
        List<Row> rows = new ArrayList<>();
        for (Property property : Property.values()) {
            rows.add(new Row(List.of(
                    new Cell.Text(property.id()),
                    new Cell.Text(property.claim(interlocking.bank().words())),
                    new Cell.Strong(word(verification.outcome(property))))));
        }
        blocks.add(new Block.Table(
                "",
                List.of(Column.left("Property", 21), Column.left("What it says", 53), Column.left("Result", 26)),
                rows));
        for (Property property : Property.values()) {
            if (verification.outcome(property) instanceof Outcome.NotEnforced(List<Step> path)) {
                blocks.add(new Block.Notice(
                        Weight.CAUTION,
                        "CAUTION: " + property.id() + " is up to you",
                        shown(interlocking.rule(property).orElse(""), path)));
            }
        }
        return new Section(TITLE, Section.PageStart.RUN_ON, blocks);
    }

    private static String word(Outcome outcome) {
        return switch (outcome) {
            case Outcome.Enforced(long states) -> "enforced in all " + Values.count(states) + " states";
            case Outcome.NotEnforced(List<Step> path) -> "NOT ENFORCED";
            case Outcome.Undecided(String limit) -> "UNDECIDED (" + limit + "): take it as not enforced";
        };
    }

    private static List<String> shown(String rule, List<Step> path) {
        if (path.isEmpty()) {
            return List.of(rule, "It is so from the start.");
        }
        StringBuilder moves = new StringBuilder(
                path.size() == 1 ? "One move breaks it: " : "The shortest way to it has " + path.size() + " moves: ");
        for (int i = 0; i < path.size(); i++) {
            moves.append(i == 0 ? "" : "; ")
                    .append("(")
                    .append(i + 1)
                    .append(") ")
                    .append(path.get(i).move().text());
        }
        return List.of(rule, moves.append('.').toString());
    }
}
