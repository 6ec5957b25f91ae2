package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.FuseType;
import org.varwright.bank.Protection;
import org.varwright.fit.Balance;
import org.varwright.fit.FitResult;
import org.varwright.fit.Move;
import org.varwright.fit.RunOn;
import org.varwright.picture.FitPhasors;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Notice.Weight;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** What goes where, what that does to the bank, and which spares were turned down. */
final class FitSections {
    private static final String LIFTS = "What to fit";
    private static final String SPARES = "Spares that are not used";

    /** Volts or amperes below this are rounding of the network's solution. */
    private static final double ROUNDING = 1e-6;

    private FitSections() {}

    static Section lifts(Optional<FitResult> fit) {
        return fit.map(FitSections::present)
                .orElseGet(
                        () -> Section.absent(LIFTS, "No replacement was worked out in this job: lift nothing by it."));
    }

    static Section spares(Optional<FitResult> fit) {
        if (fit.isEmpty()) {
            return Section.absent(SPARES, "No replacement was worked out in this job: no spare was judged.");
        }
        FitResult result = fit.get();
        List<Row> rows = new ArrayList<>();
        result.rejected()
                .forEach(r -> rows.add(new Row(List.of(
                        new Cell.Text(r.serial()), new Cell.Strong("does not fit"), new Cell.Text(r.reason())))));
        result.unused()
                .forEach(s -> rows.add(Row.of(s, "left over", "It fits and stays on the shelf; it is not needed.")));
        if (rows.isEmpty()) {
            return Section.absent(SPARES, "Every spare that was offered is used.");
        }
        return Section.of(
                SPARES,
                new Block.Table(
                        "",
                        List.of(Column.left("Serial", 20), Column.left("Judged", 17), Column.left("Reason", 63)),
                        rows));
    }

    /** One line for the summary. */
    static String headline(FitResult result) {
        String lifts = result.moves().size() == 1 ? "1 lift" : result.moves().size() + " lifts";
        return switch (result.outcome()) {
            case COMPLETE ->
                result.moves().isEmpty()
                        ? "Nothing has to be lifted; every limit is kept."
                        : lifts + "; every limit is kept after them.";
            case LIMIT_BROKEN ->
                "NOT GOOD TO GO: with these spares a limit stays broken after " + lifts + "; see the checks.";
            case SPARES_MISSING -> "SPARES ARE MISSING: " + lifts + " with what there is; see how to run on.";
        };
    }

    private static Section present(FitResult result) {
        List<Block> blocks = new ArrayList<>();
        boolean good = result.outcome() == FitResult.Outcome.COMPLETE;
        blocks.add(new Block.Notice(
                good ? Weight.NOTE : Weight.CAUTION,
                good ? headline(result) : "CAUTION: " + headline(result),
                List.of((result.provenBest() ? "Proven best: " : "Not proven best: ") + result.proof() + ".")));
        if (!result.moves().isEmpty()) {
            blocks.add(
                    new Block.Paragraph(
                            "Lift only inside the order of work: each unit proven dead, discharged by stick and"
                                    + " shorted across all terminals and case first; the short stays on while it is carried and stored."));
            blocks.add(new Block.Table(
                    "Lifts, in this order",
                    List.of(
                            Column.left("Done", 8),
                            Column.left("No.", 6),
                            Column.left("Do", 60),
                            Column.left("Serial read on the unit", 26)),
                    result.moves().stream().map(m -> lift(result.bank(), m)).toList()));
        }
        blocks.add(legs(result));
        if (!result.after().sensors().isEmpty()) {
            blocks.add(sensors(result));
            blocks.add(new Block.Figure(
                    FitPhasors.of(result).svg(Width.PAGE),
                    "what the unbalance sensors read before and after the lifts, with their settings as circles"));
        }
        blocks.add(new Block.Paragraph("Highest voltage on a unit, at the highest voltage of the system: "
                + perRated(result.before()) + " before, " + perRated(result.after()) + " after."));
        result.after().unsolved().forEach(u -> blocks.add(new Block.Paragraph("NOT SOLVED: " + u + ".")));
        result.runOn().forEach(r -> blocks.addAll(runOn(result.bank(), r)));
        if (!result.notes().isEmpty()) {
            blocks.add(new Block.Subheading("Look at"));
            blocks.add(new Block.Bullets(result.notes()));
        }
        return new Section(LIFTS, Section.PageStart.RUN_ON, blocks);
    }

    private static Row lift(Bank bank, Move move) {
        return new Row(List.of(
                new Cell.ToTick(),
                new Cell.Strong(Integer.toString(move.number())),
                new Cell.Text(Values.capital(text(bank, move))),
                new Cell.ToFillIn()));
    }

    private static String text(Bank bank, Move move) {
        return switch (move.kind()) {
            case TAKE_OUT ->
                "take out " + at(move)
                        + (move.to().equals(Move.OUT)
                                ? ". Condemned: mark it; it is not fitted again"
                                : ". It is good: keep it with the spares");
            case RELOCATE ->
                move.setDown()
                        ? "lift " + move.serial() + " out of " + move.from() + " and set it down; it goes into "
                                + move.to() + " once that is free"
                        : "move " + move.serial() + " from " + move.from() + " to " + move.to() + fuse(bank, move.to());
            case PUT_IN -> "put in " + move.serial() + " from the spares at " + move.to() + fuse(bank, move.to());
        };
    }

    private static String at(Move move) {
        return move.serial().endsWith(move.from()) ? move.serial() : move.serial() + " at " + move.from();
    }

