package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.varwright.bank.Protection;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Complex;
import org.varwright.quantity.Dimension;

/**
 * Works out the settings of one sensor from the failure table.
 *
 * <p><b>Model.</b> Alarm: half of the smallest change that one failure makes, when the error budget is below that (UNB-4). Trip: midway between the
 * largest change that may run on and the smallest that may not (UNB-5). Where the first failure may not run on, the trip takes the alarm's place, and the
 * alarm is left for failures of another kind that the trip would not see (UNB-8).
 *
 * <p><b>Source.</b> The idea (alarm at the first failure, trip before the limit) is that of IEEE Std C37.99, from memory, unchecked; the half and the middle
 * are common practice.
 */
final class SettingsStudy {
    private static final Source SOURCE = Source.unchecked(
            "alarm at the first failure, trip before the limit: IEEE Std C37.99; half and middle: common practice");

    private final Protection protection;
    private final List<FailureRow> rows;
    private final String kind;
    private final ErrorBudget error;
    private final Optional<Effect> phaseOpen;
    private final Optional<FaintFailure> faint;
    private final String unit;
    private final Dimension dimension;

    SettingsStudy(
            Protection protection, List<FailureRow> rows, String kind, ErrorBudget error, Optional<Effect> phaseOpen) {
        this.protection = protection;
        this.rows = rows;
        this.kind = kind;
        this.error = error;
        this.phaseOpen = phaseOpen;
        this.faint = FaintFailure.of(protection, rows, kind);
        this.unit = protection.senses().unit();
        this.dimension = protection.senses().dimension();
    }

    /** Largest change that any place of the sensor sees [V] or [A]. */
    static double signal(Protection protection, Effect effect) {
        double largest = 0.0;
        for (int s = 0; s < effect.sensors().size(); s++) {
            if (effect.sensors().get(s).senses() == protection.senses()) {
                Complex change = effect.changes().get(s);
                largest = Math.max(largest, change.magnitude());
            }
        }
        return largest;
    }

    SettingStudy study() {
        double first = Double.POSITIVE_INFINITY;
        OptionalDouble allowed = OptionalDouble.empty();
        OptionalDouble forbidden = OptionalDouble.empty();
        OptionalInt count = OptionalInt.empty();
        for (FailureRow row : rows) {
            if (!row.kind().equals(kind) || row.effect().isEmpty()) {
                continue;
            }
            double signal = signal(protection, row.effect().get());
            first = row.count() == 1 ? Math.min(first, signal) : first;
            if (row.verdict() == RunVerdict.TAKE_OUT) {
                forbidden = OptionalDouble.of(Math.min(forbidden.orElse(signal), signal));
                count = OptionalInt.of(Math.min(count.orElse(row.count()), row.count()));
            } else {
                allowed = OptionalDouble.of(Math.max(allowed.orElse(signal), signal));
            }
        }
        if (!Double.isFinite(first)) {
            first = 0.0;
        }
        boolean compensated = error.total() > 0.5 * first;
        boolean noAlarmStage = count.isPresent() && count.getAsInt() == 1;
        double half = 0.5 * first;
        OptionalDouble trip = trip(half, noAlarmStage, allowed, forbidden);
        OptionalDouble atFirst = noAlarmStage || half <= 0.0 ? OptionalDouble.empty() : OptionalDouble.of(half);
        OptionalDouble alarm = withFaint(atFirst, trip);
        List<Check> checks = checks(first, allowed, forbidden);
        return new SettingStudy(
                protection,
                kind,
                first,
                allowed,
                forbidden,
                count,
                error,
                alarm,
                trip,
                compensated,
                alarm.equals(atFirst) ? alarmBasis(first) : faintBasis(faint.orElseThrow()),
                tripBasis(allowed, forbidden),
                checks,
                remarks(first, noAlarmStage, compensated, allowed, forbidden, count, alarm, trip));
    }

    private static OptionalDouble trip(
            double half, boolean noAlarmStage, OptionalDouble allowed, OptionalDouble forbidden) {
        if (forbidden.isEmpty() || forbidden.getAsDouble() <= 0.0) {
            return OptionalDouble.empty();
        }
        if (noAlarmStage) {
            return half > 0.0 ? OptionalDouble.of(half) : OptionalDouble.empty();
        }
        double below = allowed.orElse(0.0);
        double above = forbidden.getAsDouble();
        return OptionalDouble.of(below < above ? 0.5 * (below + above) : 0.9 * above);
    }

