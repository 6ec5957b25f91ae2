package org.varwright.fuse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.FuseType;
import org.varwright.bank.SystemGrounding;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/** Holds one fuse against what its place asks in service: current, voltage, stored energy, interrupting rating. */
final class FuseJudge {
    private static final Source PAPER = Source.unchecked(
            "IEEE Std C37.99: expulsion fuses, 10 kJ with older paper-film units, 15 kJ with all-film units");
    private static final double PAPER_JOULES = 10e3;
    private static final double FILM_JOULES = 15e3;

    private final Demand demand;
    private final FuseType fuse;
    private final Optional<Link> link;
    private final OptionalDouble carries;
    private final String name;
    private final List<Check> checks = new ArrayList<>();
    private final List<Unanswered> missing = new ArrayList<>();

    FuseJudge(Demand demand, FuseType fuse, Optional<Link> link, OptionalDouble carries, String name) {
        this.demand = demand;
        this.fuse = fuse;
        this.link = link;
        this.carries = carries;
        this.name = name;
    }

    List<Check> checks() {
        return checks;
    }

    List<Unanswered> missing() {
        return missing;
    }

    void judge(Optional<ParallelEnergy> energy) {
        if (carries.isEmpty()) {
            missing.add(
                    new Unanswered("rating of fuse type " + fuse.name(), "whether it carries the current of service"));
        } else if (demand.service().isEmpty()) {
            missing.add(new Unanswered(
                    "a solution of " + demand.stage().name() + " in good order (look at reactor and frequency)",
                    "whether fuse type " + fuse.name() + " carries its current"));
        } else {
            rating(carries.getAsDouble(), demand.service().get());
            ownData(carries.getAsDouble(), demand.service().get());
        }
        voltage();
        energy.ifPresent(this::energy);
        interrupting();
    }

    private void rating(double carriesAmperes, ServiceCurrent service) {
        RatingRule rule = demand.rule();
        double needed = rule.least() * service.ruleAmperes();
        boolean edge = RatingRule.isAtEdge(carriesAmperes, needed);
        String what = name + ": carries " + digits(rule.least()) + " times "
                + (demand.place() == FusePlace.UNIT ? "the unit's rated current" : "the line's current");
        List<Term> terms = new ArrayList<>(List.of(
                new Term("k", "multiple by the rule", rule.least(), ""),
                new Term("I", "current in service by the nameplates", service.ruleAmperes(), "A")));
        if (link.isPresent()) {
            terms.add(new Term("I_link", "rating of the link", carriesAmperes / Link.CARRIES, "A"));
            terms.add(new Term("c", Link.CARRIES_SOURCE.print(), Link.CARRIES, ""));
        }
        Verdict verdict = edge ? Verdict.WARN : carriesAmperes > needed ? Verdict.PASS : Verdict.FAIL;
        checks.add(new Check(
                edge ? what + "; exactly at the edge, nothing left for tolerance" : what,
                carriesAmperes,
                needed,
                "A",
                verdict,
                new Basis("FUS-5", link.isPresent() ? "c·I_link ≥ k·I" : "I_fuse ≥ k·I", terms, rule.source())));
        if (rule.most().isPresent() && link.isEmpty()) {
            double most = rule.most().getAsDouble() * service.ruleAmperes();
            checks.add(new Check(
                    name + ": not larger than " + digits(rule.most().getAsDouble()) + " times that",
                    carriesAmperes,
                    most,
                    "A",
                    carriesAmperes <= most * (1.0 + RatingRule.EDGE) ? Verdict.PASS : Verdict.WARN,
                    new Basis(
                            "FUS-5",
                            "I_fuse ≤ k·I",
                            List.of(
                                    new Term(
                                            "k",
                                            "multiple by the rule",
                                            rule.most().getAsDouble(),
                                            ""),
                                    new Term("I", "current in service by the nameplates", service.ruleAmperes(), "A")),
                            rule.source())));
        }
    }

