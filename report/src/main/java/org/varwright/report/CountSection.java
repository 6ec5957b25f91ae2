package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Vocabulary;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Plan;
import org.varwright.isolation.Task;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Tools, shorts and grounds: what goes in must come out. */
final class CountSection {
    private static final int SPARE_LINES = 6;

    private CountSection() {}

    static Section of(Bank bank, Optional<Plan> plan) {
        Vocabulary words = bank.words();
        List<Row> rows = new ArrayList<>();
        if (plan.isPresent() && plan.get() instanceof Plan.Planned(OrderOfWork order)) {
            for (OrderStep step : order.in()) {
                switch (step.task()) {
                    case Task.ShortsOn(String compartment, String stage, int count) ->
                        rows.add(row("shorts on the units of " + stage + ", " + compartment, count));
                    case Task.GroundsOn(String compartment, String conductor, int count) ->
                        rows.add(row("portable " + words.ground() + "s on " + conductor + ", " + compartment, count));
                    default -> {
                        // nothing is left inside by any other step
                    }
                }
            }
        }
        for (int i = 0; i < SPARE_LINES; i++) {
            rows.add(blank());
        }
        return Section.of(
                "Counts of tools and " + words.ground() + "s",
                new Block.Paragraph(
                        "Count out what goes in, count back what comes out, by two people. The way back does not"
                                + " begin while a line is open. Add tools, leads and covers on the empty lines."),
                new Block.Table(
                        "",
                        List.of(
                                Column.left("What", 40),
                                Column.right("Planned", 11),
                                Column.left("Counted in", 12),
                                Column.left("Counted out", 12),
                                Column.left("Same", 7),
                                Column.left("By", 18)),
                        rows));
    }

    private static Row row(String what, int planned) {
        return new Row(List.of(
                new Cell.Text(what),
                new Cell.Text(Integer.toString(planned)),
                new Cell.ToFillIn(),
                new Cell.ToFillIn(),
                new Cell.ToTick(),
                new Cell.ToFillIn()));
    }

    private static Row blank() {
        return new Row(List.of(
                new Cell.ToFillIn(),
                new Cell.ToFillIn(),
                new Cell.ToFillIn(),
                new Cell.ToFillIn(),
                new Cell.ToTick(),
                new Cell.ToFillIn()));
    }
}
