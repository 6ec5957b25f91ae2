package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.varwright.bank.Bank;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/**
 * What a set of readings says of every unit of a bank.
 *
 * @param bank the bank
 * @param readings what was read, with what could not be used
 * @param settings what was judged with
 * @param units every position of the bank in order, those not measured included
 * @param legs every leg of single-phase units in order
 * @param stages every stage of single-phase units in order
 * @param groups readings of units together
 * @param spots readings at reactors, switch poles, legs and lines
 * @param trends units that were read on earlier visits too
 * @param findings what concerns more than one unit, each one sentence
 */
public record Survey(
        Bank bank,
        Readings readings,
        SurveySettings settings,
        List<UnitSurvey> units,
        List<LegSurvey> legs,
        List<StageSurvey> stages,
        List<GroupSurvey> groups,
        List<SpotSurvey> spots,
        List<Trend> trends,
        List<String> findings) {
    public Survey {
        units = List.copyOf(units);
        legs = List.copyOf(legs);
        stages = List.copyOf(stages);
        groups = List.copyOf(groups);
        spots = List.copyOf(spots);
        trends = List.copyOf(trends);
        findings = List.copyOf(findings);
    }

    /**
     * Judges every unit of a bank by the readings taken on it.
     *
     * @param bank as read
     * @param readings as read
     * @param settings meter, temperature and priors
     */
    public static Survey of(Bank bank, Readings readings, SurveySettings settings) {
        return of(bank, readings, settings, List.of());
    }

    /**
     * The same with what was read on earlier visits.
     *
     * @param earlier oldest first
     */
    public static Survey of(Bank bank, Readings readings, SurveySettings settings, List<Readings> earlier) {
        Instruments instruments = Instruments.of(Gathered.of(bank, readings, settings), settings);
        List<GroupReading> together = GroupReading.of(bank, readings.spots(), instruments.factors(), settings);
        InPlace inPlace = InPlace.solve(instruments.aligned(), together);
        List<Gathered> all = inPlace.units();
        Visits visits = Visits.of(bank, earlier, all, settings);
        References references = new References(all, instruments, visits, settings);
        Serials serials = new Serials(bank, all);
        Judge judge = new Judge(bank, references, settings);
        SideReadings sides = new SideReadings(bank, all);
        Map<UnitPosition, Judge.Opinion> opinions = new LinkedHashMap<>();
        all.forEach(unit -> opinions.put(unit.position(), judge.of(unit, serials.of(unit))));
        Crosswise.apply(all, opinions, judge, settings);
        Map<UnitPosition, UnitSurvey> units = new LinkedHashMap<>();
        List<Trend> trends = new ArrayList<>();
        for (Gathered unit : all) {
            Judge.Opinion opinion = Objects.requireNonNull(opinions.get(unit.position()));
            double healthy = opinion.reference()
                    .map(Reference::farads)
                    .orElse(unit.type().capacitanceFarads());
            Optional<Trend> trend = visits.trend(unit.position(), opinion.farads());
            units.put(unit.position(), join(unit, opinion, sides.of(unit, healthy), judge, trend));
            trend.ifPresent(trends::add);
        }
        Map<UnitPosition, Reference> held = new LinkedHashMap<>();
        units.forEach((position, unit) -> unit.reference().ifPresent(reference -> held.put(position, reference)));
        GroupJudge groupJudge = new GroupJudge(held, together, inPlace, settings);
        List<LegSurvey> legs = Legs.of(bank, units);
        return new Survey(
                bank,
                readings,
                settings,
                List.copyOf(units.values()),
                legs,
                StageSurvey.of(bank, legs),
                together.stream().map(groupJudge::of).toList(),
                new SpotJudge(bank, legs, readings.spots()).all(),
                trends,
                findings(instruments, references));
    }

    /** The unit at a position, by the position's name. */
    public Optional<UnitSurvey> unit(String position) {
        return units.stream()
                .filter(unit -> unit.position().name().equals(position))
                .findFirst();
    }

    /** The largest limits of error of the meters that capacitances were read with, as a part of the reading; 0 where none was read. */
    public double largestMeterLimit() {
        return readings.rows().stream()
                .filter(row -> row.capacitance().isPresent())
                .mapToDouble(row -> settings.meterLimit(row.instrument()))
                .max()
                .orElse(0.0);
    }

    /** Units with a verdict. */
    public List<UnitSurvey> with(UnitVerdict verdict) {
        return units.stream().filter(unit -> unit.verdict() == verdict).toList();
    }

    /** Every check of units, other places and stages. */
    public List<Check> checks() {
        return Stream.of(
                        units.stream().flatMap(unit -> unit.checks().stream()),
                        spots.stream().flatMap(spot -> spot.checks().stream()),
                        stages.stream().map(StageSurvey::check))
                .flatMap(checks -> checks)
                .toList();
    }

    /** Whether no unit must be replaced, no fuse is open, nothing be measured again, and no limit is broken. */
    public boolean isGood() {
        return with(UnitVerdict.REPLACE).isEmpty()
                && with(UnitVerdict.MEASURE_AGAIN).isEmpty()
                && units.stream()
                        .noneMatch(unit -> unit.finding()
                                .filter(SideReadings.FUSE_OPEN::equals)
                                .isPresent())
                && groups.stream().noneMatch(group -> group.verdict() == UnitVerdict.MEASURE_AGAIN)
                && checks().stream().noneMatch(check -> check.verdict() == Verdict.FAIL)
                && spots.stream().noneMatch(spot -> spot.verdict() == Verdict.FAIL);
    }

    private static UnitSurvey join(
            Gathered unit, Judge.Opinion opinion, SideReadings.Outcome sides, Judge judge, Optional<Trend> trend) {
        SideReadings.Outcome side = trend.filter(Trend::drifts)
                .map(t -> sides.and(UnitVerdict.WATCH, "drift", t.sentence()))
                .orElse(sides);
        boolean sideDecides = opinion.verdict() == UnitVerdict.NOT_MEASURED
                ? !unit.rows().isEmpty() && side.atLeast() != UnitVerdict.HEALTHY
                : side.atLeast().worse(opinion.verdict()) != opinion.verdict();
        UnitVerdict verdict = sideDecides ? side.atLeast() : opinion.verdict();
        // a reading that can't be right stays first: the unit is measured again before anything else is believed of it
        String reason =
                sideDecides && !side.remarks().isEmpty() ? side.remarks().getFirst() : opinion.reason();
        List<String> remarks = Stream.concat(
                        opinion.remarks().stream(),
                        Stream.concat(Stream.of(opinion.reason()), side.remarks().stream())
                                .filter(text -> !text.equals(reason)))
                .toList();
        Optional<Hypothesis> explanation = opinion.explanation();
        int shorted =
                explanation.isPresent() && explanation.get() instanceof Hypothesis.SectionsShorted s ? s.count() : 0;
        int out = explanation.isPresent() && explanation.get() instanceof Hypothesis.ElementsOut e ? e.count() : 0;
        double perHealthy = explanation.map(Hypothesis::voltageLeft).orElse(1.0);
        return new UnitSurvey(
                unit.position(),
                unit.serial(),
                unit.rows().stream().map(ReadingRow::row).toList(),
                opinion.farads(),
                opinion.reference().isPresent()
                        ? OptionalDouble.of(opinion.reference().get().farads())
                        : OptionalDouble.empty(),
                opinion.reference(),
                verdict,
                sideDecides ? 1.0 : opinion.probability(),
                shorted,
                out,
                perHealthy,
                perHealthy * judge.serviceVolts(unit) / unit.type().legVolts(),
                opinion.finding()
                        .or(() -> side.findings().stream()
                                .filter(SideReadings.FUSE_OPEN::equals)
                                .findFirst())
                        .or(() -> side.findings().stream().findFirst()),
                reason,
                remarks,
                opinion.posterior(),
                side.checks(),
                opinion.basis());
    }

    private static List<String> findings(Instruments instruments, References references) {
        List<String> findings = new ArrayList<>(instruments.findings());
        references.commonErrors().forEach((instrument, factor) -> {
            if (Math.abs(factor - 1.0) >= 0.002) {
                findings.add("All readings" + (instrument.isEmpty() ? "" : " of " + instrument) + " are "
                        + Reasons.deviation(factor)
                        + " the earlier values alike: meter or temperature, not the units; it was taken out.");
            }
        });
        references
                .misprints()
                .forEach(misprint ->
                        findings.add("Units of type " + misprint.type().name()
                                + " agree with each other at " + Reasons.deviation(misprint.ratio())
                                + " what their nameplate gives (" + misprint.words()
                                + "): nameplate misprint; judged by their mates."));
        return findings;
    }
}
