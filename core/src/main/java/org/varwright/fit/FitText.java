package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.FuseType;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.CheckText;
import org.varwright.basis.Verdict;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link FitResult} as text for people: to be printed and taken to site. */
public final class FitText {
    private FitText() {}

    /** The whole page. */
    public static String of(FitResult result) {
        Page page = new Page().heading("What to fit where  " + result.bank().name());
        if (!result.provisional().isEmpty()) {
            page.text("NOT SETTLED YET: measure again before anything is lifted: "
                    + String.join(", ", result.provisional())
                    + ". Everything below holds only if these units turn out good.");
        }
        page.text(headline(result));
        lifts(page, result);
        balance(page, result);
        runOn(page, result);
        alternatives(page, result);
        spares(page, result);
        checks(page, result);
        notes(page, result);
        page.blank();
        page.text(
                "Basis: FIT-1 like for like, FIT-2 unbalance, FIT-3 search, FIT-7 voltage limit, FIT-8 alarm, FIT-9 capacitances;"
                        + " --explain prints formulas, terms and sources.");
        return page.print();
    }

    private static String headline(FitResult result) {
        String lifts = result.moves().size() == 1 ? "1 lift" : result.moves().size() + " lifts";
        String proof = "Search: " + result.proof() + " (" + result.plansExamined() + " plans evaluated).";
        boolean broken = result.checks().stream().anyMatch(c -> c.verdict() == Verdict.FAIL);
        return switch (result.outcome()) {
            case COMPLETE ->
                result.moves().isEmpty()
                        ? "Nothing has to be lifted. Every limit is kept."
                        : lifts + ". Every limit is kept. " + proof;
            case LIMIT_BROKEN ->
                "NOT GOOD TO GO: with these spares a limit stays broken, see the checks below. " + lifts
                        + " give the best that was found. " + proof;
            case SPARES_MISSING ->
                (broken ? "NOT GOOD TO GO: a limit is broken, see the checks below. " : "")
                        + "SPARES ARE MISSING: see how to run on below. " + lifts + " with what there is. " + proof;
        };
    }

    private static void lifts(Page page, FitResult result) {
        if (result.moves().isEmpty()) {
            return;
        }
        page.heading("Lifts, in this order");
        page.text(
                "Only inside the order of work: every unit proven dead, discharged with the stick and shorted across all"
                        + " terminals and case before it is touched; the short stays on while it is carried and stored.");
        for (Move move : result.moves()) {
            page.item(String.format(Locale.ROOT, "  %2d [ ] ", move.number()), line(result.bank(), move));
        }
        reminders(page, result);
    }

    private static String line(Bank bank, Move move) {
        return switch (move.kind()) {
            case TAKE_OUT ->
                "take out " + move.serial() + at(move.serial(), move.from())
                        + (move.to().equals(Move.OUT)
                                ? "; condemned, mark it: it is not fitted again"
                                : move.why().isEmpty()
                                        ? "; it is good: keep it with the spares"
                                        : "; set it aside, it is to be watched");
            case RELOCATE ->
                move.setDown()
                        ? "lift " + move.serial() + " out of " + move.from() + " and set it down; it goes into "
                                + move.to() + " once that is free"
                        : "move " + move.serial() + " from " + move.from() + " to " + move.to() + fuse(bank, move.to());
            case PUT_IN -> "put in " + move.serial() + " from the spares at " + move.to() + fuse(bank, move.to());
        };
    }

    private static String at(String serial, String position) {
        return serial.equals("unit of " + position) ? "" : " at " + position;
    }

    private static String fuse(Bank bank, String position) {
        Optional<FuseType> fuse =
                bank.position(position).flatMap(p -> bank.stage(p.stage())).flatMap(Stage::fuse);
        return fuse.map(f -> "; fuse " + f.link().orElse(f.name())).orElse("");
    }

    private static void reminders(Page page, FitResult result) {
        List<FuseType> fuses = new ArrayList<>();
        for (Move move : result.moves()) {
            Optional<UnitPosition> at = result.bank().position(move.to());
            at.flatMap(p -> result.bank().stage(p.stage()))
                    .flatMap(Stage::fuse)
                    .filter(f -> !fuses.contains(f))
                    .ifPresent(fuses::add);
        }
        for (FuseType fuse : fuses) {
            page.item(
                    "  - ",
                    switch (fuse.kind()) {
                        case EXPULSION ->
                            "fuse " + fuse.name()
                                    + ": line end to the bus, ejector end to the unit's bushing; new link where it has"
                                    + " operated, ejector re-set under tension and pointing as on its neighbours";
                        case CURRENT_LIMITING ->
                            "fuse " + fuse.name()
                                    + ": line end to the bus, unit end to the bushing; measure its resistance"
                                    + " against its neighbours before it goes in";
                    });
        }
        page.item(
                "  - ",
                "read the nameplate against this page before each lift in; tighten bushing connections to the maker's torque;"
                        + " case bonded to the rack as before");
    }

