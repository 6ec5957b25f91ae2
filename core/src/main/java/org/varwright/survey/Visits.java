package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.varwright.bank.Bank;
import org.varwright.bank.UnitPosition;
import org.varwright.quantity.Dimension;

/**
 * Earlier visits to the bank (SRV-16).
 *
 * <p><b>Model.</b> Between a visit and now all readings share a factor (meter, weather): the median ratio of units read on both, where there are four or more; it
 * is taken out. Two readings of one healthy unit then differ by less than {@code 2·√2·u}, {@code u} the meter's standard uncertainty; more is drift.
 * <p><b>Not modelled.</b> Ageing that all units share: it can't be told from the meter.
 * <p><b>Source.</b> JCGM 100:2008, 5.1; the limit of two standard deviations: common practice, no source.
 */
final class Visits {
    static final int FEWEST_SHARED = 4;

    private static final double DAYS_A_YEAR = 365.25;
    private static final double FEWEST_DAYS = 30.0;

    private final List<Visit> visits;
    private final List<Gathered> now;
    private final SurveySettings settings;

    private Visits(List<Visit> visits, List<Gathered> now, SurveySettings settings) {
        this.visits = List.copyOf(visits);
        this.now = now;
        this.settings = settings;
    }

    /**
     * One visit.
     *
     * @param when date where one is written, else the file
     * @param day of the date
     * @param survey of what was read
     * @param factor of the present readings over those; empty where it can't be told
     */
    private record Visit(String when, OptionalInt day, Survey survey, OptionalDouble factor) {}

    /** Earlier visits, oldest first, each judged by itself and those before it. */
    static Visits of(Bank bank, List<Readings> earlier, List<Gathered> now, SurveySettings settings) {
        List<Visit> visits = new ArrayList<>();
        for (int i = 0; i < earlier.size(); i++) {
            Readings readings = earlier.get(i);
            Survey survey = Survey.of(bank, readings, settings, earlier.subList(0, i));
            Optional<String> taken = readings.rows().stream()
                    .flatMap(row -> row.taken().stream())
                    .findFirst();
            String when = taken.filter(t -> Days.of(t).isPresent())
                    .map(t -> t.strip().substring(0, 10))
                    .orElse(readings.file());
            visits.add(new Visit(
                    when, taken.map(Days::of).orElse(OptionalInt.empty()), survey, factor(survey, now, settings)));
        }
        return new Visits(visits, now, settings);
    }

    private static OptionalDouble factor(Survey then, List<Gathered> now, SurveySettings settings) {
        double[] ratios = now.stream()
                .flatMapToDouble(unit -> ratio(then, unit).stream())
                .filter(ratio -> ratio > 0.8 && ratio < 1.25)
                .toArray();
        if (ratios.length < FEWEST_SHARED) {
            return OptionalDouble.empty();
        }
        double median = Robust.median(ratios);
        return Math.abs(median - 1.0) <= 2.0 * settings.meterLimit() + 0.01
                ? OptionalDouble.of(median)
                : OptionalDouble.empty();
    }

    private static OptionalDouble ratio(Survey then, Gathered unit) {
        OptionalDouble before = value(then, unit);
        OptionalDouble present = unit.middle();
        return before.isPresent() && present.isPresent() && before.getAsDouble() > 0.0
                ? OptionalDouble.of(present.getAsDouble() / before.getAsDouble())
                : OptionalDouble.empty();
    }

    /** What a unit read on a visit when it was in order and the same unit; empty otherwise. */
    private static OptionalDouble value(Survey then, Gathered unit) {
        Optional<UnitSurvey> before = then.unit(unit.position().name());
        if (before.isEmpty()
                || before.get().verdict() != UnitVerdict.HEALTHY
                || unit.stage().hasThreePhaseUnits()) {
            return OptionalDouble.empty();
        }
        boolean other = before.get().serial().isPresent()
                && unit.serial().isPresent()
                && !Serials.same(before.get().serial().get(), unit.serial().get());
        return other ? OptionalDouble.empty() : before.get().capacitanceFarads();
    }

