package org.varwright.report;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.interlock.Property;
import org.varwright.interlock.Verification;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Plan;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Facts.Fact;
import org.varwright.report.document.Section;
import org.varwright.survey.Survey;
import org.varwright.survey.UnitVerdict;

/** What was found and what to do, in five lines. */
final class SummarySection {
    private SummarySection() {}

    static Section of(ReportInput input, List<Check> checks) {
        return Section.of(
                "Summary",
                new Block.Facts(List.of(
                        new Fact(
                                "Found",
                                input.survey().map(SummarySection::found).orElse("no readings in this job")),
                        new Fact("Fit", fit(input)),
                        new Fact("Way in", input.plan().map(SummarySection::way).orElse("none asked for")),
                        new Fact("Locks", locks(input)),
                        new Fact("Checks", checks(checks)))));
    }

    private static String found(Survey survey) {
        List<String> lines = new ArrayList<>(List.of(SurveySections.counts(survey)));
        for (UnitVerdict verdict : List.of(UnitVerdict.REPLACE, UnitVerdict.MEASURE_AGAIN)) {
            String positions =
                    survey.with(verdict).stream().map(u -> u.position().name()).collect(Collectors.joining(", "));
            if (!positions.isEmpty()) {
                lines.add(verdict.words() + ": " + positions);
            }
        }
        return String.join("; ", lines);
    }

    /** The headline, with what it leans on: units that nobody could judge are reckoned with what was known of them before. */
    private static String fit(ReportInput input) {
        if (input.fit().isEmpty()) {
            return "not worked out in this job";
        }
        String headline = FitSections.headline(input.fit().get());
        int open = input.survey()
                .map(s -> s.with(UnitVerdict.MEASURE_AGAIN).size()
                        + s.with(UnitVerdict.NOT_MEASURED).size())
                .orElse(0);
        return open == 0
                ? headline
                : headline + " This holds only if the " + open
                        + (open == 1 ? " unit" : " units")
                        + " that could not be judged turn out as reckoned: measure first.";
    }

    private static String way(Plan plan) {
        return switch (plan) {
            case Plan.Planned(OrderOfWork order) ->
                order.in().size() + " steps in and " + order.back().size() + " back, holds of "
                        + Values.wait(order.in().stream()
                                .filter(s -> s.kind() == OrderStep.Kind.HOLD)
                                .mapToDouble(s -> s.seconds().orElse(0.0))
                                .sum())
                        + " on the way in";
            case Plan.Refused refused -> "REFUSED: " + refused.reason();
            case Plan.Undecided(int limit) -> "UNDECIDED: whether there is a safe way in is not known";
        };
    }

    private static String locks(ReportInput input) {
        if (input.interlocking().isEmpty()) {
            return "not verified in this job: count on no lock to stop anything";
        }
        Verification verification = input.interlocking().get().verification();
        List<Property> open = Arrays.stream(Property.values())
                .filter(p -> !verification.isEnforced(p))
                .toList();
        int all = Property.values().length;
        return open.isEmpty()
                ? "all " + all + " properties are enforced"
                : (all - open.size()) + " of " + all + " properties are enforced; up to you: "
                        + open.stream().map(Property::id).collect(Collectors.joining(", "));
    }

    private static String checks(List<Check> checks) {
        long failed = checks.stream().filter(c -> c.verdict() == Verdict.FAIL).count();
        long warned = checks.stream().filter(c -> c.verdict() == Verdict.WARN).count();
        return checks.size() + " values held against limits: "
                + (failed == 0 ? "none fails" : failed + (failed == 1 ? " FAILS" : " FAIL")) + ", " + warned
                + (warned == 1 ? " warning" : " warnings");
    }
}
