package org.varwright.discharge;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.function.Function;
import org.varwright.bank.DischargePath;
import org.varwright.bank.Vocabulary;
import org.varwright.page.Enumeration;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link StageCourse} as rows of the text for one stage. */
final class CourseText {
    private static final int MOST_COLUMNS = 9;

    /** Legs of one phase that hold the same to this part are printed as one. */
    private static final double NEARLY = 0.01;

    private final StageDischarge stage;
    private final StageCourse course;
    private final Question question;
    private final Vocabulary words;
    private final List<String> lines = new ArrayList<>();

    private CourseText(Discharge discharge, StageDischarge stage, StageCourse course) {
        this.stage = stage;
        this.course = course;
        question = discharge.question();
        words = discharge.bank().words();
    }

    static List<String> of(Discharge discharge, StageDischarge stage, StageCourse course) {
        CourseText text = new CourseText(discharge, stage, course);
        text.asked();
        text.opening();
        text.slowest();
        course.string().ifPresent(text::string);
        course.path().ifPresent(text::path);
        course.reclosing().ifPresent(text::reclosing);
        return text.lines;
    }

    private void asked() {
        course.after().ifPresent(left -> {
            row(
                    left.print() + " after opening",
                    volts(left.volts()) + " on " + left.slowest().name() + ", " + energy(left.joules()) + " in it, "
                            + volts(left.betweenConductorsVolts()) + " between two conductors");
            row(
                    "",
                    left.missingSeconds() > 0.0
                            ? "STAY OUT: " + time(Math.ceil(left.missingSeconds())) + " are missing to the least wait"
                            : "m" + DischargeNotes.OVER.substring(1));
        });
        course.timeConstants().ifPresent(left -> {
            double count = question.timeConstants().orElseThrow();
            double needed = Math.log(stage.opening().initialVolts() / left.safeVolts());
            row(
                    number(count, 3) + " time constants",
                    left.print() + " leave " + number(100.0 * Math.exp(-count), 2) + " % of the voltage at opening, "
                            + volts(left.volts()) + ". "
                            + (left.volts() > left.safeVolts()
                                    ? "Not enough: " + volts(left.safeVolts()) + " takes " + number(needed, 3)
                                            + " of them. Wait " + time(stage.waitSeconds()) + "."
                                    : "The wait stays " + time(stage.waitSeconds()) + "; then prove dead."));
        });
    }

    private void opening() {
        PoleOpening worst = course.worst();
        row("poles clear", clearings(worst));
        row("a leg then holds", byPhase(worst, hold -> number(hold.perPeak(), 3)) + "   × its peak in service");
        row("", byPhase(worst, hold -> volts(hold.volts())));
        row(
                "conductors to " + words.ground(),
                Enumeration.of(worst.potentials().stream()
                                .filter(p -> !p.conductor().equals("ground"))
                                .map(p -> p.conductor() + " " + volts(p.volts()))
                                .toList())
                        + "   until leakage evens them out");
        course.oneOutVolts()
                .ifPresent(out -> row(
                        "one unit out before",
                        "up to " + volts(out) + " on a unit"
                                + (stage.resistance() instanceof Resistance.Known known
                                        ? ", " + volts(stage.chosen().volts()) + " after "
                                                + time(Math.ceil(Decay.secondsTo(
                                                        stage.capacitanceFarads(),
                                                        known.ohms(),
                                                        Math.max(
                                                                out,
                                                                stage.opening().initialVolts()),
                                                        stage.chosen().volts())))
                                        : "")));
    }

    private static String clearings(PoleOpening opening) {
        List<String> parts = new ArrayList<>();
        for (PoleOpening.Clearing clearing : opening.clearings()) {
            String poles = Enumeration.of(clearing.poles());
            parts.add(
                    clearing.seconds() == 0.0
                            ? poles + " first"
                            : poles + " " + Dimension.TIME.format(clearing.seconds(), 3) + " after it");
        }
        return String.join(", ", parts) + "; each at the zero of its current";
    }

    /** One entry a phase, for the leg that holds the most, where all its legs hold nearly the same; else one a leg. */
    private static String byPhase(PoleOpening opening, Function<PoleOpening.LegHold, String> printed) {
        List<String> parts = new ArrayList<>();
        for (String phase : List.of("A", "B", "C")) {
            List<PoleOpening.LegHold> legs = opening.legs().stream()
                    .filter(l -> l.leg().startsWith(phase))
                    .toList();
            PoleOpening.LegHold most = legs.stream()
                    .max(Comparator.comparingDouble(l -> Math.abs(l.volts())))
                    .orElseThrow();
            boolean alike =
                    legs.stream().allMatch(l -> Math.abs(l.volts() - most.volts()) <= NEARLY * Math.abs(most.volts()));
            if (alike) {
                parts.add((legs.size() == 1 ? most.leg() : phase) + " " + printed.apply(most));
            } else {
                legs.forEach(l -> parts.add(l.leg() + " " + printed.apply(l)));
            }
        }
        return String.join(", ", parts);
    }

    private void slowest() {
        UnitDecay slowest = course.slowest();
        row(
                "slowest unit",
                slowest.at().name() + ": " + Dimension.CAPACITANCE.format(slowest.farads()) + ", "
                        + (slowest.ohms().isPresent()
                                ? Dimension.RESISTANCE.format(slowest.ohms().getAsDouble()) + ", "
                                        + volts(stage.chosen().volts()) + " after "
                                        + time(Math.ceil(slowest.secondsToSafe().orElseThrow()))
                                : question.readings().ohms().containsKey(slowest.at())
                                        ? "RESISTOR OPEN BY ITS READING: it stays charged; discharge by stick"
                                        : DischargeNotes.NOT_KNOWN));
    }

