package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.discharge.Resistance;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.Plan;
import org.varwright.survey.UnitSurvey;
import org.varwright.survey.UnitVerdict;

/** Checks and bases of every result of a job, in the order in which the report shows the results. */
final class Results {
    private Results() {}

    static List<Check> checks(ReportInput input, BankStudies studies) {
        List<Check> checks = new ArrayList<>();
        input.survey().ifPresent(s -> checks.addAll(s.checks()));
        input.fit().ifPresent(f -> checks.addAll(f.checks()));
        input.energize().ifPresent(e -> checks.addAll(e.checks()));
        input.discharge().ifPresent(d -> checks.addAll(d.checks()));
        checks.addAll(DutySection.checks(studies.duty()));
        checks.addAll(studies.inrush().checks());
        checks.addAll(studies.fuses().checks());
        checks.addAll(studies.unbalance().checks());
        return checks;
    }

    static List<Basis> bases(ReportInput input, List<Check> checks) {
        List<Basis> bases = new ArrayList<>();
        checks.forEach(c -> bases.add(c.basis()));
        input.plan().ifPresent(plan -> {
            if (plan instanceof Plan.Planned(OrderOfWork order)) {
                order.steps().forEach(step -> step.basis().ifPresent(bases::add));
            }
        });
        input.record().ifPresent(r -> bases.addAll(r.study().bases()));
        input.survey()
                .ifPresent(s -> s.units().stream()
                        .filter(u -> u.verdict() != UnitVerdict.NOT_MEASURED && u.verdict() != UnitVerdict.HEALTHY)
                        .map(UnitSurvey::basis)
                        .forEach(bases::add));
        input.fit().ifPresent(f -> bases.addAll(f.bases()));
        input.energize().ifPresent(e -> {
            e.currents().forEach(c -> bases.add(c.basis()));
            e.sensors().forEach(s -> bases.add(s.basis()));
            e.explanations().forEach(x -> x.basis().ifPresent(bases::add));
        });
        input.discharge()
                .ifPresent(d -> d.stages().forEach(s -> {
                    bases.add(s.opening().basis());
                    if (s.resistance() instanceof Resistance.Known known) {
                        bases.add(known.basis());
                    }
                    bases.add(s.waitBasis());
                }));
        return bases;
    }
}
