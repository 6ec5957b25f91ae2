package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.basis.Verdict;
import org.varwright.picture.RankedDeviations;
import org.varwright.picture.SurveyMap;
import org.varwright.plot.Width;
import org.varwright.problem.Problem;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;
import org.varwright.survey.GroupSurvey;
import org.varwright.survey.LegSurvey;
import org.varwright.survey.Survey;
import org.varwright.survey.Trend;
import org.varwright.survey.UnitSurvey;
import org.varwright.survey.UnitVerdict;

/** Readings with their verdicts, and what they can't tell. */
final class SurveySections {
    private static final String TITLE = "Readings and verdicts";
    /** Units on one picture that are still large enough to read on a page. */
    private static final int MOST_ON_ONE_MAP = 150;

    private static final String UNJUDGED = "What can\u2019t be judged";

    private SurveySections() {}

    static Section verdicts(Optional<Survey> survey) {
        return verdicts(survey, List.of());
    }

    /** @param meters who said how far the meters may be off, a sentence each */
    static Section verdicts(Optional<Survey> survey, List<String> meters) {
        return survey.map(s -> present(s, meters))
                .orElseGet(
                        () -> Section.absent(TITLE, "No readings were part of this job: nothing is said of any unit."));
    }

    static Section unjudged(Optional<Survey> survey) {
        return survey.map(SurveySections::left)
                .orElseGet(() -> Section.absent(UNJUDGED, "No readings were part of this job: no unit was judged."));
    }