    private static void balance(Page page, FitResult result) {
        page.heading("Before and after, at nominal voltage");
        List<List<String>> rows = new ArrayList<>();
        for (Balance.LegReading leg : result.after().legs()) {
            Optional<Balance.LegReading> was = result.before().legs().stream()
                    .filter(l -> l.stage().equals(leg.stage()) && l.leg().equals(leg.leg()))
                    .findFirst();
            rows.add(List.of(
                    leg.stage() + " " + leg.leg(),
                    was.map(l -> farads(l) + " " + Compatibility.percent(l.deviation()))
                            .orElse("not known"),
                    farads(leg) + " " + Compatibility.percent(leg.deviation()),
                    was.map(l -> Dimension.CURRENT.format(l.amperes())).orElse("not known"),
                    Dimension.CURRENT.format(leg.amperes())));
        }
        page.table(
                List.of("leg", "C before, from mean", "C after, from mean", "I before", "I after"), rows, 1, 2, 3, 4);
        if (!result.after().sensors().isEmpty()) {
            page.blank();
            List<List<String>> sensors = new ArrayList<>();
            for (Balance.SensorReading sensor : result.after().sensors()) {
                Optional<Balance.SensorReading> was = result.before().sensors().stream()
                        .filter(s -> s.name().equals(sensor.name()))
                        .findFirst();
                sensors.add(List.of(
                        sensor.name(),
                        was.map(FitText::primary).orElse("not known"),
                        primary(sensor),
                        sensor.alarmPrimary().isPresent()
                                ? value(sensor.alarmPrimary().getAsDouble(), sensor)
                                : "none",
                        was.map(FitText::secondary).orElse("not known"),
                        secondary(sensor)));
            }
            page.table(
                    List.of("sensor, primary", "before", "after", "alarm", "relay before", "relay after"),
                    sensors,
                    1,
                    2,
                    3,
                    4,
                    5);
        }
        page.blank();
        page.row(
                "highest unit voltage",
                perRated(result.before()) + " before, " + perRated(result.after())
                        + " after, at the highest voltage of the system");
        for (String unsolved : result.after().unsolved()) {
            page.item("  NOT SOLVED  ", unsolved);
        }
    }

    private static String farads(Balance.LegReading leg) {
        return Dimension.CAPACITANCE.format(leg.capacitanceFarads());
    }

    private static String perRated(Balance balance) {
        return Dimension.digits(100.0 * balance.highestUnitVoltagePerRated(), 4) + " % of rated"
                + balance.highestUnit().map(p -> " (" + p.name() + ")").orElse("");
    }

    private static String primary(Balance.SensorReading sensor) {
        return value(sensor.primary().magnitude(), sensor);
    }

    private static String secondary(Balance.SensorReading sensor) {
        return sensor.secondary().map(s -> value(s.magnitude(), sensor)).orElse("no ratio");
    }

    private static String value(double value, Balance.SensorReading sensor) {
        return sensor.senses().dimension().format(value, 3);
    }

    private static void runOn(Page page, FitResult result) {
        for (RunOn runOn : result.runOn()) {
            page.heading("Running on without spares: " + runOn.stage());
            page.text(runOn.missing() + (runOn.missing() == 1 ? " unit is" : " units are") + " missing. "
                    + (runOn.recommended()
                            ? "The first way below keeps every limit and is what the lifts above do."
                            : "NO WAY WAS FOUND THAT KEEPS EVERY LIMIT: leave this "
                                    + result.bank().words().stage() + " off until spares are there."));
            for (RunOn.Option option : runOn.options()) {
                page.blank();
                option(page, result.bank(), runOn, option);
            }
            page.text("Tried: " + runOn.search() + ".");
        }
    }

