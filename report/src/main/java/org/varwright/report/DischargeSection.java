package org.varwright.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.discharge.DecayPicture;
import org.varwright.discharge.Discharge;
import org.varwright.discharge.PoleOpening;
import org.varwright.discharge.Resistance;
import org.varwright.discharge.StageCourse;
import org.varwright.discharge.StageDischarge;
import org.varwright.discharge.Stick;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Notice.Weight;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** How long to wait at least, what the units hold then, and what stick is needed. */
final class DischargeSection {
    private static final String TITLE = "Discharge";

    private DischargeSection() {}

    static Section of(Bank bank, Optional<Discharge> discharge) {
        return discharge
                .map(d -> present(bank, d))
                .orElseGet(() -> Section.absent(
                        TITLE, "Waiting times were not worked out in this job. Treat every unit as charged."));
    }

    private static Section present(Bank bank, Discharge discharge) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Notice(
                Weight.CAUTION,
                "CAUTION: least wait for the whole bank " + Values.wait(discharge.longestWaitSeconds()),
                List.of("The end of a wait is no permission to touch. When it is over: now prove dead, then discharge"
                        + " every unit by stick, then short and " + bank.words().ground() + ".")));
        blocks.add(waits(bank, discharge));
        blocks.add(energies(bank, discharge));
        blocks.add(openings(bank, discharge));
        blocks.add(new Block.Figure(
                DecayPicture.svg(discharge, DecayPicture.Scale.LOGARITHMIC, Width.PAGE),
                "decay of the units of " + bank.name()
                        + " after opening, with the safe voltage, 5 min and the least wait"));
        List<String> courses = courses(discharge);
        if (!courses.isEmpty()) {
            blocks.add(new Block.Subheading("Strings, windings, switching on again"));
            blocks.add(new Block.Bullets(courses));
        }
        if (!discharge.unanswered().isEmpty()) {
            blocks.add(new Block.Subheading("Not answered"));
            blocks.add(new Block.Bullets(discharge.unanswered()));
        }
        blocks.add(new Block.Subheading("Bear in mind"));
        blocks.add(new Block.Bullets(notes(bank, discharge)));
        return new Section(TITLE, Section.PageStart.RUN_ON, blocks);
    }

    private static Block waits(Bank bank, Discharge discharge) {
        String stage = Values.capital(bank.words().stage());
        List<Row> rows = discharge.stages().stream()
                .map(s -> new Row(List.of(
                        new Cell.Text(s.stage().name()),
                        new Cell.Text(resistor(s.resistance())),
                        new Cell.Text(Values.volts(s.opening().initialVolts())),
                        new Cell.Text(s.chosen().print()),
                        new Cell.Text(computed(s.chosenSeconds(), s.chosen().volts())),
                        new Cell.Strong(Values.wait(s.waitSeconds())),
                        new Cell.Text(s.isKnown() ? Values.volts(s.endVolts()) : "not known: treat as charged"))))
                .toList();
        return new Block.Table(
                "Least waits after opening",
                List.of(
                        Column.left(stage, 14),
                        Column.left("Resistor of a unit, slow end", 17),
                        Column.right("Worst unit at opening", 13),
                        Column.left("Standard asks", 14),
                        Column.left("Computed", 16),
                        Column.right("Wait at least", 12),
                        Column.right("A unit may then hold", 14)),
                rows);
    }

    private static String resistor(Resistance resistance) {
        return switch (resistance) {
            case Resistance.Known known -> Dimension.RESISTANCE.format(known.ohms());
            case Resistance.NotKnown() -> "not known: treat as charged";
        };
    }

    private static String computed(OptionalDouble seconds, double volts) {
        return seconds.isPresent()
                ? Values.wait(seconds.getAsDouble()) + " to " + Values.volts(volts)
                : "can\u2019t be computed";
    }

    private static Block energies(Bank bank, Discharge discharge) {
        String stage = bank.words().stage();
        List<Row> rows = discharge.stages().stream()
                .map(s -> Row.of(
                        s.stage().name(),
                        Values.joules(s.unitPeakJoules()),
                        s.isKnown() ? Values.joules(s.unitEndJoules()) : "as at opening",
                        Values.joules(s.stagePeakJoules()),
                        s.isKnown() ? Values.joules(s.stageEndJoules()) : "as at opening",
                        stick(s.stickNeeded()),
                        s.recloseSeconds().isPresent()
                                ? Values.wait(s.recloseSeconds().getAsDouble())
                                : "not known"))
                .toList();
        return new Block.Table(
                "Energy held, stick needed, shortest delay before switching on again",
                List.of(
                        Column.left(Values.capital(stage), 14),
                        Column.right("Unit, at opening", 11),
                        Column.right("Unit, after wait", 11),
                        Column.right(Values.capital(stage) + ", at opening", 12),
                        Column.right(Values.capital(stage) + ", after wait", 12),
                        Column.left("Stick", 26),
                        Column.right("Switch on again not before", 14)),
                rows);
    }

    /** What the poles leave, with the pole first that leaves the most. */
    private static Block openings(Bank bank, Discharge discharge) {
        List<Row> rows = new ArrayList<>();
        for (int i = 0; i < discharge.stages().size(); i++) {
            PoleOpening worst = discharge.courses().get(i).worst();
            PoleOpening.Potential highest = worst.potentials().stream()
                    .max(Comparator.comparingDouble(p -> Math.abs(p.volts())))
                    .orElseThrow();
            rows.add(Row.of(
                    discharge.stages().get(i).stage().name(),
                    worst.firstPole(),
                    held(worst, "A"),
                    held(worst, "B"),
                    held(worst, "C"),
                    highest.conductor() + " " + Values.volts(highest.volts()),
                    discharge.courses().get(i).slowest().at().name()));
        }
        return new Block.Table(
                "What opening leaves on the legs, as a multiple of their peak in service",
                List.of(
                        Column.left(Values.capital(bank.words().stage()), 16),
                        Column.left("First pole", 9),
                        Column.right("A", 12),
                        Column.right("B", 12),
                        Column.right("C", 12),
                        Column.left("Highest to " + bank.words().ground(), 20),
                        Column.left("Slowest unit", 19)),
                rows);
    }

    /** The most on any leg that starts at this phase. */
    private static String held(PoleOpening opening, String phase) {
        return opening.legs().stream()
                .filter(l -> l.leg().startsWith(phase))
                .max(Comparator.comparingDouble(l -> Math.abs(l.perPeak())))
                .map(l -> Dimension.digits(l.perPeak(), 3).replace('-', '\u2212'))
                .orElse("");
    }

    private static List<String> courses(Discharge discharge) {
        List<String> points = new ArrayList<>();
        for (int i = 0; i < discharge.stages().size(); i++) {
            String name = discharge.stages().get(i).stage().name();
            StageCourse course = discharge.courses().get(i);
            course.string()
                    .ifPresent(s -> points.add(name + ": with the discharge resistor open at "
                            + s.oneOpen().at().name() + " and the ends of the string joined when the wait is over, the"
                            + " conductors read 0 V while units in series hold up to "
                            + Values.volts(s.oneOpen().hiddenVolts()) + " against each other."));
            course.path()
                    .ifPresent(p -> points.add(name + ": the discharge path empties it "
                            + (p.secondsToSafe().isPresent()
                                    ? "in "
                                            + Dimension.TIME.format(
                                                    p.secondsToSafe().getAsDouble(), 2)
                                    : "in a time that is not known")
                            + ", with at most " + Dimension.CURRENT.format(p.peakAmperes(), 3) + " and "
                            + Values.joules(p.windingJoules())
                            + " in a winding. The wait stays: a winding may be open."));
            course.reclosing()
                    .ifPresent(r -> points.add(name + ": switched on again at once, up to "
                            + Dimension.digits(r.rows().getFirst().voltagePerPeak(), 3)
                            + " times the peak in service; not before " + Values.wait(r.shortestSeconds())
                            + (r.delaySeconds().isPresent()
                                    ? "; the control waits "
                                            + Values.wait(r.delaySeconds().getAsDouble())
                                    : "; the control\u2019s delay is not given")
                            + "."));
        }
        return points;
    }

    private static String stick(Stick.Needed needed) {
        return Dimension.RESISTANCE.format(needed.leastOhms(), 2) + " to "
                + Dimension.RESISTANCE.format(needed.mostOhms(), 2) + ", " + Dimension.ENERGY.format(needed.joules(), 2)
                + " a discharge, insulated for " + Values.volts(needed.volts());
    }

    /** Notes of every stage, each once, with the stages that it is for where it is not for all. */
    private static List<String> notes(Bank bank, Discharge discharge) {
        Map<String, List<String>> stagesByNote = new LinkedHashMap<>();
        for (StageDischarge stage : discharge.stages()) {
            String name = stage.stage().name();
            for (String note : Discharge.waitOf(bank, name).notes()) {
                stagesByNote.computeIfAbsent(note, n -> new ArrayList<>()).add(name);
            }
        }
        List<String> notes = new ArrayList<>();
        stagesByNote.forEach((note, stages) ->
                notes.add(stages.size() == discharge.stages().size() ? note : String.join(", ", stages) + ": " + note));
        notes.addAll(discharge.cautions());
        return notes;
    }
}