    private static Section present(Survey survey, List<String> meters) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(counts(survey) + ", of " + survey.units().size() + " units, from "
                + survey.readings().file() + ". Judged with a meter of "
                + survey.settings().words() + "."));
        if (!meters.isEmpty()) {
            blocks.add(new Block.Paragraph("Limits of error of the meters:"));
            blocks.add(new Block.Bullets(meters));
        }
        if (!survey.findings().isEmpty()) {
            blocks.add(new Block.Bullets(survey.findings()));
        }
        List<Row> rows = new ArrayList<>();
        for (UnitVerdict verdict :
                List.of(UnitVerdict.REPLACE, UnitVerdict.MEASURE_AGAIN, UnitVerdict.WATCH, UnitVerdict.HEALTHY)) {
            survey.with(verdict).stream().map(SurveySections::row).forEach(rows::add);
        }
        blocks.add(new Block.Table(
                "",
                List.of(
                        Column.left("Position", 18),
                        Column.left("Serial", 13),
                        Column.right("Read", 11),
                        Column.right("Reference", 11),
                        Column.right("Off", 11),
                        Column.left("Verdict and reason", 36)),
                rows));
        if (!survey.legs().isEmpty()) {
            blocks.add(new Block.Table(
                    "Legs as measured",
                    List.of(
                            Column.left("Leg", 30),
                            Column.right("Capacitance", 20),
                            Column.right(
                                    "Off the mean of its "
                                            + survey.bank().words().stage(),
                                    22),
                            Column.left("Units", 28)),
                    survey.legs().stream().map(SurveySections::leg).toList()));
        }
        pictures(survey, blocks);
        others(survey, blocks);
        return new Section(TITLE, Section.PageStart.NEW_PAGE, blocks);
    }

    /** Every unit at its place, a picture a stage where one would be too small; and the deviations ranked. */
    private static void pictures(Survey survey, List<Block> blocks) {
        String what =
                "letter and pattern say the verdict, the number how far the unit reads off its reference in percent";
        if (survey.units().size() <= MOST_ON_ONE_MAP) {
            blocks.add(new Block.Figure(
                    SurveyMap.draw(survey, Width.PAGE),
                    "every unit of " + survey.bank().name() + " at its place; " + what));
        } else {
            survey.bank()
                    .stages()
                    .forEach(stage -> blocks.add(new Block.Figure(
                            SurveyMap.draw(survey, stage, Width.PAGE),
                            "units of " + stage.name() + " at their places; " + what)));
        }
        if (RankedDeviations.has(survey)) {
            blocks.add(new Block.Figure(
                    RankedDeviations.of(survey).svg(Width.PAGE),
                    "deviations from the lowest to the highest, with the limits of error of the meter"));
        }
    }

    /** What was read at other places than single units, and what changed since earlier visits; each only where there is any. */
    private static void others(Survey survey, List<Block> blocks) {
        List<String> stages = survey.stages().stream()
                .map(stage -> stage.name() + ": " + Dimension.REACTIVE_POWER.format(stage.vars())
                        + " by the readings at nominal voltage, "
                        + Dimension.REACTIVE_POWER.format(stage.ratedVars())
                        + " by the nameplates; largest phase " + Dimension.digits(stage.spread(), 4)
                        + " times the smallest.")
                .toList();
        bullets(blocks, "The whole bank in numbers", stages);
        List<String> groups = new ArrayList<>();
        for (GroupSurvey group : survey.groups()) {
            groups.add(group.reason()
                    + (group.solved() ? " Every unit of it is known from the readings." : "")
                    + (group.next().isEmpty()
                            ? ""
                            : " Read " + String.join(" and ", group.next()) + " alone: that settles the rest."));
        }
        bullets(blocks, "Units read together", groups);
        bullets(
                blocks,
                "Reactors, switches, currents",
                survey.spots().stream()
                        .map(spot -> (spot.verdict() == Verdict.PASS ? "" : "LOOK: ") + spot.reason())
                        .toList());
        List<String> trends = survey.trends().stream()
                .filter(Trend::drifts)
                .map(trend -> trend.position() + ": " + trend.sentence())
                .toList();
        bullets(
                blocks,
                "Since earlier visits",
                trends.isEmpty() && !survey.trends().isEmpty()
                        ? List.of(survey.trends().size() + " units were read before; none drifts.")
                        : trends);
    }

    private static void bullets(List<Block> blocks, String heading, List<String> items) {
        if (!items.isEmpty()) {
            blocks.add(new Block.Subheading(heading));
            blocks.add(new Block.Bullets(items));
        }
    }

    /** Such as {@code 2 replace, 1 measure again, 15 healthy}. */
    static String counts(Survey survey) {
        List<String> parts = new ArrayList<>();
        for (UnitVerdict verdict : List.of(
                UnitVerdict.REPLACE,
                UnitVerdict.MEASURE_AGAIN,
                UnitVerdict.WATCH,
                UnitVerdict.HEALTHY,
                UnitVerdict.NOT_MEASURED)) {
            int count = survey.with(verdict).size();
            if (count > 0) {
                parts.add(count + " " + verdict.words());
            }
        }
        return String.join(", ", parts);
    }

    private static Row row(UnitSurvey unit) {
        List<String> reasons = new ArrayList<>();
        boolean healthy = unit.verdict() == UnitVerdict.HEALTHY;
        if (!healthy || !unit.remarks().isEmpty()) {
            reasons.add(unit.reason());
            reasons.addAll(unit.remarks());
        }
        String verdict = (healthy ? "healthy" : unit.verdict().words().toUpperCase(Locale.ROOT))
                + (unit.posterior().isPresent() ? ", " + Values.probability(unit.probability()) : "");
        return new Row(List.of(
                new Cell.Text(unit.position().name()),
                new Cell.Text(unit.serial().orElse("not known")),
                new Cell.Text(farads(unit.capacitanceFarads())),
                new Cell.Text(farads(unit.referenceFarads())),
                new Cell.Text(off(unit.ratio())),
                healthy && reasons.isEmpty() ? new Cell.Text(verdict) : new Cell.Explained(verdict, reasons)));
    }

    private static Row leg(LegSurvey leg) {
        return Row.of(
                leg.stage() + "/" + leg.leg(),
                Dimension.CAPACITANCE.format(leg.capacitanceFarads()),
                signedPercent(leg.deviation()),
                leg.units()
                        + (leg.assumed() > 0
                                ? ", of which " + leg.assumed() + " taken at reference, not measured"
                                : ""));
    }

    private static String farads(OptionalDouble farads) {
        return farads.isPresent() ? Dimension.CAPACITANCE.format(farads.getAsDouble()) : "none";
    }

    private static String off(OptionalDouble ratio) {
        if (ratio.isEmpty()) {
            return "\u2014";
        }
        return ratio.getAsDouble() > 9.99
                ? "\u00d7 " + Dimension.digits(ratio.getAsDouble(), 3)
                : signedPercent(ratio.getAsDouble() - 1.0);
    }

    static String signedPercent(double part) {
        double percent = Math.rint(1e4 * part) / 100.0 + 0.0;
        return String.format(Locale.ROOT, "%+.2f\u00a0%%", percent).replace('-', '\u2212');
    }

    private static Section left(Survey survey) {
        List<Block> blocks = new ArrayList<>();
        List<String> again = new ArrayList<>();
        for (UnitSurvey unit : survey.with(UnitVerdict.MEASURE_AGAIN)) {
            again.add(unit.position().name()
                    + unit.serial().map(s -> " (" + s + ")").orElse("") + ": " + unit.reason());
        }
        List<String> missing = survey.with(UnitVerdict.NOT_MEASURED).stream()
                .map(u -> u.position().name())
                .toList();
        if (!missing.isEmpty()) {
            again.add("Not measured, so nothing is known of: " + String.join(", ", missing) + ".");
        }
        if (!again.isEmpty()) {
            blocks.add(new Block.Paragraph("Measure these again before the bank goes back."));
            blocks.add(new Block.Bullets(again));
        }
        List<String> unused =
                survey.readings().problems().stream().map(Problem::print).toList();
        if (!unused.isEmpty()) {
            blocks.add(new Block.Subheading("Rows that could not be used"));
            blocks.add(new Block.Bullets(unused));
        }
        List<String> assumed =
                survey.readings().notices().stream().map(Problem::print).toList();
        if (!assumed.isEmpty()) {
            blocks.add(new Block.Subheading("Assumed while reading"));
            blocks.add(new Block.Bullets(assumed));
        }
        if (blocks.isEmpty()) {
            blocks.add(new Block.Paragraph("Every unit was measured and judged, and every row could be used."));
        }
        return new Section(UNJUDGED, Section.PageStart.RUN_ON, blocks);
    }
}
