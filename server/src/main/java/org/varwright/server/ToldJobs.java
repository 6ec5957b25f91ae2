package org.varwright.server;

import java.util.LinkedHashMap;
import java.util.Map;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Planner;

/** Jobs as their lines tell them; those asked for last are kept until a line is added. */
final class ToldJobs {
    private static final int MOST = 8;

    private final Store store;
    private final Planner planner = new KeptPlans();
    private final Map<String, Job> kept = new LinkedHashMap<>(MOST, 0.75f, true);

    ToldJobs(Store store) {
        this.store = store;
    }

    /**
     * The job of that name.
     *
     * @throws Refusal 404 where there is none
     */
    Job job(String name) {
        String version = name + " " + hash(name);
        synchronized (kept) {
            Job job = kept.get(version);
            if (job != null) {
                return job;
            }
        }
        Job job = Job.of(log(name), planner);
        synchronized (kept) {
            // Lines may have come in since: what was read names the version.
            kept.put(name + " " + job.log().hash(), job);
            if (kept.size() > MOST) {
                kept.remove(kept.keySet().iterator().next());
            }
        }
        return job;
    }

    /**
     * The hash of the set of its lines, without reading them.
     *
     * @throws Refusal 404 where there is none
     */
    String hash(String name) {
        return store.setOf(name).orElseThrow(() -> missing(name)).hash();
    }

    /**
     * Its lines.
     *
     * @throws Refusal 404 where there is none
     */
    JobLog log(String name) {
        var lines = store.lines(name);
        if (lines.isEmpty()) {
            throw missing(name);
        }
        return JobLog.read(name, String.join("\n", lines) + "\n");
    }

    private static Refusal missing(String name) {
        return Refusal.of(404, "there is no job \"" + name + "\"");
    }
}
