package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.varwright.basis.Verdict;
import org.varwright.page.Page;
import org.varwright.problem.Problem;
import org.varwright.quantity.Dimension;

/** {@link Survey} as text for people: 100 columns, to be printed and taken to site. */
public final class SurveyText {
    private SurveyText() {}

    public static String of(Survey survey) {
        List<String> lines = new ArrayList<>();
        lines.add("SURVEY  " + survey.bank().name() + "  from "
                + survey.readings().file());
        lines.add(summary(survey));
        lines.add("Judged with a meter of " + survey.settings().words() + ".");
        problems(lines, survey);
        section(lines, survey, UnitVerdict.REPLACE, "REPLACE");
        section(lines, survey, UnitVerdict.MEASURE_AGAIN, "MEASURE AGAIN (not judged)");
        section(lines, survey, UnitVerdict.WATCH, "WATCH");
        groups(lines, survey);
        spots(lines, survey);
        trends(lines, survey);
        if (!survey.findings().isEmpty()) {
            lines.add("");
            lines.add("THE WHOLE BANK");
            survey.findings().forEach(finding -> lines.addAll(Page.wrap("  " + finding, "  ")));
        }
        lines.add("");
        lines.add("EVERY UNIT");
        lines.add(String.format(
                Locale.ROOT,
                "  %-24s %-14s %11s %11s %8s  %s",
                "position",
                "serial",
                "read",
                "reference",
                "off %",
                "verdict"));
        survey.units().forEach(unit -> lines.addAll(Page.wrap(row(unit), "    ")));
        if (!survey.legs().isEmpty()) {
            lines.add("");
            lines.add("LEGS");
            lines.add(String.format(Locale.ROOT, "  %-24s %12s %9s  %s", "leg", "capacitance", "off %", "units"));
            for (LegSurvey leg : survey.legs()) {
                lines.add(String.format(
                        Locale.ROOT,
                        "  %-24s %12s %+9.2f  %d%s",
                        leg.stage() + "/" + leg.leg(),
                        Dimension.CAPACITANCE.format(leg.capacitanceFarads()),
                        100.0 * leg.deviation(),
                        leg.units(),
                        leg.assumed() > 0 ? ", " + leg.assumed() + " taken at reference" : ""));
            }
        }
        if (!survey.stages().isEmpty()) {
            lines.add("");
            lines.add(survey.bank().words().stage().toUpperCase(Locale.ROOT) + "S AT NOMINAL VOLTAGE");
            for (StageSurvey stage : survey.stages()) {
                lines.addAll(Page.wrap(
                        "  " + stage.name() + ": " + Dimension.REACTIVE_POWER.format(stage.vars())
                                + " by the readings, "
                                + Dimension.REACTIVE_POWER.format(stage.ratedVars())
                                + " by the nameplates; largest phase " + Dimension.digits(stage.spread(), 4)
                                + " times the smallest"
                                + (stage.check().verdict() == Verdict.PASS ? "." : ", more than 1.08: balance it."),
                        "    "));
            }
        }
        lines.add("");
        lines.add("COLUMNS");
        survey.readings().understood().forEach(column -> lines.add("  " + column));
        survey.readings().notices().forEach(notice -> lines.addAll(Page.wrap("  note: " + notice.text(), "    ")));
        return String.join("\n", lines) + "\n";
    }

    private static void groups(List<String> lines, Survey survey) {
        if (survey.groups().isEmpty()) {
            return;
        }
        lines.add("");
        lines.add("UNITS READ TOGETHER");
        for (GroupSurvey group : survey.groups()) {
            lines.addAll(Page.wrap("  " + mark(group.verdict()) + group.reason(), "    "));
            if (group.solved()) {
                lines.add("    Every unit of it is known from the readings.");
            }
            for (GroupSurvey.Bounds bounds : group.bounds()) {
                String high = Double.isFinite(bounds.high())
                        ? " to " + Dimension.CAPACITANCE.format(bounds.high())
                        : " or more";
                lines.add("    " + bounds.position() + ": " + Dimension.CAPACITANCE.format(bounds.low()) + high);
            }
            if (!group.next().isEmpty()) {
                lines.addAll(Page.wrap(
                        "    Read " + String.join(" and ", group.next()) + " alone: that settles the rest.", "    "));
            }
        }
    }

