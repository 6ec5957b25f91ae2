package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.varwright.bank.Bank;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/** Holds reactors, switch contacts and currents in service against their limits (SRV-17 to SRV-19). */
final class SpotJudge {
    /** How far a reactor may be from its nameplate; common practice, no source. */
    private static final double REACTOR_PART = 0.10;

    /** Highest contact resistance over that of the lowest pole (ANSI/NETA MTS). */
    private static final double CONTACT_TIMES = 1.5;

    /** How far the current of a leg may be from its share: two clamp meters of 2 %; common practice, no source. */
    private static final double SHARE_PART = 0.04;

    private final Bank bank;
    private final List<LegSurvey> legs;
    private final List<SpotRow> rows;

    SpotJudge(Bank bank, List<LegSurvey> legs, List<SpotRow> rows) {
        this.bank = bank;
        this.legs = legs;
        this.rows = rows;
    }

    List<SpotSurvey> all() {
        List<SpotSurvey> all = new ArrayList<>();
        for (SpotRow row : rows) {
            switch (row.kind()) {
                case CAPACITANCE -> {}
                case INDUCTANCE -> all.add(reactor(row));
                case CONTACT -> all.add(contact(row));
                case CURRENT -> all.add(current(row));
            }
        }
        return all;
    }

    private static SpotSurvey answer(
            SpotRow row, Dimension dimension, Verdict verdict, String reason, Optional<Check> check) {
        String shown = row.measured().value().isPresent()
                ? dimension.format(row.measured().value().getAsDouble())
                : row.measured().raw();
        return new SpotSurvey(
                row.spot().name(),
                row.row(),
                row.kind().words(),
                shown,
                verdict,
                row.spot().name() + ": " + reason,
                check.stream().toList());
    }

    private SpotSurvey reactor(SpotRow row) {
        Dimension dimension = Dimension.INDUCTANCE;
        Optional<Reactor> reactor = row.spot() instanceof Spot.Phase phase
                ? bank.stage(phase.stage()).flatMap(Stage::reactor)
                : Optional.empty();
        if (!(row.measured() instanceof Measured.Value value)) {
            return answer(
                    row,
                    dimension,
                    Verdict.FAIL,
                    "the meter shows " + row.measured().raw()
                            + ": the reactor is open, or the leads made no contact; measure again.",
                    Optional.empty());
        }
        if (reactor.isEmpty()) {
            return answer(
                    row,
                    dimension,
                    Verdict.WARN,
                    "the bank file gives no reactor for this stage, so there is nothing to hold "
                            + dimension.format(value.si()) + " against; add it to the file.",
                    Optional.empty());
        }
        double rated = reactor.get().henries();
        double off = value.si() / rated - 1.0;
        OptionalInt slip = slip(value.si() / rated);
        boolean far = Math.abs(off) > REACTOR_PART;
        Check check = new Check(
                row.spot().name() + ": reactor against its nameplate",
                off,
                REACTOR_PART,
                "",
                far ? Verdict.WARN : Verdict.PASS,
                new Basis(
                        "SRV-17",
                        "|L/L_nameplate − 1| ≤ 0.10",
                        List.of(
                                new Term("L", "read", value.si(), "H"),
                                new Term("L_nameplate", "nameplate", rated, "H")),
                        Source.COMMON_PRACTICE));
        if (slip.isPresent()) {
            return answer(
                    row,
                    dimension,
                    Verdict.FAIL,
                    dimension.format(value.si()) + " is 10^" + slip.getAsInt()
                            + " times its nameplate: a wrong range or unit; measure again.",
                    Optional.of(check));
        }
        return answer(
                row,
                dimension,
                check.verdict(),
                dimension.format(value.si()) + " is " + Reasons.deviation(1.0 + off) + " its nameplate"
                        + (far
                                ? off < 0.0
                                        ? ": turns shorted, or measured with something in parallel; look at it before it is switched."
                                        : ": not the reactor of the file, or measured in series with something."
                                : ", as it should be."),
                Optional.of(check));
    }

    private static OptionalInt slip(double ratio) {
        for (int exponent : new int[] {-6, -3, 3, 6}) {
            if (Math.abs(ratio / Math.pow(10.0, exponent) - 1.0) <= 2.0 * REACTOR_PART) {
                return OptionalInt.of(exponent);
            }
        }
        return OptionalInt.empty();
    }

