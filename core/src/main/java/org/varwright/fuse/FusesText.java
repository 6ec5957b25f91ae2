package org.varwright.fuse;

import java.util.ArrayList;
import java.util.List;
import org.varwright.basis.Check;
import org.varwright.basis.CheckText;
import org.varwright.basis.Verdict;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link Fuses} as text for people: 100 columns, to be printed and taken to site. */
public final class FusesText {
    private FusesText() {}

    public static String of(Fuses fuses) {
        Page page = new Page();
        page.heading("Fuses  " + fuses.bank().name());
        page.text(summary(fuses));
        fuses.unfused().forEach(stage -> page.text(FuseNotes.unfused(stage)));
        for (FuseStudy study : fuses.studies()) {
            study(page, fuses, study);
        }
        if (!fuses.studies().isEmpty()) {
            page.heading("Checks");
            CheckText.add(page, fuses.checks());
        }
        if (!fuses.notAnswered().isEmpty()) {
            page.heading("Not answered");
            fuses.notAnswered().forEach(m -> page.item("  - ", m.print() + "."));
        }
        List<String> cautions = FuseNotes.cautions(fuses);
        if (!cautions.isEmpty()) {
            page.heading("Cautions");
            cautions.forEach(c -> page.item("  - ", c));
        }
        return page.print();
    }

    private static String summary(Fuses fuses) {
        if (fuses.studies().isEmpty()) {
            return "No fuse stands in the bank file.";
        }
        List<Check> checks = fuses.checks();
        long fail = checks.stream().filter(c -> c.verdict() == Verdict.FAIL).count();
        long warn = checks.stream().filter(c -> c.verdict() == Verdict.WARN).count();
        return checks.size() + " checks: " + fail + " fail, " + warn + " warn. "
                + (fuses.notAnswered().size() == 1
                        ? "1 question"
                        : fuses.notAnswered().size() + " questions")
                + " could not be answered: see \"Not answered\".";
    }

    private static void study(Page page, Fuses fuses, FuseStudy study) {
        page.blank()
                .text(study.name() + ", "
                        + fuses.bank().words().connection(study.stage().connection()));
        page.row("carries for good", carries(study));
        page.row("must carry", needs(study));
        switch (study.fault()) {
            case FullShort.Result.Found(FullShort fault) -> fault(page, study, fault);
            case FullShort.Result.NotKnown(String missing) ->
                page.row("with a unit shorted", "not known; missing: " + missing);
        }
        study.energy().ifPresent(e -> energy(page, e));
        study.inrushAmpereSquaredSeconds()
                .ifPresent(i2t -> page.row("inrush", Dimension.digits(i2t, 3) + " A²s at worst"));
        List<String> said = new ArrayList<>();
        for (boolean better : List.of(true, false)) {
            for (Proposal proposal : study.proposals()) {
                if (proposal.recommended() == better) {
                    proposal(page, proposal, said);
                    said.addAll(proposal.left());
                }
            }
        }
    }

    private static String carries(FuseStudy study) {
        if (study.carriesAmperes().isEmpty()) {
            return "not known";
        }
        double carries = study.carriesAmperes().getAsDouble();
        return amperes(carries)
                + (study.link().isPresent()
                        ? "   (" + Dimension.digits(Link.CARRIES, 3) + " times the link's "
                                + amperes(carries / Link.CARRIES) + ")"
                        : "");
    }

    private static String needs(FuseStudy study) {
        if (study.service().isEmpty()) {
            return "not known";
        }
        ServiceCurrent service = study.service().get();
        return amperes(study.neededAmperes().orElseThrow()) + " by the rule ("
                + Dimension.digits(study.rule().least(), 3) + " times " + amperes(service.ruleAmperes()) + "); "
                + amperes(service.worstAmperes()) + " at most by the bank's own data"
                + (service.harmonicFactor() > 1.0
                        ? " (harmonics: " + Dimension.digits(service.harmonicFactor(), 3) + " times)"
                        : "");
    }

    private static void fault(Page page, FuseStudy study, FullShort fault) {
        double through = study.faultAmperes().orElseThrow();
        double before = study.place() == FusePlace.UNIT ? fault.healthyUnitAmperes() : fault.healthyLineAmperes();
        page.row(
                "with a unit shorted",
                amperes(through) + " through it, " + Dimension.digits(through / before, 3) + " times what it carried"
                        + (fault.source() ? "" : "   (bus taken as stiff)"));
        page.row("melts, clears", times(study.curve(), through));
        page.row(
                "the others bear",
                Dimension.digits(fault.highestPerRated(), 3) + " times rated voltage, on "
                        + fault.highestUnit().name() + ", at nominal voltage");
    }

    private static String times(FuseCurve curve, double amperes) {
        FuseTime earliest = curve.earliest(amperes);
        FuseTime melting = curve.melting(amperes);
        List<String> parts = new ArrayList<>();
        if (earliest.isKnown()) {
            parts.add("none before " + Dimension.TIME.format(earliest.seconds(), 2)
                    + (melting.bound() == FuseTime.Bound.AT_LEAST ? " by its I²t" : ""));
        }
        if (melting.isKnown() && melting.bound() != FuseTime.Bound.AT_LEAST) {
            parts.add("the quickest by the table " + FuseNotes.time(melting));
        }
        parts.add("all have cleared: " + FuseNotes.time(curve.clearing(amperes)));
        return String.join("; ", parts);
    }

    private static void energy(Page page, ParallelEnergy energy) {
        page.row(
                "units in parallel",
                Dimension.digits(energy.units().wholeBank(), 4) + ": "
                        + joules(energy.groupJoules(1.0)) + " at rated peak, "
                        + joules(energy.groupJoules(ParallelEnergy.HIGH)) + " at 1.1 times; of these "
                        + joules(energy.neighbourJoules(ParallelEnergy.HIGH))
                        + " through the fuse of a shorted unit"
                        + (energy.units().throughBus() ? " (other stages through the bus)" : ""));
        Outrush outrush = energy.outrush();
        if (outrush.peakAmperes().isPresent() && outrush.neighbours() > 0) {
            List<String> parts = new ArrayList<>();
            parts.add(amperes(outrush.peakAmperes().getAsDouble()) + " peak");
            if (outrush.hertz().isPresent()) {
                parts.add(Dimension.FREQUENCY.format(outrush.hertz().getAsDouble(), 3));
            }
            page.row("outrush", String.join(", ", parts) + " in the shorted unit's fuse");
        }
    }

    /** @param said what stands already under the better type */
    private static void proposal(Page page, Proposal proposal, List<String> said) {
        String label = !proposal.recommended()
                ? "of type " + proposal.type()
                : proposal.verdict() == Verdict.FAIL ? "best of the table" : "suits";
        page.row(label, proposal.link().map(l -> l.name() + ": ").orElse("") + proposal.why());
        proposal.left().stream().filter(l -> !said.contains(l)).forEach(l -> page.row("", "but " + l));
        proposal.notSmaller().ifPresent(why -> page.row("", why));
        proposal.notLarger().ifPresent(why -> page.row("", why));
    }

    private static String amperes(double value) {
        return Dimension.CURRENT.format(value, 3);
    }

    private static String joules(double value) {
        return Dimension.ENERGY.format(value, 3);
    }
}
