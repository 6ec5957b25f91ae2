package org.varwright.server;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Planner;
import org.varwright.job.Proposal;

/** A device that writes lines of a job. */
final class Lines {
    private JobLog log;
    private final String device;
    private long now = 1_795_000_000_000L;

    Lines(String job, String device) {
        log = JobLog.empty(job);
        this.device = device;
    }

    static String bank(String name) throws IOException {
        return Files.readString(Path.of("..", "examples", "demo", name + ".bank.yaml"), StandardCharsets.UTF_8);
    }

    /** Starts from what another device has written. */
    Lines from(String lines) {
        log = JobLog.read("lines", lines);
        return this;
    }

    String open() throws IOException {
        return write(
                new Fact.Opened("alarm", bank("corbel-reach-3"), Optional.empty(), Optional.empty(), Optional.empty()));
    }

    String note(String text) {
        return write(new Fact.Noted(text));
    }

    String attach(String sha256, int bytes) {
        return write(new Fact.Attached("a.jpg", "image/jpeg", sha256, bytes));
    }

    private String write(Fact fact) {
        now += 1_000;
        if (!(Job.of(log, Planner.ANEW).propose(device, "R. Imhof", now, fact) instanceof Proposal.Accepted accepted)) {
            throw new AssertionError("refused: " + fact);
        }
        log = log.with(accepted.event());
        return accepted.event().line() + "\n";
    }

    String all() {
        return log.text();
    }

    String hash() {
        return log.hash();
    }

    String lastHash() {
        return log.events().getLast().hash();
    }
}