    /** The alarm, lowered to half of what a failure over the limit shows that neither it nor the trip would see, where a good bank shows less. */
    private OptionalDouble withFaint(OptionalDouble alarm, OptionalDouble trip) {
        double least = lower(alarm, trip);
        return faint.map(FaintFailure::signal)
                .filter(s -> s < least && error.total() <= 0.5 * s && s > 1e-9)
                .map(s -> OptionalDouble.of(0.5 * s))
                .orElse(alarm);
    }

    /** The lower of two settings; infinite where neither is set. */
    private static double lower(OptionalDouble alarm, OptionalDouble trip) {
        return Math.min(alarm.orElse(Double.POSITIVE_INFINITY), trip.orElse(Double.POSITIVE_INFINITY));
    }

    private Basis faintBasis(FaintFailure failure) {
        return new Basis(
                "UNB-8",
                "alarm ≤ s_f/2, where e ≤ s_f/2; seen where alarm or trip ≤ s_f",
                List.of(
                        new Term("s_f", "smallest change by " + failure.name(), failure.signal(), unit),
                        new Term("e", "error budget", error.total(), unit)),
                SOURCE);
    }

    private Basis alarmBasis(double first) {
        return new Basis(
                "UNB-4",
                "alarm = s1/2, where e ≤ s1/2 (else inherent unbalance must be compensated)",
                List.of(
                        new Term("s1", "smallest change by one failure", first, unit),
                        new Term("e", "error budget", error.total(), unit)),
                SOURCE);
    }

    private Basis tripBasis(OptionalDouble allowed, OptionalDouble forbidden) {
        return new Basis(
                "UNB-5",
                "trip = (s_allowed + s_forbidden)/2; where the two cross, 0.9·s_forbidden; where one failure is forbidden, s1/2",
                List.of(
                        new Term("s_allowed", "largest change that may run on", allowed.orElse(0.0), unit),
                        new Term("s_forbidden", "smallest change that may not", forbidden.orElse(0.0), unit)),
                SOURCE);
    }

    private List<Check> checks(double first, OptionalDouble allowed, OptionalDouble forbidden) {
        List<Check> checks = new ArrayList<>();
        OptionalDouble alarm = primary(protection.alarm());
        OptionalDouble trip = primary(protection.trip());
        Basis a = alarmBasis(first);
        Basis t = tripBasis(allowed, forbidden);
        if (alarm.isPresent()) {
            double set = alarm.getAsDouble();
            checks.add(new Check(
                    name() + ": alarm comes at the first failure",
                    set,
                    first,
                    unit,
                    set <= first ? Verdict.PASS : Verdict.FAIL,
                    a));
            checks.add(new Check(
                    name() + ": alarm is above what a bank in good order may show",
                    set,
                    error.total(),
                    unit,
                    set > error.total() ? Verdict.PASS : Verdict.WARN,
                    error.basis()));
        }
        if (trip.isPresent()) {
            double set = trip.getAsDouble();
            if (forbidden.isPresent()) {
                double limit = forbidden.getAsDouble();
                checks.add(new Check(
                        name() + ": trip comes before the voltage limit is passed",
                        set,
                        limit,
                        unit,
                        set <= limit ? Verdict.PASS : Verdict.FAIL,
                        t));
            }
            checks.add(new Check(
                    name() + ": trip is above what may run on, and above the error budget",
                    set,
                    Math.max(allowed.orElse(0.0), error.total()),
                    unit,
                    set > Math.max(allowed.orElse(0.0), error.total()) ? Verdict.PASS : Verdict.WARN,
                    t));
        }
        double least = lower(alarm, trip);
        if (Double.isFinite(least)) {
            faint.ifPresent(f -> checks.add(new Check(
                    name() + ": alarm or trip sees " + f.name() + " (" + f.stress() + ")",
                    least,
                    f.signal(),
                    unit,
                    least <= f.signal() ? Verdict.PASS : Verdict.WARN,
                    faintBasis(f))));
        }
        return checks;
    }

    private OptionalDouble primary(OptionalDouble setting) {
        if (setting.isEmpty() || protection.settingsArePrimary()) {
            return setting;
        }
        return protection.ratio().isEmpty()
                ? OptionalDouble.empty()
                : OptionalDouble.of(
                        setting.getAsDouble() / protection.ratio().get().factor());
    }

