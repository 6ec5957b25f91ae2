package org.varwright.job;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
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
    private static final Comparator<Job> BY_OPENING = Comparator.comparingLong(
                    (Job j) -> j.openedMillis().orElse(0))
            .thenComparing(j -> j.log().job());

    /** How a visit stands on a day. */
    public enum Standing {
        OVERDUE,
        TODAY,
        AHEAD,
        /** No visit is agreed. */
        NONE
    }

    /** The next visit of every bank, the earliest first; banks without one last. A job whose log is not whole may have lost the visit: it silences no other. */
    public static List<DueVisit> of(List<Job> jobs) {
        Map<String, List<Job>> byBank = new LinkedHashMap<>();
        for (Job job : jobs) {
            job.bank()
                    .ifPresent(bank -> byBank.computeIfAbsent(bank.name(), name -> new ArrayList<>())
                            .add(job));
        }
        List<DueVisit> due = new ArrayList<>();
        byBank.forEach((bank, all) -> due.add(of(bank, all)));
        due.sort(Comparator.comparing((DueVisit d) -> d.visit().isEmpty())
                .thenComparing(
                        d -> d.visit().map(v -> v.fact().date().epochDay()).orElse(0))
                .thenComparing(DueVisit::bank));
        return due;
    }

    private static DueVisit of(String bank, List<Job> jobs) {
        List<Job> heard = heard(jobs);
        Job speaks = heard.getFirst();
        Optional<Counted<Fact.VisitAgreed>> visit = Optional.empty();
        Set<CalendarDate> days = new LinkedHashSet<>();
        boolean isDisputed = false;
        for (Job job : heard) {
            isDisputed |= job.nextVisits().size() > 1;
            for (Counted<Fact.VisitAgreed> each : job.nextVisits()) {
                days.add(each.fact().date());
                if (visit.isEmpty()
                        || each.fact().date().compareTo(visit.get().fact().date()) < 0) {
                    visit = Optional.of(each);
                    speaks = job;
                }
            }
        }
        return new DueVisit(bank, speaks.log().job(), visit, isDisputed || days.size() > 1);
    }

    /** The latest of the whole jobs with every copy of it, and before it those opened later that are not whole, the latest first. */
    private static List<Job> heard(List<Job> jobs) {
        List<Job> heard = new ArrayList<>();
        for (Job job : jobs.stream().sorted(BY_OPENING.reversed()).toList()) {
            if (!heard.isEmpty()
                    && heard.getLast().log().findings().isEmpty()
                    && BY_OPENING.compare(heard.getLast(), job) != 0) {
                break;
            }
            heard.add(job);
        }
        return heard;
    }

    /** How it stands on that day. */
    public Standing on(CalendarDate day) {
        if (visit.isEmpty()) {
            return Standing.NONE;
        }
        int days = day.daysUntil(visit.get().fact().date());
        return days < 0 ? Standing.OVERDUE : days == 0 ? Standing.TODAY : Standing.AHEAD;
    }
}
