package org.varwright.switching;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.network.Capacitances;

/**
 * What switching the stages of a bank does.
 *
 * @param bank the bank
 * @param request what was asked
 * @param lineVolts voltage that was counted with, line to line [V]
 * @param cases closings, in the order of the file
 * @param opened the opening that was asked for; empty where a closing was
 * @param outrush into a fault at the bus; empty where an opening was asked for
 * @param remedies inductance for closings that are outside their switch's rating
 * @param checks values against limits
 * @param gaps what the file doesn't say, and the effect
 */
public record Inrush(
        Bank bank,
        InrushRequest request,
        double lineVolts,
        List<InrushCase> cases,
        Optional<Opened> opened,
        Optional<Outrush> outrush,
        List<Remedy> remedies,
        List<Check> checks,
        List<Gap> gaps) {
    public Inrush {
        cases = List.copyOf(cases);
        remedies = List.copyOf(remedies);
        checks = List.copyOf(checks);
        gaps = List.copyOf(gaps);
    }

    /** How far the answer goes. */
    public enum Answer {
        /** Everything asked for was computed and nothing is outside a limit that the file gives. */
        GOOD,
        /** A limit is broken. */
        BAD,
        /** Something that was asked for could not be computed. */
        UNANSWERED
    }

    /**
     * What switching does.
     *
     * @param bank as read
     * @param request what is asked
     */
    public static Inrush of(Bank bank, InrushRequest request) {
        Source source = Source.of(bank.system());
        Capacitances capacitances = Capacitances.known(bank);
        List<SwitchedStage> stages = bank.stages().stream()
                .map(s -> SwitchedStage.of(s, capacitances))
                .toList();
        Set<Gap> gaps = new LinkedHashSet<>(source.gaps());
        if (request.opening()) {
            return opening(bank, request, source, stages, gaps);
        }
        List<InrushCase> cases = new ArrayList<>();
        List<Remedy> remedies = new ArrayList<>();
        for (SwitchedStage stage : stages) {
            if (request.stage().filter(s -> !s.equals(stage.name())).isPresent()) {
                continue;
            }
            for (List<SwitchedStage> on : sets(request, stage, stages)) {
                CaseStudy study = new CaseStudy(source, stage, on, request);
                gaps.addAll(stage.path().gaps());
                on.forEach(s -> gaps.addAll(s.path().gaps()));
                InrushCase found = study.find();
                cases.add(found);
                bank.switchOf(stage.stage())
                        .flatMap(org.varwright.bank.Device::type)
                        .flatMap(type -> study.remedy(found, type))
                        .ifPresent(remedies::add);
            }
        }
        Optional<Outrush> outrush = Optional.of(OutrushStudy.of(source, stages));
        InrushChecks checks = new InrushChecks(bank, source, stages, cases);
        List<Check> all = new ArrayList<>(checks.of());
        all.addAll(checks.of(outrush.orElseThrow()));
        gaps.addAll(checks.gaps());
        return new Inrush(
                bank, request, source.lineVolts(), cases, Optional.empty(), outrush, remedies, all, Gap.merged(gaps));
    }

    private static Inrush opening(
            Bank bank, InrushRequest request, Source source, List<SwitchedStage> stages, Set<Gap> gaps) {
        SwitchedStage stage = stages.stream()
                .filter(s -> s.name().equals(request.stage().orElseThrow()))
                .findFirst()
                .orElseThrow();
        List<SwitchedStage> on = sets(request, stage, stages).getLast();
        gaps.addAll(stage.path().gaps());
        on.forEach(s -> gaps.addAll(s.path().gaps()));
        Optional<Opened> opened = Optional.empty();
        if (CaseStudy.obstacle(source, stage, on).isEmpty()) {
            opened = Optional.of(OpeningStudy.of(source, stage, on, Path.LEAST_PER_METRE, request.restrikes()));
        }
        List<Check> checks =
                opened.map(o -> InrushChecks.opened(stage.stage(), o)).orElse(List.of());
        return new Inrush(
                bank,
                request,
                source.lineVolts(),
                List.of(),
                opened,
                Optional.empty(),
                List.of(),
                checks,
                Gap.merged(gaps));
    }

    /** Which stages are on: as asked, else none and all others. */
    private static List<List<SwitchedStage>> sets(
            InrushRequest request, SwitchedStage stage, List<SwitchedStage> stages) {
        if (request.onto().isPresent()) {
            List<String> names = request.onto().get();
            return List.of(stages.stream().filter(s -> names.contains(s.name())).toList());
        }
        List<SwitchedStage> others =
                stages.stream().filter(s -> !s.name().equals(stage.name())).toList();
        return others.isEmpty() ? List.of(List.of()) : List.of(List.of(), others);
    }

    /** How far the answer goes. */
    public Answer answer() {
        if (checks.stream().anyMatch(c -> c.verdict() == Verdict.FAIL)) {
            return Answer.BAD;
        }
        boolean all = opened.isPresent() || cases.stream().allMatch(c -> c.peakAmperes() > 0.0);
        return all && !(opened.isEmpty() && cases.isEmpty()) ? Answer.GOOD : Answer.UNANSWERED;
    }

    /** Every basis: of the formulas, the remedies and the checks. */
    public List<Basis> bases() {
        List<Basis> bases = new ArrayList<>();
        cases.forEach(c -> {
            c.formula().ifPresent(f -> bases.add(f.basis()));
            c.otherEnd().ifPresent(f -> bases.add(f.basis()));
        });
        outrush.ifPresent(o -> o.stages().forEach(s -> bases.add(s.formula().basis())));
        remedies.forEach(r -> bases.add(r.basis()));
        checks.forEach(c -> bases.add(c.basis()));
        return bases;
    }
}