    private static void option(Page page, Bank bank, RunOn runOn, RunOn.Option option) {
        page.text("  " + option.title().substring(0, 1).toUpperCase(Locale.ROOT)
                + option.title().substring(1) + (option.limitsKept() ? "" : ": BREAKS A LIMIT"));
        page.row("left empty", String.join(", ", option.empty()));
        page.row("kvar lost", Dimension.REACTIVE_POWER.format(option.varsLost()) + " at rated voltage");
        page.row(
                "highest unit voltage",
                Dimension.digits(100.0 * option.highestUnitVoltagePerRated(), 4) + " % of rated");
        Optional<Stage> stage = bank.stage(runOn.stage());
        page.row("unbalance", option.signal() + " " + signal(option.signalPrimary(), option.signalUnit()));
        option.settings().ifPresent(s -> {
            String d = option.signalUnit();
            page.row(
                    "alarm for this time",
                    s.alarmPrimary().isPresent()
                            ? setting(d, s.alarmPrimary().getAsDouble(), s.alarmSecondary())
                            : "none: no unit more lifts the reading above what stands now");
            page.row(
                    "trip for this time",
                    s.tripPrimary().isPresent()
                            ? setting(d, s.tripPrimary().getAsDouble(), s.tripSecondary())
                            : s.untripped().isEmpty()
                                    ? "no count of units out in one group breaks the voltage limit"
                                    : "none: see below");
            if (!s.unseen().isEmpty()) {
                page.row(
                        "NOT SEEN BY IT",
                        "one unit more in " + String.join(", ", s.unseen())
                                + ": the reading would fall or stay; look at the fuses and units there until spares come");
            }
            if (!s.untripped().isEmpty()) {
                page.row(
                        "NO TRIP FOR",
                        String.join(", ", s.untripped())
                                + ": units can be lost there until others are beyond the voltage limit, and the reading"
                                + " would not be above what stands now");
            }
            page.row(
                    "present alarm",
                    s.presentAlarmSuits()
                            ? "may stay: it lies between the standing unbalance and that of one unit more"
                            : "must be changed: it would "
                                    + "be up all the time, or miss the next unit; put it back when the bank is whole");
        });
        page.row(
                "the empty place",
                stage.flatMap(Stage::fuse)
                        .map(f -> "fuse taken off too, leads tied back clear of bus and rack")
                        .orElse("both leads taken off and tied back; units here have no fuse of their own"));
    }

    private static String signal(double value, String unit) {
        return Dimension.of(unit).map(d -> d.format(value, 3)).orElseGet(() -> Dimension.digits(value, 3));
    }

    private static String setting(String unit, double primary, OptionalDouble secondary) {
        return signal(primary, unit)
                + (secondary.isPresent()
                        ? " primary = " + signal(secondary.getAsDouble(), unit) + " at the relay"
                        : " primary");
    }

    private static void alternatives(Page page, FitResult result) {
        if (result.alternatives().isEmpty()) {
            return;
        }
        page.heading("Better balanced with more lifts");
        for (FitResult.Alternative other : result.alternatives()) {
            List<String> moves = other.moves().stream()
                    .filter(m -> m.kind() != Move.Kind.TAKE_OUT || m.to().equals(Move.ASIDE))
                    .map(m -> m.serial() + " to " + m.to())
                    .toList();
            String sensors = other.after().sensors().stream()
                    .filter(s -> result.after().sensors().stream()
                            .noneMatch(t -> t.name().equals(s.name())
                                    && Math.abs(t.primary().magnitude()
                                                    - s.primary().magnitude())
                                            < 1e-6 * t.primary().magnitude()))
                    .map(s -> s.name() + " " + value(s.primary().magnitude(), s))
                    .reduce((a, b) -> a + ", " + b)
                    .orElse("unbalance " + Dimension.digits(other.unbalance(), 3));
            page.item(
                    "  + " + other.extraLifts() + (other.extraLifts() == 1 ? " lift   " : " lifts  "),
                    sensors + ": " + String.join("; ", moves));
        }
    }

    private static void spares(Page page, FitResult result) {
        if (!result.rejected().isEmpty()) {
            page.heading("Spares that don't fit");
            result.rejected().forEach(r -> page.item("  " + r.serial() + "  ", r.reason()));
        }
        if (!result.unused().isEmpty()) {
            page.blank();
            page.row("spares left over", String.join(", ", result.unused()));
        }
    }

    private static void checks(Page page, FitResult result) {
        page.heading("Checks");
        CheckText.add(page, result.checks());
    }

    private static void notes(Page page, FitResult result) {
        if (!result.notes().isEmpty()) {
            page.heading("Notes");
            result.notes().forEach(n -> page.item("  - ", n));
        }
    }
}