    private List<String> remarks(
            double first,
            boolean noAlarmStage,
            boolean compensated,
            OptionalDouble allowed,
            OptionalDouble forbidden,
            OptionalInt count,
            OptionalDouble alarm,
            OptionalDouble trip) {
        List<String> remarks = new ArrayList<>();
        if (noAlarmStage) {
            remarks.add(
                    "There is no stage at which an alarm alone is enough: after the first failure the bank has to come out already ("
                            + firstForbidden() + "). Set the trip for the first failure.");
        } else if (count.isEmpty()) {
            remarks.add(
                    "No number of these failures in one group passes the voltage limit: an alarm is enough for them.");
        } else {
            remarks.add("Up to " + (count.getAsInt() - 1) + " in one " + place() + " may run on, " + count.getAsInt()
                    + " may not.");
        }
        if (!(first > 1e-9)) {
            remarks.add("The sensor does not see this failure at all; it needs another kind of sensor.");
        } else {
            long share = Math.round(100.0 * error.total() / first);
            remarks.add("A bank in good order may show " + dimension.format(error.total()) + ", " + share
                    + " % of the first failure's " + dimension.format(first)
                    + (compensated
                            ? ": too much, so subtract the healthy reading as a phasor (compensation), or match the legs better."
                            : ": no compensation needed."));
        }
        if (allowed.isPresent() && forbidden.isPresent() && allowed.getAsDouble() >= forbidden.getAsDouble()) {
            remarks.add(
                    "Some failures that may run on signal more than others that may not: no trip setting separates them all.");
        }
        unseen(alarm, trip, remarks);
        openPhase(remarks);
        ratio(first, remarks);
        unjudged(alarm, trip, remarks);
        remarks.add(
                "Like failures in two or three legs cancel at this sensor: a small reading does not prove the bank whole.");
        return remarks;
    }

    /** Where failures add up: units of one group, sections and elements of one unit, sections of a string without fuses. */
    private String place() {
        boolean isAlongTheString = kind.equals("sections-shorted")
                && rows.stream()
                        .anyMatch(r -> r.kind().equals(kind) && r.positions().size() > 1);
        return isAlongTheString ? "string" : kind.equals("unit-out") ? "group" : "unit";
    }

    private String firstForbidden() {
        return rows.stream()
                .filter(r -> r.kind().equals(kind) && r.count() == 1 && r.verdict() == RunVerdict.TAKE_OUT)
                .map(FailureRow::reason)
                .findFirst()
                .orElse("");
    }

    /** A failure of another kind over the limit that the proposed trip would not see, and what the proposed alarm does about it. */
    private void unseen(OptionalDouble alarm, OptionalDouble trip, List<String> remarks) {
        faint.filter(f -> f.signal() < trip.orElse(Double.POSITIVE_INFINITY)).ifPresent(f -> {
            String what = "Not seen by the proposed trip although over the limit: " + f.name() + " ("
                    + dimension.format(f.signal()) + ", " + f.stress() + ")";
            if (f.signal() >= alarm.orElse(Double.POSITIVE_INFINITY)) {
                remarks.add(what + ". The proposed alarm sees it: an alarm is no leave to run on, take the bank out.");
            } else if (!(f.signal() > 1e-9)) {
                remarks.add(what + ". This sensor does not show it at all: measure every unit at each visit.");
            } else {
                remarks.add(what + ". No alarm can be set for it: a bank in good order may show "
                        + dimension.format(error.total())
                        + ". Compensate the sensor, or measure every unit at each visit.");
            }
        });
    }

    private void openPhase(List<String> remarks) {
        phaseOpen.ifPresent(effect -> remarks.add("One phase open (bank fuse, switch pole, lost phase) shows "
                + dimension.format(signal(protection, effect)) + "."));
    }

    /** Settings that the file lacks, or that can't be held against anything. */
    private void unjudged(OptionalDouble alarm, OptionalDouble trip, List<String> remarks) {
        boolean isSet = protection.alarm().isPresent() || protection.trip().isPresent();
        if (isSet && !protection.settingsArePrimary() && protection.ratio().isEmpty()) {
            remarks.add("The bank file gives settings at the relay but no ratio: they were not judged.");
            return;
        }
        if (trip.isPresent() && protection.trip().isEmpty()) {
            remarks.add("The bank file gives no trip: whether the bank is taken out before the limit is not known.");
        }
        if (alarm.isPresent() && protection.alarm().isEmpty()) {
            remarks.add("The bank file gives no alarm: whether the first failure is noticed is not known.");
        }
    }

    private void ratio(double first, List<String> remarks) {
        protection.ratio().filter(r -> first > 1e-9).ifPresent(r -> {
            double seen = first * r.factor();
            remarks.add("Wrong transformer ratio: one failure should show " + dimension.format(seen) + " at the relay; "
                    + dimension.format(2.0 * seen) + " means half the ratio is fitted, " + dimension.format(0.5 * seen)
                    + " double. A relay set for double the ratio that is fitted reports double the primary value.");
        });
    }

    private String name() {
        return protection.stage() + " " + protection.senses().code();
    }
}
