package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
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
        lines.add("Judged with a meter of ±"
                + Dimension.digits(100.0 * survey.settings().meterLimit(), 3) + " %, "
                + Dimension.digits(survey.settings().referenceCelsius(), 3) + " °C.");
        problems(lines, survey);
        section(lines, survey, UnitVerdict.REPLACE, "REPLACE");
        section(lines, survey, UnitVerdict.MEASURE_AGAIN, "MEASURE AGAIN (not judged)");
        section(lines, survey, UnitVerdict.WATCH, "WATCH");
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
        lines.add("");
        lines.add("COLUMNS");
        survey.readings().understood().forEach(column -> lines.add("  " + column));
        survey.readings().notices().forEach(notice -> lines.addAll(Page.wrap("  note: " + notice.text(), "    ")));
        return String.join("\n", lines) + "\n";
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
