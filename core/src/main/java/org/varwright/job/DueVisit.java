package org.varwright.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.quantity.CalendarDate;

/**
 * When somebody comes to a bank again, as its latest job says. A job opened later is the visit, so only the latest one speaks.
 *
 * @param bank its name
 * @param job name of the latest job on it
 * @param visit what was agreed; of several on which devices disagree, the earliest; empty where none was
 * @param isDisputed whether devices disagree
 */
public record DueVisit(String bank, String job, Optional<Counted<Fact.VisitAgreed>> visit, boolean isDisputed) {
    /** How a visit stands on a day. */
    public enum Standing {
        OVERDUE,
        TODAY,
        AHEAD,
        /** No visit is agreed. */
        NONE
    }

    /** The next visit of every bank, the earliest first; banks without one last. */
    public static List<DueVisit> of(List<Job> jobs) {
        Map<String, Job> latest = new LinkedHashMap<>();
        for (Job job : jobs) {
            if (job.bank().isPresent()) {
                latest.merge(job.bank().get().name(), job, DueVisit::later);
            }
        }
        List<DueVisit> due = new ArrayList<>();
        latest.forEach((bank, job) -> due.add(new DueVisit(
                bank,
                job.log().job(),
                job.nextVisits().stream().min(Comparator.comparing(v -> v.fact().date())),
                job.nextVisits().size() > 1)));
        due.sort(Comparator.comparing((DueVisit d) -> d.visit().isEmpty())
                .thenComparing(
                        d -> d.visit().map(v -> v.fact().date().epochDay()).orElse(0))
                .thenComparing(DueVisit::bank));
        return due;
    }

    /** How it stands on that day. */
    public Standing on(CalendarDate day) {
        if (visit.isEmpty()) {
            return Standing.NONE;
        }
        int days = day.daysUntil(visit.get().fact().date());
        return days < 0 ? Standing.OVERDUE : days == 0 ? Standing.TODAY : Standing.AHEAD;
    }

    private static Job later(Job one, Job other) {
        Comparator<Job> byOpening = Comparator.comparingLong(
                        (Job j) -> j.openedMillis().orElse(0))
                .thenComparing(j -> j.log().job());
        return byOpening.compare(one, other) >= 0 ? one : other;
    }
}
