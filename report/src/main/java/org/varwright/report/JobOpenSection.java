package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.basis.Check;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.report.document.Block;
import org.varwright.report.document.Section;
import org.varwright.survey.UnitVerdict;

/** What is not closed, and what the next visit is for. */
final class JobOpenSection {
    private JobOpenSection() {}

    static Section of(JobReport report, List<Check> checks) {
        List<Block> blocks = new ArrayList<>();
        List<String> open = new ArrayList<>(points(report));
        open.addAll(OpenPointSection.points(report.results(), checks, JobPartsSection.lifted(report)));
        blocks.add(open.isEmpty() ? new Block.Paragraph("Nothing is open.") : new Block.Ticks(open));
        blocks.add(new Block.Subheading("Next visit"));
        blocks.add(new Block.Bullets(agreed(report.job())));
        blocks.add(new Block.Bullets(nextVisit(report)));
        return new Section("Open points and next visit", Section.PageStart.RUN_ON, blocks);
    }

    private static List<String> points(JobReport report) {
        Job job = report.job();
        List<String> points = new ArrayList<>();
        job.conflicts().forEach(c -> points.add("Settle " + c.about() + "."));
        points.addAll(JobOrderSections.open(report));
        if (!job.peopleOn().isEmpty()) {
            points.add("Still signed on: " + String.join(", ", job.peopleOn()) + ".");
        }
        if (job.isStopped()) {
            points.add("The work is stopped: "
                    + job.counted(Fact.Stopped.class).getLast().fact().reason() + ".");
        }
        if (!job.isClosed()) {
            points.add("The job is not closed.");
        }
        return points;
    }

    /** The day that was agreed, or that there is none. */
    private static List<String> agreed(Job job) {
        if (job.nextVisits().isEmpty()) {
            return List.of("No date is agreed for the next visit.");
        }
        return job.nextVisits().stream()
                .map(v -> "Agreed: " + v.fact().date() + ", " + v.fact().purpose() + " (said by "
                        + v.event().by() + ").")
                .toList();
    }

    /** By condition: what was found says sooner; when nothing does, the owner's interval holds. */
    private static List<String> nextVisit(JobReport report) {
        List<String> reasons = new ArrayList<>();
        report.results().survey().ifPresent(survey -> {
            survey.with(UnitVerdict.WATCH).stream()
                    .filter(u -> !JobPartsSection.lifted(report)
                            .contains(u.position().name()))
                    .forEach(u ->
                            reasons.add("Measure " + u.position().name() + " sooner than the others: " + u.reason()));
            survey.trends().stream().filter(t -> t.drifts()).forEach(t -> reasons.add(t.sentence()));
        });
        report.results().energize().ifPresent(energize -> {
            if (!energize.explanations().isEmpty()) {
                reasons.add("A current or sensor was outside its band at the energization: read it again soon.");
            }
        });
        if (reasons.isEmpty()) {
            reasons.add("Nothing found asks for an earlier visit. The owner\u2019s interval holds.");
        }
        return reasons;
    }
}