    private void ownData(double carriesAmperes, ServiceCurrent service) {
        double worst = service.worstAmperes();
        checks.add(new Check(
                name + ": carries the most that this bank's own data give"
                        + (RatingRule.isAtEdge(carriesAmperes, worst) ? "; exactly at the edge" : ""),
                carriesAmperes,
                worst,
                "A",
                RatingRule.isAtEdge(carriesAmperes, worst)
                        ? Verdict.WARN
                        : carriesAmperes > worst ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        "FUS-7",
                        "h times the largest current of the healthy network at V, capacitances as on file or (1 + tol) of nameplate",
                        service.terms(),
                        Source.FIRST_PRINCIPLES)));
        if (demand.bank().system().maximumVolts().isEmpty()) {
            missing.add(new Unanswered(
                    "system.maximum-voltage", "currents and voltages at the highest voltage; nominal was taken"));
        }
    }

    private void voltage() {
        if (fuse.ratedVolts().isEmpty()) {
            missing.add(new Unanswered(
                    "voltage of fuse type " + fuse.name(), "whether it holds off the voltage once it is open"));
            return;
        }
        double lineVolts = demand.bank().system().nominalVolts() * demand.highOverNominal();
        if (demand.place() == FusePlace.LINE) {
            boolean phase = demand.stage().connection().isGrounded()
                    && demand.bank().system().grounding() == SystemGrounding.SOLID;
            double limit = phase ? lineVolts / Math.sqrt(3.0) : lineVolts;
            add(
                    ": rated for the voltage across it when open",
                    fuse.ratedVolts().getAsDouble(),
                    limit,
                    new Basis(
                            "FUS-8",
                            phase ? "V_fuse ≥ V/√3" : "V_fuse ≥ V",
                            List.of(new Term(
                                    "V", "highest line voltage of the bank file, else nominal", lineVolts, "V")),
                            Source.commonPractice(
                                    phase
                                            ? "neutrals of system and bank on ground: line to ground"
                                            : "line to line where neutral or system floats")));
            return;
        }
        double rated = demand.stage().unit().legVolts();
        double open = demand.found()
                .flatMap(FullShort::openVolts)
                .map(v -> v * demand.highOverNominal())
                .orElse(0.0);
        add(
                ": rated for the voltage across it when open",
                fuse.ratedVolts().getAsDouble(),
                Math.max(rated, open),
                new Basis(
                        "FUS-8",
                        "V_fuse ≥ max(V_rated, V_open)",
                        List.of(
                                new Term("V_rated", "rated voltage of the unit", rated, "V"),
                                new Term(
                                        "V_open",
                                        open > 0.0
                                                ? "across the open fuse with the shorted unit behind it"
                                                : "not known: the group has no other unit and floats, or the fault is not known",
                                        open,
                                        "V")),
                        Source.FIRST_PRINCIPLES));
    }

    private void energy(ParallelEnergy energy) {
        double joules = energy.groupJoules(ParallelEnergy.HIGH);
        String subject = name + ": energy of "
                + (energy.units().wholeBank() == 1.0
                        ? "a lone unit"
                        : digits(energy.units().wholeBank()) + " units in parallel")
                + " at 1.1 times peak";
        if (fuse.maximumParallelJoules().isPresent()) {
            double limit = fuse.maximumParallelJoules().getAsDouble();
            checks.add(new Check(
                    subject,
                    joules,
                    limit,
                    "J",
                    joules <= limit ? Verdict.PASS : Verdict.FAIL,
                    energy.basis(ParallelEnergy.HIGH, Source.published("maximum-parallel-energy in the bank file"))));
        } else if (fuse.kind() == FuseType.Kind.EXPULSION) {
            boolean paper = joules <= PAPER_JOULES;
            checks.add(new Check(
                    subject + (paper || joules > FILM_JOULES ? "" : "; only if the units are all-film"),
                    joules,
                    paper ? PAPER_JOULES : FILM_JOULES,
                    "J",
                    paper ? Verdict.PASS : joules <= FILM_JOULES ? Verdict.WARN : Verdict.FAIL,
                    energy.basis(ParallelEnergy.HIGH, PAPER)));
        } else {
            missing.add(new Unanswered(
                    "maximum-parallel-energy of fuse type " + fuse.name(),
                    "whether it stands the energy of the units beside (" + Math.round(joules) + " J)"));
        }
    }

    /** A unit fuse interrupts the current of a shorted unit; a line fuse also a short circuit between itself and the stage. */
    private void interrupting() {
        OptionalDouble current = demand.place() == FusePlace.UNIT ? demand.faultAmperes() : busAmperes();
        if (fuse.interruptingAmperes().isEmpty()) {
            missing.add(new Unanswered(
                    "interrupting of fuse type " + fuse.name(),
                    "whether it interrupts the current of a short circuit"));
        }
        if (current.isEmpty()) {
            missing.add(
                    demand.place() == FusePlace.LINE
                            ? new Unanswered("system.short-circuit", "the current that a line fuse must interrupt")
                            : new Unanswered(
                                    switch (demand.fault()) {
                                        case FullShort.Result.NotKnown(String why) -> why;
                                        case FullShort.Result.Found found -> "";
                                    },
                                    "the current into a shorted unit, and every time that follows from it"));
        }
        if (fuse.interruptingAmperes().isPresent() && current.isPresent()) {
            double rating = fuse.interruptingAmperes().getAsDouble();
            checks.add(new Check(
                    name + ": interrupting rating",
                    rating,
                    current.getAsDouble(),
                    "A",
                    rating >= current.getAsDouble() ? Verdict.PASS : Verdict.FAIL,
                    new Basis(
                            "FUS-11",
                            demand.place() == FusePlace.UNIT ? "I_int ≥ I_short" : "I_int ≥ S_sc/(√3·V)",
                            List.of(new Term(
                                    demand.place() == FusePlace.UNIT ? "I_short" : "I_sc",
                                    demand.place() == FusePlace.UNIT
                                            ? "current into a shorted unit, symmetrical"
                                            : "short-circuit current of the bus, symmetrical",
                                    current.getAsDouble(),
                                    "A")),
                            Source.FIRST_PRINCIPLES)));
        }
    }

    private OptionalDouble busAmperes() {
        OptionalDouble level = demand.bank().system().shortCircuitVoltAmperes();
        return level.isPresent()
                ? OptionalDouble.of(level.getAsDouble()
                        / (Math.sqrt(3.0) * demand.bank().system().nominalVolts()))
                : OptionalDouble.empty();
    }

    private void add(String subject, double value, double least, Basis basis) {
        checks.add(new Check(
                name + subject, value, least, "V", value >= least * (1.0 - 1e-9) ? Verdict.PASS : Verdict.FAIL, basis));
    }

    private static String digits(double value) {
        return Dimension.digits(value, 3);
    }
}
