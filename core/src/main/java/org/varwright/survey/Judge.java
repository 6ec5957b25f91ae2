package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.LegLayout;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.quantity.Dimension;

/** Comes to a verdict on the capacitance of one unit. */
final class Judge {
    /** From this probability on something is said to be so. */
    static final double SURE = 0.8;

    /** From this probability on a slip of the reading can't be left aside. */
    static final double DOUBT = 0.2;

    /** From this probability on a failure is named beside a healthy verdict. */
    private static final double WORTH_SAYING = 0.01;

    /** Highest continuous voltage on what is left inside, as a multiple of rated (IEEE Std 18; IEC 60871-1). */
    private static final double HIGHEST_PER_RATED = 1.10;

    private final Bank bank;
    private final References references;
    private final SurveySettings settings;

    Judge(Bank bank, References references, SurveySettings settings) {
        this.bank = bank;
        this.references = references;
        this.settings = settings;
    }

    /**
     * A verdict on the capacitance alone.
     *
     * @param farads the reading used; empty where none can be
     */
    record Opinion(
            UnitVerdict verdict,
            double probability,
            OptionalDouble farads,
            Optional<Reference> reference,
            Optional<Hypothesis> explanation,
            Optional<String> finding,
            String reason,
            List<String> remarks,
            Optional<Posterior> posterior,
            Basis basis) {}

    Opinion of(Gathered unit, Serials.Finding serial) {
        Optional<Opinion> byName = bySerial(unit, serial);
        if (byName.isPresent()) {
            return byName.get();
        }
        Reference reference =
                references.of(unit, serial instanceof Serials.Finding.Changed ? Optional.empty() : unit.known());
        List<String> remarks = new ArrayList<>();
        if (serial instanceof Serials.Finding.Changed changed) {
            remarks.add("Serial number " + changed.serial() + " is not the one on file ("
                    + unit.known().flatMap(KnownUnit::serial).orElse("none")
                    + "): a unit fitted since; its earlier value does not count.");
        }
        List<String> legs = List.copyOf(new LinkedHashSet<>(
                unit.takes().stream().map(Gathered.Take::leg).toList()));
        if (legs.isEmpty()) {
            return notJudged(
                    unit,
                    UnitVerdict.NOT_MEASURED,
                    "",
                    "No capacitance was read.",
                    OptionalDouble.empty(),
                    Optional.of(reference),
                    remarks);
        }
        Opinion worst = leg(unit, legs.getFirst(), reference, remarks);
        for (String leg : legs.subList(1, legs.size())) {
            Opinion opinion = leg(unit, leg, reference, remarks);
            if (opinion.verdict().worse(worst.verdict()) != worst.verdict()) {
                worst = opinion;
            }
        }
        return worst;
    }

    private Optional<Opinion> bySerial(Gathered unit, Serials.Finding serial) {
        OptionalDouble read = unit.middle();
        Optional<Reference> reference = Optional.of(references.of(unit, unit.known()));
        return switch (serial) {
            case Serials.Finding.AsKnown ignored -> Optional.empty();
            case Serials.Finding.Changed ignored -> Optional.empty();
            case Serials.Finding.Swapped swapped ->
                Optional.of(notJudged(
                        unit,
                        UnitVerdict.MEASURE_AGAIN,
                        "positions-swapped",
                        "The serial numbers read here and at " + swapped.with().name()
                                + " are exchanged against the bank file: rows or units are swapped; look at the nameplates.",
                        read,
                        reference,
                        List.of()));
            case Serials.Finding.Elsewhere elsewhere ->
                Optional.of(notJudged(
                        unit,
                        UnitVerdict.MEASURE_AGAIN,
                        "wrong-serial",
                        "The serial number read here belongs to "
                                + elsewhere.belongsAt().name() + " by the bank file; look at the nameplate.",
                        read,
                        reference,
                        List.of()));
            case Serials.Finding.Twice twice ->
                Optional.of(notJudged(
                        unit,
                        UnitVerdict.MEASURE_AGAIN,
                        "serial-twice",
                        "The same serial number was read at " + twice.other().name() + " too; look at both nameplates.",
                        read,
                        reference,
                        List.of()));
        };
    }