    private SpotSurvey contact(SpotRow row) {
        Dimension dimension = Dimension.RESISTANCE;
        if (!(row.measured() instanceof Measured.Value value)) {
            return answer(
                    row,
                    dimension,
                    Verdict.FAIL,
                    "the meter shows " + row.measured().raw()
                            + ": the pole is not closed, or the leads made no contact; measure again with the switch closed.",
                    Optional.empty());
        }
        double[] poles = rows.stream()
                .filter(other -> other.kind() == SpotRow.Kind.CONTACT && sameDevice(other.spot(), row.spot()))
                .flatMapToDouble(other -> other.measured().value().stream())
                .filter(ohms -> ohms > 0.0)
                .toArray();
        if (!(value.si() > 0.0)) {
            return answer(
                    row,
                    dimension,
                    Verdict.WARN,
                    dimension.format(value.si())
                            + " is no contact's resistance: the leads touch, or a finer range is needed; measure again.",
                    Optional.empty());
        }
        if (poles.length < 2) {
            return answer(
                    row,
                    dimension,
                    Verdict.WARN,
                    dimension.format(value.si())
                            + " alone says little: read the other poles too, and hold it against the maker's figure.",
                    Optional.empty());
        }
        double least = Double.POSITIVE_INFINITY;
        for (double pole : poles) {
            least = Math.min(least, pole);
        }
        double times = value.si() / least;
        boolean far = times > CONTACT_TIMES * (1.0 + 1e-9);
        Check check = new Check(
                row.spot().name() + ": contact resistance over the lowest pole's",
                times,
                CONTACT_TIMES,
                "",
                far ? Verdict.WARN : Verdict.PASS,
                new Basis(
                        "SRV-18",
                        "R/R_lowest ≤ 1.5",
                        List.of(
                                new Term("R", "read", value.si(), "Ω"),
                                new Term("R_lowest", "lowest pole of the switch", least, "Ω")),
                        Source.published(
                                "ANSI/NETA MTS: within the maker's range, else not over 150 % of the lowest pole")));
        return answer(
                row,
                dimension,
                check.verdict(),
                dimension.format(value.si()) + " is " + Reasons.times(times) + " the lowest pole"
                        + (far
                                ? ", more than 1.5×: look at its contacts, unless the maker's range allows it."
                                : ", within 1.5×."),
                Optional.of(check));
    }

    private static boolean sameDevice(Spot one, Spot other) {
        return one instanceof Spot.Pole a
                && other instanceof Spot.Pole b
                && a.device().equals(b.device());
    }

    /** Currents of a stage's legs (or lines) share as the capacitances behind them do, all at one voltage. */
    private SpotSurvey current(SpotRow row) {
        Dimension dimension = Dimension.CURRENT;
        if (!(row.measured() instanceof Measured.Value value)) {
            return answer(
                    row,
                    dimension,
                    Verdict.WARN,
                    "the meter shows " + row.measured().raw() + ": measure again on another range.",
                    Optional.empty());
        }
        List<SpotRow> mates = rows.stream()
                .filter(other -> other.kind() == SpotRow.Kind.CURRENT
                        && other.measured().value().isPresent()
                        && alike(other.spot(), row.spot()))
                .toList();
        double amperes = 0.0;
        double farads = 0.0;
        for (SpotRow mate : mates) {
            amperes += mate.measured().value().orElse(0.0);
            farads += behind(mate.spot());
        }
        if (mates.size() < 3 || amperes <= 0.0) {
            return answer(
                    row,
                    dimension,
                    Verdict.WARN,
                    dimension.format(value.si()) + " alone says little: read every leg within a few minutes.",
                    Optional.empty());
        }
        double share = behind(row.spot()) / farads;
        double off = value.si() / (share * amperes) - 1.0;
        boolean far = Math.abs(off) > SHARE_PART;
        Check check = new Check(
                row.spot().name() + ": current against its share",
                off,
                SHARE_PART,
                "",
                far ? Verdict.WARN : Verdict.PASS,
                new Basis(
                        "SRV-19",
                        "|I/(ΣI·C/ΣC) − 1| ≤ 0.04",
                        List.of(
                                new Term("I", "read", value.si(), "A"),
                                new Term("ΣI", "of all legs read", amperes, "A"),
                                new Term("C/ΣC", "its part of the capacitance as read", share, "")),
                        Source.COMMON_PRACTICE));
        return answer(
                row,
                dimension,
                check.verdict(),
                dimension.format(value.si()) + " is " + Reasons.deviation(1.0 + off)
                        + " its share by the capacitances as read"
                        + (far
                                ? ": a fuse or a unit has changed since, or the meter; the energize command says which failure fits."
                                : "."),
                Optional.of(check));
    }

    private static boolean alike(Spot one, Spot other) {
        return switch (one) {
            case Spot.Leg leg -> other instanceof Spot.Leg o && leg.stage().equals(o.stage());
            case Spot.Phase phase ->
                other instanceof Spot.Phase o && phase.stage().equals(o.stage());
            case Spot.Pole ignored -> false;
            case Spot.Together ignored -> false;
        };
    }

    /** Capacitance behind a leg; phases of a stage that is read by its lines count alike. */
    private double behind(Spot spot) {
        return spot instanceof Spot.Leg leg
                ? legs.stream()
                        .filter(l -> l.stage().equals(leg.stage()) && l.leg().equals(leg.leg()))
                        .mapToDouble(LegSurvey::capacitanceFarads)
                        .findFirst()
                        .orElse(1.0)
                : 1.0;
    }
}