    private static String fuse(Bank bank, String position) {
        return bank.position(position)
                .flatMap(p -> bank.stage(p.stage()))
                .flatMap(s -> s.fuse())
                .map((FuseType f) ->
                        "; fuse " + f.name() + f.link().map(l -> ", link " + l).orElse(""))
                .orElse("");
    }

    private static Block legs(FitResult result) {
        List<Row> rows = new ArrayList<>();
        for (Balance.LegReading after : result.after().legs()) {
            Optional<Balance.LegReading> before = result.before().legs().stream()
                    .filter(l -> l.stage().equals(after.stage()) && l.leg().equals(after.leg()))
                    .findFirst();
            rows.add(Row.of(
                    after.stage() + "/" + after.leg(),
                    before.map(FitSections::farads).orElse("not known"),
                    farads(after),
                    before.map(l -> Dimension.CURRENT.format(l.amperes())).orElse("not known"),
                    Dimension.CURRENT.format(after.amperes())));
        }
        return new Block.Table(
                "Legs before and after, at nominal voltage",
                List.of(
                        Column.left("Leg", 20),
                        Column.right("Before: capacitance, off the mean", 26),
                        Column.right("After: capacitance, off the mean", 26),
                        Column.right("Current before", 14),
                        Column.right("Current after", 14)),
                rows);
    }

    private static String farads(Balance.LegReading leg) {
        return Dimension.CAPACITANCE.format(leg.capacitanceFarads()) + ", "
                + SurveySections.signedPercent(leg.deviation());
    }

    private static Block sensors(FitResult result) {
        List<Row> rows = new ArrayList<>();
        for (Balance.SensorReading after : result.after().sensors()) {
            Optional<Balance.SensorReading> before = result.before().sensors().stream()
                    .filter(s -> s.name().equals(after.name()))
                    .findFirst();
            rows.add(Row.of(
                    after.name(),
                    before.map(FitSections::reading).orElse("not known"),
                    reading(after),
                    after.alarmPrimary().isPresent()
                            ? value(after.senses(), after.alarmPrimary().getAsDouble())
                            : "none set"));
        }
        return new Block.Table(
                "Unbalance before and after, at nominal voltage",
                List.of(
                        Column.left("Sensor", 28),
                        Column.right("Before", 26),
                        Column.right("After", 26),
                        Column.right("Alarm (primary)", 20)),
                rows);
    }

    private static String reading(Balance.SensorReading sensor) {
        String primary = value(sensor.senses(), sensor.primary().magnitude());
        return sensor.secondary()
                .map(s -> primary + " = " + value(sensor.senses(), s.magnitude()) + " at the relay")
                .orElse(primary);
    }

    private static String value(Protection.Senses senses, double value) {
        double shown = Math.abs(value) < ROUNDING ? 0.0 : value;
        return senses.dimension().format(shown, 3);
    }

    private static String perRated(Balance balance) {
        return Values.number(100.0 * balance.highestUnitVoltagePerRated()) + " % of rated"
                + balance.highestUnit().map(p -> " (" + p.name() + ")").orElse("");
    }

    private static List<Block> runOn(Bank bank, RunOn runOn) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Subheading("Running on without spares: " + runOn.stage()));
        blocks.add(new Block.Paragraph(runOn.missing() + (runOn.missing() == 1 ? " unit is" : " units are")
                + " missing. "
                + (runOn.recommended()
                        ? "The first way below keeps every limit and is what the lifts above do."
                        : "NO WAY WAS FOUND THAT KEEPS EVERY LIMIT: leave this "
                                + bank.words().stage() + " off until spares are there.")));
        List<Row> rows = new ArrayList<>();
        for (RunOn.Option option : runOn.options()) {
            rows.add(new Row(List.of(
                    new Cell.Explained(
                            Values.capital(option.title()) + (option.limitsKept() ? "" : ": BREAKS A LIMIT"),
                            List.of("left empty: " + String.join(", ", option.empty()))),
                    new Cell.Text(Dimension.REACTIVE_POWER.format(option.varsLost())),
                    new Cell.Text(Values.number(100.0 * option.highestUnitVoltagePerRated()) + " % of rated"),
                    new Cell.Text(option.signal() + " " + Values.print(option.signalPrimary(), option.signalUnit())),
                    new Cell.Text(option.settings()
                            .map(s -> settings(s, option.signalUnit()))
                            .orElse("no sensor")))));
        }
        blocks.add(new Block.Table(
                "",
                List.of(
                        Column.left("Way", 28),
                        Column.right("Lost", 12),
                        Column.right("Highest on a unit", 15),
                        Column.left("Unbalance", 19),
                        Column.left("Settings for this time", 26)),
                rows));
        blocks.add(new Block.Paragraph("Tried: " + runOn.search() + "."));
        return blocks;
    }

    private static String settings(RunOn.Settings settings, String unit) {
        return "alarm "
                + (settings.alarmPrimary().isPresent()
                        ? Values.print(settings.alarmPrimary().getAsDouble(), unit) + " primary"
                        : "none: no unit more lifts the reading")
                + ", trip "
                + (settings.tripPrimary().isPresent()
                        ? Values.print(settings.tripPrimary().getAsDouble(), unit) + " primary"
                        : settings.untripped().isEmpty() ? "not needed for the voltage limit" : "none")
                + (settings.unseen().isEmpty()
                        ? ""
                        : "; NOT SEEN: one unit more in " + String.join(", ", settings.unseen()))
                + (settings.untripped().isEmpty()
                        ? ""
                        : "; NO TRIP before the voltage limit is broken in " + String.join(", ", settings.untripped()))
                + (settings.presentAlarmSuits()
                        ? "; the present alarm may stay"
                        : "; the present alarm must be changed, and put back when the bank is whole");
    }
}
