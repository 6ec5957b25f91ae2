package org.varwright.server;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.varwright.job.Job;
import org.varwright.job.JobJson;
import org.varwright.job.JobLog;
import org.varwright.job.LogFinding;
import org.varwright.job.LoggedEvent;
import org.varwright.job.Sha256;
import org.varwright.json.Json;
import org.varwright.problem.VarwrightException;

/** Jobs: lines in, lines out, and what they tell. The server writes no line of its own. */
final class JobRoutes {
    private static final int LARGEST_BYTES = 16_000_000;

    private final Store store;
    private final ToldJobs jobs;
    /** What the list says of a job, by the hash of its lines. */
    private final Map<String, Json> summaries = new ConcurrentHashMap<>();

    JobRoutes(Store store, ToldJobs jobs) {
        this.store = store;
        this.jobs = jobs;
    }

    void list(Context context) {
        List<Store.LineSet> sets = store.jobs();
        if (Tags.isHeldAlready(
                context,
                Sha256.of(sets.stream().map(s -> s.job() + " " + s.hash()).collect(Collectors.joining("\n"))))) {
            return;
        }
        Map<String, Json> listed = new LinkedHashMap<>();
        for (Store.LineSet set : sets) {
            Json known = summaries.get(set.hash());
            listed.put(set.hash(), known == null ? summary(set) : known);
        }
        summaries.keySet().retainAll(listed.keySet());
        summaries.putAll(listed);
        Answers.json(
                context,
                Json.object().put("jobs", Json.of(List.copyOf(listed.values()))).build());
    }

    private Json summary(Store.LineSet set) {
        Job job = jobs.job(set.job());
        return Json.object()
                .put("job", set.job())
                .put("title", job.title().map(Json::of).orElse(Json.none()))
                .put("bank", job.bank().map(b -> Json.of(b.name())).orElse(Json.none()))
                .put("events", set.events())
                .put("hash", set.hash())
                .put("closed", job.isClosed())
                .put("stopped", job.isStopped())
                .build();
    }

    void get(Context context) {
        String name = Bodies.name(context, "job");
        if (!Tags.isHeldAlready(context, jobs.hash(name))) {
            Answers.json(context, JobJson.of(jobs.job(name)));
        }
    }

    /** Lines that the device which asks does not hold yet. */
    void events(Context context) {
        String name = Bodies.name(context, "job");
        if (Tags.isHeldAlready(context, jobs.hash(name))) {
            return;
        }
        JobLog log = jobs.log(name);
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
        Store.LineSet set = store.setOf(name).orElseThrow();
        Answers.json(
                context,
                Json.object()
                        .put("added", added)
                        .put("known", events.size() - added)
                        .put("events", set.events())
                        .put("hash", set.hash())
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
}
