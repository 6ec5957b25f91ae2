package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.varwright.bank.Vocabulary;
import org.varwright.basis.CheckText;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link Discharge} as text for people: 100 columns, to be printed and taken to site. */
public final class DischargeText {
    private DischargeText() {}

    public static String of(Discharge discharge) {
        Vocabulary words = discharge.bank().words();
        List<String> lines = new ArrayList<>();
        lines.add("DISCHARGE  " + discharge.bank().name());
        lines.addAll(Page.wrap(
                "Least wait for the whole bank: " + time(discharge.longestWaitSeconds())
                        + ", counted from the last opening. Then: now prove dead.",
                "  "));
        for (int i = 0; i < discharge.stages().size(); i++) {
            lines.add("");
            lines.addAll(stage(
                    discharge, discharge.stages().get(i), discharge.courses().get(i), words));
        }
        if (!discharge.checks().isEmpty()) {
            lines.add("");
            lines.add("CHECKS");
            Page checks = new Page();
            CheckText.add(checks, discharge.checks());
            lines.addAll(checks.print().lines().toList());
        }
        if (!discharge.unanswered().isEmpty()) {
            lines.add("");
            lines.add("NOT ANSWERED");
            discharge.unanswered().forEach(gap -> lines.addAll(Page.wrap("- " + gap, "  ")));
        }
        lines.add("");
        lines.add("CAUTIONS");
        discharge.cautions().forEach(caution -> lines.addAll(Page.wrap("- " + caution, "  ")));
        return String.join("\n", lines) + "\n";
    }

    private static List<String> stage(Discharge discharge, StageDischarge stage, StageCourse course, Vocabulary words) {
        List<String> lines = new ArrayList<>();
        String head =
                stage.stage().name() + ", " + words.connection(stage.stage().connection()) + ", "
                        + stage.stage().positions().size() + " × "
                        + stage.stage().unit().name();
        lines.add(head);
        row(lines, "least wait", time(stage.waitSeconds()) + "   then prove dead");
        row(
                lines,
                "capacitance of a unit",
                Dimension.CAPACITANCE.format(stage.capacitanceFarads()) + "   (" + stage.capacitanceFrom() + ")");
        switch (stage.resistance()) {
            case Resistance.Known known ->
                row(
                        lines,
                        "discharge resistance",
                        Dimension.RESISTANCE.format(known.ohms()) + "   (slow end; nominal "
                                + Dimension.RESISTANCE.format(known.nominalOhms()) + ")");
            case Resistance.NotKnown ignored ->
                row(lines, "discharge resistance", DischargeNotes.NOT_KNOWN.toUpperCase(Locale.ROOT));
        }
        row(
                lines,
                "voltage at opening",
                Dimension.VOLTAGE.format(stage.opening().initialVolts()) + "   worst unit");
        standard(lines, stage.chosen(), stage.chosenSeconds(), "this bank");
        standard(lines, stage.other(), stage.otherSeconds(), "for comparison");
        row(
                lines,
                "energy of a unit",
                energy(stage.unitPeakJoules()) + " at opening, " + energy(stage.unitEndJoules()) + " after the wait");
        row(
                lines,
                "energy of the " + words.stage(),
                energy(stage.stagePeakJoules()) + " at opening, " + energy(stage.stageEndJoules()) + " after the wait");
        if (stage.isKnown()) {
            residuals(lines, stage);
        }
        stick(lines, discharge, stage);
        lines.addAll(CourseText.of(discharge, stage, course));
        DischargeNotes.of(discharge.bank(), stage).forEach(note -> lines.addAll(Page.wrap("  - " + note, "    ")));
        return lines;
    }

    private static void residuals(List<String> lines, StageDischarge stage) {
        StringBuilder minutes = new StringBuilder("  after minutes    ");
        StringBuilder volts = new StringBuilder("  volts on a unit  ");
        for (int minute = 1; minute <= 10; minute++) {
            minutes.append(String.format(Locale.ROOT, "%8d", minute));
            volts.append(String.format(
                    Locale.ROOT, "%8s", residual(stage.voltsAfter(minute * 60.0).orElseThrow())));
        }
        lines.add(minutes.toString());
        lines.add(volts.toString());
    }

    /** Below a tenth of a volt the digits mean nothing, and 1e-18 would run out of its column. */
    private static String residual(double volts) {
        return volts < 0.1 ? "<0.1" : Dimension.digits(volts, 3);
    }

    private static void stick(List<String> lines, Discharge discharge, StageDischarge stage) {
        Stick.Needed needed = stage.stickNeeded();
        row(
                lines,
                "stick needed",
                Dimension.RESISTANCE.format(needed.leastOhms(), 2) + " to "
                        + Dimension.RESISTANCE.format(needed.mostOhms(), 2) + ", at least "
                        + Dimension.ENERGY.format(needed.joules(), 2)
                        + " a discharge, insulated for " + Dimension.VOLTAGE.format(needed.volts(), 3));
        discharge.stick().ifPresent(stick -> {
            Stick.Use use = stick.on(
                    stage.capacitanceFarads(),
                    stage.opening().initialVolts(),
                    stage.chosen().volts());
            row(
                    lines,
                    "stick given",
                    Dimension.RESISTANCE.format(stick.ohms()) + ": on a unit at the peak "
                            + Dimension.CURRENT.format(use.peakAmperes(), 3) + ", time constant "
                            + Dimension.TIME.format(use.timeConstantSeconds(), 3) + ", "
                            + Dimension.TIME.format(use.secondsToSafe(), 3) + " to "
                            + DischargeNotes.volts(stage.chosen().volts()) + ", " + energy(use.resistorJoules()));
            stick.unitsInSuccession(stage.unitPeakJoules())
                    .ifPresent(units -> row(
                            lines,
                            "units in succession",
                            units == 0
                                    ? "NONE at the peak: the stick is too small"
                                    : units + " at the peak, then let the stick cool (how long: ask its maker)"));
        });
    }

    private static void standard(List<String> lines, DischargeRule rule, OptionalDouble seconds, String role) {
        row(
                lines,
                rule.standard() + ", " + role,
                rule.print() + "; computed "
                        + (seconds.isPresent()
                                ? time(Math.ceil(seconds.getAsDouble())) + " to "
                                        + Dimension.VOLTAGE.format(rule.volts())
                                : DischargeNotes.NOT_KNOWN));
    }

    private static void row(List<String> lines, String what, String value) {
        lines.addAll(Page.wrap(String.format(Locale.ROOT, "  %-24s%s", what, value), " ".repeat(26)));
    }

    private static String energy(double joules) {
        return Dimension.ENERGY.format(joules, 3);
    }

    private static String time(double seconds) {
        return Dimension.TIME.format(seconds);
    }
}
