package org.varwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.varwright.job.Job;
import org.varwright.job.Order;
import org.varwright.job.Planner;
import org.varwright.json.Json;
import org.varwright.page.Page;
import org.varwright.problem.VarwrightException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code job list DIR}. */
@Command(
        name = "list",
        description = {
            "Every job of a folder (.job.jsonl) and where it stands.",
            "Exit 1 where one of them can't be read or is not whole."
        })
final class JobListCommand extends AnswerCommand {
    @Parameters(paramLabel = "DIR", index = "0", description = "The folder.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path folder;

    /** One job of the list. */
    private record Line(
            String file, String title, String bank, int events, String stands, String nextVisit, boolean isWhole) {}

    @Override
    Answer answer() {
        List<Line> lines =
                JobFolder.files(folder).stream().map(JobListCommand::line).toList();
        ExitCode code = lines.stream().allMatch(Line::isWhole) ? ExitCode.DONE : ExitCode.NO;
        return new Answer(text(lines), json(lines), code);
    }

    private static Line line(Path file) {
        String name = String.valueOf(file.getFileName());
        try {
            Job job = Job.of(new JobFile(file).log(), Planner.keeping());
            boolean isWhole = job.log().findings().isEmpty();
            return new Line(
                    name,
                    job.title().orElse(""),
                    job.bank().map(b -> b.name()).orElse(""),
                    job.log().events().size(),
                    (isWhole ? "" : "THE LOG IS NOT WHOLE; ") + stands(job),
                    nextVisit(job),
                    isWhole);
        } catch (VarwrightException e) {
            return new Line(
                    name, "", "", 0, "CAN'T BE READ: " + e.problems().getFirst().text(), "", false);
        }
    }

    private static String nextVisit(Job job) {
        return String.join(
                " or ",
                job.nextVisits().stream().map(v -> v.fact().date().toString()).toList());
    }

    private static String stands(Job job) {
        if (job.isClosed()) {
            return "closed";
        }
        List<String> said = new ArrayList<>();
        if (job.isStopped()) {
            said.add("STOPPED");
        }
        if (!job.conflicts().isEmpty()) {
            said.add("devices disagree");
        }
        if (!job.peopleOn().isEmpty()) {
            said.add("on the bank: " + String.join(", ", job.peopleOn()));
        }
        said.add(job.currentOrder().map(JobListCommand::stands).orElse("open, no order of work to go by"));
        return String.join("; ", said);
    }

    private static String stands(Order order) {
        int done = order.confirmed().size();
        String count = done + " of " + order.work().steps().size() + " steps";
        return switch (order.phase()) {
            case WAY_IN -> "way in, " + count;
            case WORK -> "at work";
            case WAY_BACK -> "way back, " + count;
            case IN_SERVICE -> "every step confirmed, not closed";
        };
    }

    private String text(List<Line> lines) {
        Page page = new Page();
        page.heading("Jobs").row("folder", folder.toString());
        if (lines.isEmpty()) {
            page.row("", "none: no file ends in " + JobFolder.ENDING);
            return page.print();
        }
        page.blank();
        page.table(
                List.of("job", "what", "bank", "stands", "next visit"),
                lines.stream()
                        .map(l -> List.of(
                                l.file().substring(0, l.file().length() - JobFolder.ENDING.length()),
                                l.title(),
                                l.bank(),
                                l.stands(),
                                l.nextVisit()))
                        .toList());
        return page.print();
    }

    private static Json json(List<Line> lines) {
        return Json.object()
                .put(
                        "jobs",
                        Json.of(lines.stream()
                                .map(l -> (Json) Json.object()
                                        .put("file", l.file())
                                        .put("title", l.title())
                                        .put("bank", l.bank())
                                        .put("events", l.events())
                                        .put("stands", l.stands())
                                        .put("nextVisit", l.nextVisit())
                                        .put("whole", l.isWhole())
                                        .build())
                                .toList()))
                .build();
    }
}