    /** What the unit read on the last visit when it was in order, on the present scale; empty where there was none. */
    Optional<Reference> reference(Gathered unit) {
        for (int i = visits.size() - 1; i >= 0; i--) {
            Visit visit = visits.get(i);
            OptionalDouble value = value(visit.survey(), unit);
            if (value.isPresent()) {
                double sigma = Math.hypot(settings.meterSigma(unit.instrument()), settings.ageing());
                // without a common factor the weather of both days is open, as for factory values
                double weather = visit.factor().isPresent() ? 0.0 : 10.0 * settings.capacitancePerKelvin();
                return Optional.of(new Reference.Earlier(
                        value.getAsDouble() * visit.factor().orElse(1.0), Math.hypot(sigma, weather), visit.when()));
            }
        }
        return Optional.empty();
    }

    /** The trend of a unit; empty where it was read now or earlier only. */
    Optional<Trend> trend(UnitPosition position, OptionalDouble present) {
        Optional<Gathered> unit =
                now.stream().filter(u -> u.position().equals(position)).findFirst();
        if (unit.isEmpty() || present.isEmpty()) {
            return Optional.empty();
        }
        List<Trend.Point> points = new ArrayList<>();
        Optional<Visit> last = Optional.empty();
        for (Visit visit : visits) {
            OptionalDouble value = value(visit.survey(), unit.get());
            if (value.isPresent()) {
                points.add(new Trend.Point(
                        visit.when(), value.getAsDouble() * visit.factor().orElse(1.0)));
                last = Optional.of(visit);
            }
        }
        if (last.isEmpty()) {
            return Optional.empty();
        }
        double before = points.getLast().farads();
        double change = present.getAsDouble() / before - 1.0;
        double mates = last.get().factor().orElse(1.0) - 1.0;
        points.add(new Trend.Point("now", present.getAsDouble()));
        double allowed = 2.0 * Math.sqrt(2.0) * settings.meterSigma(unit.get().instrument());
        OptionalInt today = unit.get().rows().stream()
                .flatMap(row -> row.taken().stream())
                .map(Days::of)
                .filter(OptionalInt::isPresent)
                .findFirst()
                .orElse(OptionalInt.empty());
        OptionalDouble perYear = OptionalDouble.empty();
        if (today.isPresent() && last.get().day().isPresent()) {
            double days = today.getAsInt() - (double) last.get().day().getAsInt();
            perYear = days >= FEWEST_DAYS ? OptionalDouble.of(change * DAYS_A_YEAR / days) : OptionalDouble.empty();
        }
        boolean drifts = Math.abs(change) > allowed;
        return Optional.of(new Trend(
                position.name(),
                points,
                change,
                mates,
                perYear,
                drifts,
                sentence(last.get(), points, change, allowed, perYear, drifts)));
    }

    private static String sentence(
            Visit last,
            List<Trend.Point> points,
            double change,
            double allowed,
            OptionalDouble perYear,
            boolean drifts) {
        String values =
                Dimension.CAPACITANCE.format(points.get(points.size() - 2).farads()) + " on " + last.when() + ", "
                        + Dimension.CAPACITANCE.format(points.getLast().farads()) + " now";
        String beside = last.factor().isPresent() ? " beside what all units changed" : "";
        if (!drifts) {
            return values + ": no change" + beside + " that two readings of this meter could show (less than "
                    + Dimension.digits(100.0 * allowed, 2) + " %).";
        }
        return values + ": " + (change > 0.0 ? "up " : "down ") + Dimension.digits(100.0 * Math.abs(change), 2) + " %"
                + beside + ", more than two readings of this meter differ by (" + Dimension.digits(100.0 * allowed, 2)
                + " %)"
                + (perYear.isPresent()
                        ? "; at this rate " + Dimension.digits(100.0 * Math.abs(perYear.getAsDouble()), 2) + " % a year"
                        : "")
                + ". Read it again at the next visit, sooner than the others.";
    }
}
