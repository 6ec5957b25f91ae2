package org.varwright.report;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;
import org.varwright.drawing.DrawingOptions;
import org.varwright.drawing.DrawingState;
import org.varwright.drawing.OneLineDrawing;
import org.varwright.jobsheet.JobSheet;
import org.varwright.report.document.Block;
import org.varwright.report.document.Section;

/** The one-line diagram in the state from which the job starts. */
final class DrawingSection {
    private DrawingSection() {}

    static Section of(Bank bank, JobSheet job) {
        DrawingState state = DrawingState.atStart(started(bank, job.start()));
        DrawingOptions sheet =
                new DrawingOptions(DrawingOptions.Page.A4_PORTRAIT, DrawingOptions.Colours.BLACK_AND_WHITE);
        return new Section(
                "One-line diagram",
                Section.PageStart.NEW_PAGE,
                List.of(new Block.Figure(
                        OneLineDrawing.draw(bank, state, sheet),
                        "one-line diagram of " + bank.name() + " with its compartments, locks and keys; state: "
                                + state.name())));
    }

    /** The bank with the positions from which the job starts. */
    private static Bank started(Bank bank, Map<String, String> positions) {
        if (positions.isEmpty() || bank.isolation().isEmpty()) {
            return bank;
        }
        Isolation i = bank.isolation().get();
        Map<String, String> start = new LinkedHashMap<>(i.start());
        start.putAll(positions);
        return bank.with(new Isolation(
                i.sources(),
                i.devices(),
                i.compartments(),
                i.locks(),
                i.keys(),
                i.exchanges(),
                i.interlocks(),
                i.delays(),
                start));
    }
}
