package org.varwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.job.DueVisit;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Planner;
import org.varwright.json.Json;
import org.varwright.page.Page;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.CalendarDate;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code job due DIR --on DATE}. */
@Command(
        name = "due",
        description = {
            "When somebody comes to each bank again, as the latest job on it says, the earliest first.",
            "Exit 1 where a visit is overdue on that day, or a job can't be read and so may hide one."
        })
final class JobDueCommand extends AnswerCommand {
    @Parameters(paramLabel = "DIR", index = "0", description = "The folder of jobs (.job.jsonl).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path folder;

    @Option(
            names = "--on",
            required = true,
            paramLabel = "DATE",
            description = "The day it is judged by: year, month and day, such as 2027-05-12.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String on;

    @Override
    Answer answer() {
        CalendarDate day = TypedDate.read("--on", on);
        Map<String, List<Job>> copies = new LinkedHashMap<>();
        List<String> unread = new ArrayList<>();
        for (Path file : JobFolder.files(folder)) {
            try {
                Job job = Job.of(new JobFile(file).log(), Planner.keeping());
                copies.computeIfAbsent(
                                job.log().job() + "\n"
                                        + job.bank().map(Bank::name).orElse(""),
                                same -> new ArrayList<>())
                        .add(job);
                if (!job.log().findings().isEmpty()) {
                    unread.add(file.getFileName() + ": the log is not whole");
                } else if (job.bank().isEmpty()) {
                    unread.add(file.getFileName() + ": it does not say which bank it is");
                }
            } catch (VarwrightException e) {
                unread.add(file.getFileName() + ": can't be read: "
                        + e.problems().getFirst().text());
            }
        }
        List<DueVisit> due = DueVisit.of(copies.values().stream()
                .flatMap(same -> together(same, unread).stream())
                .toList());
        boolean isOverdue = due.stream().anyMatch(d -> d.on(day) == DueVisit.Standing.OVERDUE);
        return new Answer(
                text(day, due, unread),
                json(day, due, unread),
                isOverdue || !unread.isEmpty() ? ExitCode.NO : ExitCode.DONE);
    }

    /** Copies from several devices are one job: what only one of them knows counts. Where they contradict each other, each is heard. */
    private static List<Job> together(List<Job> copies, List<String> unread) {
        JobLog all = copies.stream().map(Job::log).reduce(JobLog::merge).orElseThrow();
        if (all.findings().isEmpty()) {
            return List.of(Job.of(all, Planner.keeping()));
        }
        if (copies.stream().allMatch(copy -> copy.log().findings().isEmpty())) {
            unread.add("copies of " + all.job() + " contradict each other");
        }
        return copies;
    }

    private static String text(CalendarDate day, List<DueVisit> due, List<String> unread) {
        Page page = new Page();
        page.heading("Visits, seen on " + day);
        if (due.isEmpty()) {
            page.row("", "no job, so no visit is known");
        } else {
            page.table(
                    List.of("date", "stands", "bank", "what for", "said by", "job"),
                    due.stream().map(d -> row(day, d)).toList());
        }
        if (!unread.isEmpty()) {
            page.heading("May hide a visit");
            unread.forEach(line -> page.item("  ! ", line));
        }
        return page.print();
    }

    private static List<String> row(CalendarDate day, DueVisit due) {
        return List.of(
                due.visit().map(v -> v.fact().date().toString()).orElse(""),
                stands(day, due) + (due.isDisputed() ? "; devices disagree, this is the earliest" : ""),
                due.bank(),
                due.visit().map(v -> v.fact().purpose()).orElse(""),
                due.visit().map(v -> v.event().by()).orElse(""),
                due.job());
    }

    private static String stands(CalendarDate day, DueVisit due) {
        int days = due.visit().map(v -> day.daysUntil(v.fact().date())).orElse(0);
        return switch (due.on(day)) {
            case OVERDUE -> "OVERDUE by " + days(-days);
            case TODAY -> "due this day";
            case AHEAD -> "in " + days(days);
            case NONE -> "none is agreed";
        };
    }

    private static String days(int count) {
        return count + (count == 1 ? " day" : " days");
    }

    private static Json json(CalendarDate day, List<DueVisit> due, List<String> unread) {
        return Json.object()
                .put("on", day.toString())
                .put("visits", Json.of(due.stream().map(d -> visit(day, d)).toList()))
                .put("mayHideAVisit", Json.strings(unread))
                .build();
    }

    private static Json visit(CalendarDate day, DueVisit due) {
        Json.Builder json = Json.object()
                .put("bank", due.bank())
                .put("job", due.job())
                .put("stands", due.on(day).name().toLowerCase(Locale.ROOT))
                .put("devicesDisagree", due.isDisputed());
        due.visit()
                .ifPresent(v -> json.put("date", v.fact().date().toString())
                        .put("days", day.daysUntil(v.fact().date()))
                        .put("for", v.fact().purpose())
                        .put("by", v.event().by()));
        return json.build();
    }
}
