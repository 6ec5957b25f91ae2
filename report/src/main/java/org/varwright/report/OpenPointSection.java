package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.varwright.basis.Check;
import org.varwright.basis.Standing;
import org.varwright.basis.Verdict;
import org.varwright.fit.FitResult;
import org.varwright.isolation.Plan;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;
import org.varwright.survey.UnitVerdict;

/** What is not closed: each point with room for who closes it. */
final class OpenPointSection {
    private static final int SPARE_LINES = 4;

    private OpenPointSection() {}

    static Section of(ReportInput input, List<Check> checks) {
        List<Row> rows = new ArrayList<>();
        points(input, checks, Set.of())
                .forEach(point -> rows.add(new Row(
                        List.of(new Cell.ToTick(), new Cell.Text(point), new Cell.ToFillIn(), new Cell.ToFillIn()))));
        for (int i = 0; i < SPARE_LINES; i++) {
            rows.add(
                    new Row(List.of(new Cell.ToTick(), new Cell.ToFillIn(), new Cell.ToFillIn(), new Cell.ToFillIn())));
        }
        return Section.of(
                "Open points",
                new Block.Table(
                        "",
                        List.of(
                                Column.left("Closed", 9),
                                Column.left("Point", 55),
                                Column.left("Who", 20),
                                Column.left("By when", 16)),
                        rows));
    }

    /**
     * What is open.
     *
     * @param lifted positions whose unit was taken out since it was measured: what was found of it is no longer in the bank
     */
    static List<String> points(ReportInput input, List<Check> checks, Set<String> lifted) {
        List<String> points = new ArrayList<>();
        input.survey().ifPresent(survey -> {
            survey.with(UnitVerdict.MEASURE_AGAIN).stream()
                    .filter(u -> !lifted.contains(u.position().name()))
                    .forEach(u -> points.add("Measure " + u.position().name() + " again: " + u.reason()));
            survey.with(UnitVerdict.WATCH).stream()
                    .filter(u -> !lifted.contains(u.position().name()))
                    .forEach(u -> points.add("Watch " + u.position().name() + ": " + u.reason()));
            int missing = survey.with(UnitVerdict.NOT_MEASURED).size();
            if (missing > 0) {
                points.add(missing + (missing == 1 ? " unit was" : " units were")
                        + " not measured: nothing is known of " + (missing == 1 ? "it." : "them."));
            }
        });
        input.fit().ifPresent(fit -> {
            if (fit.outcome() != FitResult.Outcome.COMPLETE) {
                points.add(FitSections.headline(fit));
            }
        });
        input.plan().ifPresent(plan -> {
            switch (plan) {
                case Plan.Planned planned -> {
                    // nothing is open
                }
                case Plan.Refused refused -> points.add("There is no order of work: " + refused.reason());
                case Plan.Undecided undecided ->
                    points.add(
                            "Whether there is a safe way in is not decided: plan again with more memory or less access.");
            }
        });
        checks.stream()
                .filter(c -> c.verdict() == Verdict.FAIL)
                .forEach(c -> points.add("Limit broken: " + c.subject() + ", " + Values.print(c.value(), c.unit())
                        + " against " + Values.print(c.limit(), c.unit()) + "."));
        boolean unchecked = checks.stream().anyMatch(c -> c.basis().source().standing() == Standing.UNCHECKED);
        if (unchecked) {
            points.add("Some limits are from memory, unchecked (see the last pages): hold them against the document.");
        }
        return points;
    }
}
