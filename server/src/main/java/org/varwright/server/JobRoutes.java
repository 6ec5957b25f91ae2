package org.varwright.server;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.varwright.job.Job;
import org.varwright.job.JobJson;
import org.varwright.job.JobLog;
import org.varwright.job.LogFinding;
import org.varwright.job.LoggedEvent;
import org.varwright.job.Planner;
import org.varwright.json.Json;
import org.varwright.problem.VarwrightException;

/** Jobs: lines in, lines out, and what they tell. The server writes no line of its own. */
final class JobRoutes {
    private static final int LARGEST_BYTES = 16_000_000;

    private final Store store;

    JobRoutes(Store store) {
        this.store = store;
    }

    void list(Context context) {
        List<Json> jobs = new ArrayList<>();
        for (String name : store.jobs()) {
            Job job = Job.of(log(name), Planner.ANEW);
            jobs.add(Json.object()
                    .put("job", name)
                    .put("title", job.title().map(Json::of).orElse(Json.none()))
                    .put("bank", job.bank().map(b -> Json.of(b.name())).orElse(Json.none()))
                    .put("events", job.log().events().size())
                    .put("closed", job.isClosed())
                    .put("stopped", job.isStopped())
                    .build());
        }
        Answers.json(context, Json.object().put("jobs", Json.of(jobs)).build());
    }

    void get(Context context) {
        Answers.json(context, JobJson.of(Job.of(log(Bodies.name(context, "job")), Planner.ANEW)));
    }

    /** Lines that the device which asks does not hold yet. */
    void events(Context context) {
        JobLog log = log(Bodies.name(context, "job"));
        List<String> have = context.queryParams("have");
        Map<String, Integer> upTo = new HashMap<>();
        for (LoggedEvent event : log.events()) {
            if (have.contains(event.hash())) {
                upTo.merge(event.event().device(), event.event().seq(), Math::max);
            }
        }
        String lines = log.events().stream()
                .filter(e -> e.event().seq() > upTo.getOrDefault(e.event().device(), 0))
                .map(e -> e.line() + "\n")
                .collect(Collectors.joining());
        context.contentType("application/x-ndjson; charset=utf-8").result(lines);
    }

    void add(Context context) throws IOException {
        String name = Bodies.name(context, "job");
        List<LoggedEvent> events = lines(name, Bodies.text(context, LARGEST_BYTES, "a piece of a job"));
        int added = store.add(events);
        JobLog log = log(name);
        Answers.json(
                context,
                Json.object()
                        .put("added", added)
                        .put("known", events.size() - added)
                        .put("events", log.events().size())
                        .put("hash", log.hash())
                        .build());
    }

    /** The events of a body: every line readable and of this job, or none is taken. */
    private static List<LoggedEvent> lines(String job, String text) {
        JobLog sent;
        try {
            sent = JobLog.read("body", text);
        } catch (VarwrightException e) {
            throw Refusal.unusable(e);
        }
        for (LogFinding finding : sent.findings()) {
            if (finding instanceof LogFinding.UnreadableLine || finding instanceof LogFinding.TornLine) {
                throw Refusal.of(422, finding.text() + "; no line was added");
            }
        }
        if (!sent.job().equals(job)) {
            throw Refusal.of(
                    422, "the lines are of the job \"" + sent.job() + "\", not of \"" + job + "\"; no line was added");
        }
        return sent.events();
    }

    private JobLog log(String name) {
        List<String> lines = store.lines(name);
        if (lines.isEmpty()) {
            throw Refusal.of(404, "there is no job \"" + name + "\"");
        }
        return JobLog.read(name, String.join("\n", lines) + "\n");
    }
}