    private Opinion leg(Gathered unit, String leg, Reference reference, List<String> before) {
        List<String> remarks = new ArrayList<>(before);
        List<Gathered.Take> takes =
                unit.takes().stream().filter(take -> take.leg().equals(leg)).toList();
        if (leg.endsWith(" alone")) {
            remarks.add("Only " + leg.substring(0, leg.length() - " alone".length())
                    + " was read: the other legs were taken as equal; read all three.");
        }
        List<Hypothesis.Prior> priors = Hypothesis.of(unit.type(), together(unit), settings.priors());
        List<Gathered.Take> usable = new ArrayList<>();
        List<String> setAside = new ArrayList<>();
        for (Gathered.Take take : takes) {
            boolean plain = take.farads().isPresent();
            boolean possible = plain
                    && Posterior.ofAbsolute(take.farads().getAsDouble(), take.sigmaFarads(), reference, priors)
                                    .of(Hypothesis.Kind.IMPOSSIBLE)
                            < 0.5;
            if (possible || takes.size() == 1) {
                usable.add(take);
            } else {
                setAside.add("row " + take.row() + " (" + take.measured().raw() + ")");
            }
        }
        if (usable.isEmpty()) {
            usable.add(takes.getLast());
            setAside.removeLast();
        }
        if (!setAside.isEmpty()) {
            remarks.add("Set aside as impossible: " + String.join(", ", setAside) + "; taken again in row "
                    + usable.getLast().row() + ".");
        }
        if (usable.getFirst().farads().isEmpty()) {
            return overRange(unit, usable.getFirst().measured(), reference, remarks);
        }
        Combined combined = Combined.of(usable);
        for (Gathered.Take take : usable) {
            double limit = Math.sqrt(3.0) * take.sigmaFarads();
            if (Math.abs(take.farads().orElse(0.0) - combined.farads()) > 2.0 * limit) {
                return notJudged(
                        unit,
                        UnitVerdict.MEASURE_AGAIN,
                        "readings-disagree",
                        "Readings of this unit disagree: "
                                + String.join(
                                        " and ",
                                        usable.stream()
                                                .map(t -> farads(t.farads().orElse(0.0)) + " (row " + t.row() + ")")
                                                .toList())
                                + ".",
                        OptionalDouble.of(combined.farads()),
                        Optional.of(reference),
                        remarks);
            }
        }
        return judged(unit, leg, combined, reference, priors, remarks);
    }

    private Opinion judged(
            Gathered unit,
            String leg,
            Combined reading,
            Reference reference,
            List<Hypothesis.Prior> priors,
            List<String> remarks) {
        double farads = reading.farads();
        Posterior posterior = Posterior.ofAbsolute(farads, reading.sigmaFarads(), reference, priors);
        double healthy = posterior.of(Hypothesis.Kind.HEALTHY);
        double failed = posterior.of(Hypothesis.Kind.FAILED);
        double impossible = posterior.of(Hypothesis.Kind.IMPOSSIBLE);
        Posterior.Weighted slip = posterior.best(Hypothesis.Kind.IMPOSSIBLE);
        String what = (leg.isEmpty() || leg.endsWith(" alone") ? "" : "Leg " + leg + " of the unit: ") + farads(farads)
                + " is " + Reasons.deviation(farads / reference.farads()) + " " + reference.words();
        UnitVerdict verdict;
        double probability;
        Optional<Hypothesis> explanation;
        Optional<String> finding = Optional.empty();
        String reason;
        if (healthy >= SURE) {
            verdict = UnitVerdict.HEALTHY;
            probability = healthy;
            explanation = Optional.of(new Hypothesis.Healthy());
            reason = what + ", as a healthy unit would"
                    + (failed >= WORTH_SAYING
                            ? "; all the same, "
                                    + Reasons.failure(posterior
                                            .best(Hypothesis.Kind.FAILED)
                                            .hypothesis()) + " by " + Reasons.percent(failed)
                            : "")
                    + "." + Reasons.blind(unit.type(), reference, reading.sigma());
        } else if (impossible >= 0.5 || (failed < SURE && impossible >= DOUBT)) {
            verdict = UnitVerdict.MEASURE_AGAIN;
            probability = impossible;
            explanation = Optional.of(slip.hypothesis());
            finding = Optional.of(Reasons.code(slip.hypothesis()));
            reason = what + ": " + Reasons.slip(slip.hypothesis())
                    + (failed > 0.1
                            ? "; or "
                                    + Reasons.failure(posterior
                                            .best(Hypothesis.Kind.FAILED)
                                            .hypothesis()) + " (" + Reasons.percent(failed) + ")"
                            : "")
                    + ".";
        } else {
            Hypothesis failure = posterior.best(Hypothesis.Kind.FAILED).hypothesis();
            double perRated =
                    failure.voltageLeft() * serviceVolts(unit) / unit.type().legVolts();
            double atHighest = perRated
                    * bank.system().maximumVolts().orElse(bank.system().nominalVolts())
                    / bank.system().nominalVolts();
            boolean outOnly = failure instanceof Hypothesis.ElementsOut;
            boolean bearable = outOnly && atHighest <= HIGHEST_PER_RATED * (1.0 + 1e-9);
            verdict = failed >= SURE && !bearable ? UnitVerdict.REPLACE : UnitVerdict.WATCH;
            probability = failed;
            explanation = Optional.of(failure);
            reason = failed >= SURE
                    ? what + ": " + Reasons.failure(failure) + "; what is left inside bears "
                            + Reasons.times(failure.voltageLeft()) + " its healthy voltage, " + Reasons.times(perRated)
                            + " rated"
                            + (outOnly && bank.system().maximumVolts().isPresent()
                                    ? " at nominal voltage and " + Reasons.times(atHighest)
                                            + " at the highest of the system"
                                    : "")
                            + (bearable ? ", which it may." : outOnly ? ": more than it may." : ".")
                    : what + ": " + Reasons.failure(failure) + " by " + Reasons.percent(failed) + ", healthy by "
                            + Reasons.percent(healthy) + "; measure with a better meter or against an earlier value.";
        }
        return new Opinion(
                verdict,
                probability,
                OptionalDouble.of(farads),
                Optional.of(reference),
                explanation,
                finding,
                reason,
                List.copyOf(remarks),
                Optional.of(posterior),
                basis(reading, reference, priors));
    }

