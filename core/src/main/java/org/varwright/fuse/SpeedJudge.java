package org.varwright.fuse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/** Holds a fuse's speed against what a shorted unit asks: does it operate, in time for the others, before whatever else would. */
final class SpeedJudge {
    static final Source OPERATES_SOURCE =
            Source.unchecked("IEEE Std C37.48: melt within 5 min at 95 % of the current of a full short");

    private final Demand demand;
    private final FuseCurve curve;
    private final String name;
    private final List<Check> checks = new ArrayList<>();
    private final List<Unanswered> missing = new ArrayList<>();

    SpeedJudge(Demand demand, FuseCurve curve, String name) {
        this.demand = demand;
        this.curve = curve;
        this.name = name;
    }

    List<Check> checks() {
        return checks;
    }

    List<Unanswered> missing() {
        return missing;
    }

    /** Whether the fuse operates on a shorted unit, in time for the other units, and before the bank trips. */
    void judge() {
        if (demand.found().isEmpty()) {
            return;
        }
        double amperes = demand.faultAmperes().orElseThrow();
        FuseTime clearing = curve.clearing(Demand.LOW * amperes);
        if (curve instanceof FuseCurve.NotKnown(String reason)) {
            missing.add(new Unanswered(reason, "when it melts and clears"));
        }
        operates(amperes);
        if (demand.isFirst()) {
            overvoltage(amperes, clearing, demand.trip().orElseThrow());
            trip(amperes, clearing, demand.trip().orElseThrow());
        }
    }

    private void operates(double amperes) {
        Optional<Check> check = operates(demand, curve, name);
        check.ifPresent(checks::add);
        if (check.isEmpty() && curve instanceof FuseCurve.OfI2t) {
            missing.add(new Unanswered(
                    "melting curve of " + name,
                    "whether it operates on " + Math.round(amperes) + " A; I²t says nothing of longer times"));
        }
    }

    /** Whether a link has surely melted within the longest time of its table on a full short. */
    static Optional<Check> operates(Demand demand, FuseCurve curve, String name) {
        OptionalDouble amperes = demand.faultAmperes();
        if (!(curve instanceof FuseCurve.OfLink of) || amperes.isEmpty()) {
            return Optional.empty();
        }
        Link.Point longest = of.link().points().getFirst();
        double least = Demand.LOW * amperes.getAsDouble();
        Verdict otherwise = demand.isFirst() ? Verdict.FAIL : Verdict.WARN;
        return Optional.of(new Check(
                name + ": a shorted unit's current melts it within " + Math.round(longest.seconds()) + " s"
                        + (demand.isFirst() ? "" : " (it backs up the unit fuses)"),
                least,
                longest.mostAmperes(),
                "A",
                least >= longest.mostAmperes() ? Verdict.PASS : otherwise,
                new Basis(
                        "FUS-12",
                        "0.95·I_short ≥ I_most, current at which the slowest link of this rating has melted",
                        List.of(
                                new Term("I_short", "current with one unit shorted", amperes.getAsDouble(), "A"),
                                new Term("I_most", LinkTable.SOURCE.print(), longest.mostAmperes(), "A")),
                        OPERATES_SOURCE)));
    }

    private void overvoltage(double amperes, FuseTime clearing, BankTrip trip) {
        FullShort fault = demand.found().orElseThrow();
        double perRated = fault.highestPerRated() * demand.highOverNominal();
        List<Term> terms = new ArrayList<>(List.of(
                new Term("v", "on " + fault.highestUnit().name() + " over rated", perRated, ""),
                new Term("I_short", "current with one unit shorted", amperes, "A")));
        String subject =
                name + ": the others bear " + Dimension.digits(perRated, 4) + " times rated voltage until it clears";
        if (demand.overvoltage().isEmpty()) {
            checks.add(new Check(
                    subject + "; the standard's table has no row so high",
                    perRated,
                    demand.table().rows().getFirst().multiple(),
                    "",
                    Verdict.WARN,
                    new Basis(
                            "FUS-13",
                            "v ≤ highest row of the table",
                            terms,
                            demand.table().source())));
            return;
        }
        Overvoltage over = demand.overvoltage().get();
        if (Double.isInfinite(over.strictSeconds())) {
            checks.add(new Check(
                    subject,
                    perRated,
                    demand.table().continuous(),
                    "",
                    Verdict.PASS,
                    new Basis(
                            "FUS-13",
                            "v ≤ continuous limit",
                            terms,
                            demand.table().source())));
            return;
        }
        terms.add(new Term("t_row", "by the table's next higher row", over.strictSeconds(), "s"));
        terms.add(new Term("t_between", "by log-log interpolation between its rows", over.betweenSeconds(), "s"));
        boolean ends = clearing.bound() == FuseTime.Bound.ABOUT || clearing.bound() == FuseTime.Bound.AT_MOST;
        Verdict byFuse = ends ? over.judge(clearing.seconds()) : Verdict.FAIL;
        OptionalDouble relay = trip.delaySeconds();
        if (byFuse != Verdict.FAIL || relay.isEmpty()) {
            checks.add(new Check(
                    subject + (ends ? "" : "; no end is known"),
                    ends ? clearing.seconds() : longest(),
                    over.strictSeconds(),
                    "s",
                    clearing.isKnown() ? byFuse : Verdict.WARN,
                    new Basis(
                            "FUS-13",
                            "t_clear(0.95·I_short) ≤ t_row",
                            terms,
                            demand.table().source())));
            return;
        }
        terms.add(new Term("t_trip", "delay of " + trip.sensor().orElse(""), relay.getAsDouble(), "s"));
        Verdict byRelay = over.judge(relay.getAsDouble());
        checks.add(new Check(
                subject + ": too slow; the bank's trip ends it, its switch's own time on top",
                relay.getAsDouble(),
                over.strictSeconds(),
                "s",
                byRelay == Verdict.PASS ? Verdict.WARN : byRelay,
                new Basis("FUS-13", "t_trip ≤ t_row", terms, demand.table().source())));
    }

    private double longest() {
        return curve instanceof FuseCurve.OfLink of
                ? of.link().points().getFirst().seconds()
                : 0.0;
    }

    private void trip(double amperes, FuseTime clearing, BankTrip trip) {
        missing.addAll(trip.missing());
        if (trip.delaySeconds().isEmpty() || !clearing.isKnown()) {
            return;
        }
        double delay = trip.delaySeconds().getAsDouble();
        boolean first = clearing.isWithin(delay);
        boolean open = clearing.bound() == FuseTime.Bound.LONGER_OR_NEVER;
        checks.add(new Check(
                name
                        + (first
                                ? ": clears before the unbalance protection trips the bank"
                                : open
                                        ? ": the bank trips first; the fuse takes longer than its table says, or never melts, and marks no unit"
                                        : ": the bank trips before it has surely cleared; it may mark no unit"),
                clearing.seconds(),
                delay,
                "s",
                first ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        "FUS-17",
                        "t_clear(0.95·I_short) ≤ t_trip",
                        List.of(
                                new Term("I_short", "current with one unit shorted", amperes, "A"),
                                new Term("t_trip", "delay of " + trip.sensor().orElse(""), delay, "s")),
                        Source.COMMON_PRACTICE)));
    }
}