    private static void spots(List<String> lines, Survey survey) {
        if (survey.spots().isEmpty()) {
            return;
        }
        lines.add("");
        lines.add("REACTORS, SWITCHES, CURRENTS");
        for (SpotSurvey spot : survey.spots()) {
            lines.addAll(Page.wrap(
                    "  " + (spot.verdict() == Verdict.PASS ? "ok    " : "LOOK  ") + spot.reason(), "        "));
        }
    }

    private static void trends(List<String> lines, Survey survey) {
        if (survey.trends().isEmpty()) {
            return;
        }
        List<Trend> drifting = survey.trends().stream().filter(Trend::drifts).toList();
        lines.add("");
        lines.add("SINCE EARLIER VISITS");
        int before = survey.trends().size();
        lines.add("  " + before + (before == 1 ? " unit was" : " units were") + " read before; "
                + (drifting.isEmpty()
                        ? "none drifts."
                        : drifting.size() + (drifting.size() == 1 ? " drifts." : " drift.")));
        drifting.forEach(trend -> lines.addAll(Page.wrap("  " + trend.position() + ": " + trend.sentence(), "    ")));
    }

    private static String mark(UnitVerdict verdict) {
        return verdict == UnitVerdict.HEALTHY ? "ok    " : verdict.words().toUpperCase(Locale.ROOT) + "  ";
    }

    private static String summary(Survey survey) {
        StringBuilder text = new StringBuilder();
        for (UnitVerdict verdict : UnitVerdict.values()) {
            int count = survey.with(verdict).size();
            if (count > 0) {
                text.append(text.isEmpty() ? "" : ", ")
                        .append(count)
                        .append(' ')
                        .append(verdict.words());
            }
        }
        return text + " (of " + survey.units().size() + " units).";
    }

    private static void problems(List<String> lines, Survey survey) {
        List<Problem> problems = survey.readings().problems();
        if (problems.isEmpty()) {
            return;
        }
        lines.add("");
        lines.add("NOT USED (the rest was)");
        problems.forEach(problem -> lines.addAll(Page.wrap("  " + problem.print(), "    ")));
    }

    private static void section(List<String> lines, Survey survey, UnitVerdict verdict, String title) {
        List<UnitSurvey> units = survey.with(verdict);
        if (units.isEmpty()) {
            return;
        }
        lines.add("");
        lines.add(title);
        for (UnitSurvey unit : units) {
            lines.addAll(Page.wrap(
                    "  " + unit.position().name()
                            + unit.serial().map(s -> " (" + s + ")").orElse("") + ": " + unit.reason()
                            + (unit.probability() < 1.0 ? " [" + Reasons.percent(unit.probability()) + "]" : ""),
                    "    "));
            unit.remarks().forEach(remark -> lines.addAll(Page.wrap("    " + remark, "    ")));
        }
    }

    private static String row(UnitSurvey unit) {
        return String.format(
                Locale.ROOT,
                "  %-24s %-14s %11s %11s %8s  %s",
                unit.position().name(),
                unit.serial().orElse(""),
                farads(unit.capacitanceFarads()),
                farads(unit.referenceFarads()),
                off(unit.ratio()),
                unit.verdict() == UnitVerdict.HEALTHY
                        ? "healthy"
                        : unit.verdict().words().toUpperCase(Locale.ROOT));
    }

    private static String farads(OptionalDouble farads) {
        return farads.isPresent() ? Dimension.CAPACITANCE.format(farads.getAsDouble()) : "-";
    }

    private static String off(OptionalDouble ratio) {
        return ratio.isEmpty()
                ? "-"
                : ratio.getAsDouble() > 9.99
                        ? "×" + Dimension.digits(ratio.getAsDouble(), 3)
                        : String.format(Locale.ROOT, "%+.2f", 100.0 * (ratio.getAsDouble() - 1.0));
    }
}