    private void string(StringCase string) {
        StringCase.Case open = string.oneOpen();
        row(
                "one open resistor",
                "worst at " + open.at().name()
                        + (open.unitsInGroup() > 1 ? ", one of " + open.unitsInGroup() + " side by side" : "")
                        + ": after the wait " + volts(open.slowVolts()) + " there, " + volts(open.mateVolts())
                        + " on the next, " + volts(open.endsVolts()) + " between the ends of the string");
        row(
                "ends joined then",
                "the conductors read 0 V while the units hold " + volts(open.joinedSlowVolts()) + " and "
                        + volts(open.joinedMateVolts()) + "; " + below(open.joinedSecondsToSafe()));
        row(
                "resistors ±10 %",
                "ends joined after the wait hide " + volts(string.unlike().hiddenVolts()) + ", joined too early up to "
                        + volts(string.unlike().worstJoinedVolts()));
    }

    private String below(OptionalDouble seconds) {
        String safe = volts(stage.chosen().volts());
        if (seconds.isEmpty()) {
            return "it never falls below " + safe;
        }
        return seconds.getAsDouble() == 0.0
                ? "below " + safe + " at once"
                : "below " + safe + " " + time(Math.ceil(seconds.getAsDouble())) + " later";
    }

    private void path(WindingDischarge path) {
        DischargePath given = stage.stage().dischargePath().orElseThrow();
        String what = (given.kind() == DischargePath.Kind.COIL ? "coils" : "voltage transformers")
                + (given.between() == DischargePath.Between.LINES ? " between lines, " : " line to neutral, ")
                + Dimension.RESISTANCE.format(path.ohms())
                + path.henries().stream()
                        .mapToObj(h -> ", " + Dimension.INDUCTANCE.format(h))
                        .reduce("", String::concat);
        row("discharge path", what);
        switch (path.behaviour()) {
            case OSCILLATING ->
                row(
                        "",
                        "swings at "
                                + Dimension.FREQUENCY.format(
                                        path.oscillationHertz().orElseThrow(), 3)
                                + ", stays below " + volts(stage.chosen().volts()) + " after "
                                + seconds(path.secondsToSafe().orElseThrow()) + "; at most "
                                + Dimension.CURRENT.format(path.peakAmperes(), 3) + " unsaturated");
            case CREEPING ->
                row(
                        "",
                        "creeps below " + volts(stage.chosen().volts()) + " in "
                                + seconds(path.secondsToSafe().orElseThrow()) + "; at most "
                                + Dimension.CURRENT.format(path.peakAmperes(), 3));
            case NOT_KNOWN ->
                row(
                        "",
                        "inductance not given: at most " + Dimension.CURRENT.format(path.peakAmperes(), 3)
                                + " whatever it is; the time is not known, not below " + seconds(path.leastSeconds()));
        }
        row(
                "",
                "a winding takes at most " + energy(path.windingJoules())
                        + " a discharge: ask its maker. The wait stays as it is: a winding may be open.");
        if (path.leftVolts() > 0.0) {
            row(
                    "",
                    "windings between lines leave up to " + volts(path.leftVolts())
                            + " on every leg alike: only the units' own resistors drain that");
        }
    }

    private void reclosing(Reclosing reclosing) {
        List<Reclosing.Row> rows = reclosing
                .rows()
                .subList(0, Math.min(MOST_COLUMNS, reclosing.rows().size()));
        table("switched on again after", rows, r -> time(r.seconds()));
        table("charge left, × peak", rows, r -> r.perPeak() < 0.001 ? "<0.001" : number(r.perPeak(), 3));
        table("voltage then up to, × peak", rows, r -> number(r.voltagePerPeak(), 3));
        table("inrush up to, × usual", rows, r -> number(r.inrushPerDischarged(), 3));
        String delay = reclosing.delaySeconds().isPresent()
                ? "control waits " + time(reclosing.delaySeconds().getAsDouble())
                : "control: delay not given";
        row(
                "not before",
                time(Math.ceil(reclosing.shortestSeconds())) + " (10 % of the peak), "
                        + time(Math.ceil(reclosing.ratedSeconds())) + " (10 % of rated voltage); " + delay);
    }

    private void table(String label, List<Reclosing.Row> rows, Function<Reclosing.Row, String> cell) {
        StringBuilder line = new StringBuilder(String.format(Locale.ROOT, "  %-26s", label));
        rows.forEach(row -> line.append(String.format(Locale.ROOT, "%8s", cell.apply(row))));
        lines.add(line.toString());
    }

    private void row(String what, String value) {
        lines.addAll(Page.wrap(String.format(Locale.ROOT, "  %-24s%s", what, value), " ".repeat(26)));
    }

    private static String number(double value, int digits) {
        return Dimension.digits(value, digits).replace('-', '−');
    }

    private static String volts(double volts) {
        return Dimension.VOLTAGE.format(Math.abs(volts) < 0.05 ? 0.0 : volts, 3).replace('-', '−');
    }

    private static String energy(double joules) {
        return Dimension.ENERGY.format(joules, 3);
    }

    private static String seconds(double seconds) {
        return Dimension.TIME.format(seconds, 2);
    }

    private static String time(double seconds) {
        return Dimension.TIME.format(seconds);
    }
}