    private Opinion overRange(Gathered unit, Measured measured, Reference reference, List<String> remarks) {
        boolean below = measured instanceof Measured.Below;
        return notJudged(
                unit,
                UnitVerdict.MEASURE_AGAIN,
                below ? "leads-open" : "over-range",
                below
                        ? "The meter shows " + measured.raw() + ": " + Reasons.slip(new Hypothesis.LeadsOpen()) + "."
                        : "The meter shows " + measured.raw()
                                + ": leads touch, the range is too small, or the unit is shorted through; part the leads and"
                                + " measure again, and if it stays the unit is shorted.",
                OptionalDouble.empty(),
                Optional.of(reference),
                remarks);
    }

    Opinion notJudged(
            Gathered unit,
            UnitVerdict verdict,
            String finding,
            String reason,
            OptionalDouble farads,
            Optional<Reference> reference,
            List<String> remarks) {
        return new Opinion(
                verdict,
                verdict == UnitVerdict.NOT_MEASURED ? 0.0 : 1.0,
                farads,
                reference,
                Optional.empty(),
                finding.isEmpty() ? Optional.empty() : Optional.of(finding),
                reason,
                List.copyOf(remarks),
                Optional.empty(),
                new Basis(
                        "SRV-7",
                        "not judged: " + (finding.isEmpty() ? unit.position().name() + " not measured" : finding),
                        List.of(),
                        Source.COMMON_PRACTICE));
    }

    /** Numbers of units that may have been measured together: those in parallel, and all three legs where the line ends are joined. */
    private static List<Integer> together(Gathered unit) {
        LegLayout layout = unit.stage().layoutOf(unit.position().leg());
        int parallel = layout.units() * (layout.groups() == 1 ? layout.strings() : 1);
        List<Integer> numbers = new ArrayList<>();
        for (int n = 2; n <= parallel; n++) {
            numbers.add(n);
        }
        if (layout.groups() == 1
                && !unit.stage().connection().isBridge()
                && !unit.position().leg().isEmpty()
                && 3 * parallel > parallel + 1) {
            numbers.add(3 * parallel);
        }
        return numbers;
    }

    /** Voltage across one leg of the unit in service at nominal voltage [V]. */
    double serviceVolts(Gathered unit) {
        boolean delta = unit.type()
                .threePhase()
                .map(inside -> inside == InternalConnection.DELTA)
                .orElse(unit.stage().connection() == Connection.DELTA);
        double leg = delta ? bank.system().nominalVolts() : bank.system().phaseVolts();
        int series = unit.stage().layoutOf(unit.position().leg()).groups()
                * (unit.stage().connection().isBridge() ? 2 : 1);
        return leg / series;
    }

    private Basis basis(Combined reading, Reference reference, List<Hypothesis.Prior> priors) {
        List<Term> terms = new ArrayList<>(List.of(
                new Term("m", "reading, corrected for temperature", reading.farads(), "F"),
                new Term("c", reference.words(), reference.farads(), "F"),
                new Term("σ_c", "how well that is known, as a part of it", reference.relativeSigma(), ""),
                new Term("u", "standard uncertainty of the meter, limits of error over √3", reading.sigma(), "")));
        double shorted = 0.0;
        double out = 0.0;
        double slips = 0.0;
        for (Hypothesis.Prior prior : priors) {
            switch (prior.hypothesis()) {
                case Hypothesis.Healthy ignored ->
                    terms.add(new Term("P(healthy)", "before the reading", prior.weight(), ""));
                case Hypothesis.SectionsShorted ignored -> shorted += prior.weight();
                case Hypothesis.ElementsOut ignored -> out += prior.weight();
                case Hypothesis.LeadsOpen ignored -> slips += prior.weight();
                case Hypothesis.WrongRange ignored -> slips += prior.weight();
                case Hypothesis.NeighbourConnected ignored -> slips += prior.weight();
                case Hypothesis.WrongTerminals ignored -> slips += prior.weight();
                case Hypothesis.FitsNothing ignored -> slips += prior.weight();
            }
        }
        terms.add(new Term("P(sections shorted)", "before the reading", shorted, ""));
        terms.add(new Term("P(elements out)", "before the reading", out, ""));
        terms.add(new Term("P(slip)", "before the reading", slips, ""));
        return new Basis(
                "SRV-4",
                "P(h|m) ∝ P(h)·∫p(c)·N(m; f_h·c, σ²)dc",
                terms,
                Source.commonPractice("Bayes' rule; priors: common practice, no source"));
    }

    private static String farads(double farads) {
        return Dimension.CAPACITANCE.format(farads);
    }
}
