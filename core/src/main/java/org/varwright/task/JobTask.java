package org.varwright.task;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.drawing.DrawingState;
import org.varwright.drawing.OneLineDrawing;
import org.varwright.interlock.Connections;
import org.varwright.interlock.ConnectionsJson;
import org.varwright.job.FactReader;
import org.varwright.job.Job;
import org.varwright.job.JobDrawing;
import org.varwright.job.JobJson;
import org.varwright.job.JobLog;
import org.varwright.job.Planner;
import org.varwright.job.Proposal;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** Jobs: what a log tells, and whether an event may be added to it. */
final class JobTask {
    private static final Planner PLANNER = Planner.keeping();

    private JobTask() {}

    /** {@code {"log": LINES}} to {@link JobJson}. */
    static Json show(Request request) {
        return JobJson.of(Job.of(JobLog.read("log", request.text("log")), PLANNER));
    }

    /**
     * {@code {"log": LINES, "page": "landscape" | "portrait" | "a3"}} to the drawing of the bank as confirmed steps leave it: {@code {"state": NAME, "svg"}}.
     *
     * @throws VarwrightException where no bank is in the job
     */
    static Json draw(Request request) {
        Job job = Job.of(JobLog.read("log", request.text("log")), PLANNER);
        Bank bank = job.bank().orElseThrow(JobTask::notOpen);
        DrawingState state = JobDrawing.of(job).orElseThrow(JobTask::notOpen);
        return Json.object()
                .put("state", state.name())
                .put("svg", OneLineDrawing.draw(bank, state, Tasks.page(request)))
                .build();
    }

    /** {@code {"log": LINES, "conductor": NAME}} to {@link ConnectionsJson}, by the positions that confirmed steps leave. */
    static Json why(Request request) {
        Job job = Job.of(JobLog.read("log", request.text("log")), PLANNER);
        Bank bank = job.bank().orElseThrow(JobTask::notOpen);
        DrawingState state = JobDrawing.of(job).orElseThrow(JobTask::notOpen);
        return why(bank, state, request);
    }

    /** {@link ConnectionsJson} of the conductor asked for, with the devices as they stand in that state. */
    static Json why(Bank bank, DrawingState state, Request request) {
        String conductor = request.text("conductor");
        List<String> conductors =
                bank.isolation().map(i -> List.copyOf(i.conductors())).orElse(List.of());
        if (!conductors.contains(conductor)) {
            throw new VarwrightException(
                    Message.REQUEST_MEMBER,
                    new Place("", 0, 0, "conductor"),
                    "one of " + String.join(", ", conductors));
        }
        return ConnectionsJson.of(Connections.of(bank, state.positions(), conductor), bank.words());
    }

    private static VarwrightException notOpen() {
        return new VarwrightException(Message.JOB_NOT_OPEN, Place.NOWHERE);
    }

    /**
     * {@code {"job": NAME, "log": LINES, "device", "by", "now": ms, "type", "body"}} to {@code {"line", "hash", "job": JobJson}}, the line to be put on disk before
     * anybody is told that it stands. The log may be empty for the first event.
     *
     * @throws VarwrightException with every reason where the rules refuse it
     */
    static Json propose(Request request) {
        String lines = request.text("log");
        JobLog log = lines.isBlank() ? JobLog.empty(request.text("job")) : JobLog.read("log", lines);
        Job job = Job.of(log, PLANNER);
        Proposal proposal = job.propose(
                request.text("device"),
                request.text("by"),
                (long) request.number("now"),
                FactReader.read(request.text("type"), request.object("body")));
        return switch (proposal) {
            case Proposal.Refused refused -> throw new VarwrightException(refused.why());
            case Proposal.Accepted accepted ->
                Json.object()
                        .put("line", accepted.event().line())
                        .put("hash", accepted.event().hash())
                        .put("job", JobJson.of(Job.of(log.with(accepted.event()), PLANNER)))
                        .build();
        };
    }
}
