package org.varwright.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.isolation.Access;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Plan;
import org.varwright.isolation.Task;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Order;
import org.varwright.job.Planner;
import org.varwright.job.Proposal;

/** A tablet of the demo's crew: writes a job as people would, by the rules that hold for everybody. */
final class CrewTablet {
    private static final Map<Object, Plan> PLANS = new LinkedHashMap<>();
    private static final Planner PLANNER =
            (bank, request) -> PLANS.computeIfAbsent(List.of(bank, request), k -> Access.plan(bank, request));

    private final String device;
    private final String by;
    private final String second;
    private Job job;
    private long nowMillis;

    /**
     * A tablet with an empty job.
     *
     * @param by who holds it
     * @param second who confirms beside them
     * @param nowMillis what its clock shows [ms]
     */
    CrewTablet(String jobName, String device, String by, String second, long nowMillis) {
        this.device = device;
        this.by = by;
        this.second = second;
        this.nowMillis = nowMillis;
        job = Job.of(JobLog.empty(jobName), PLANNER);
    }

    Job job() {
        return job;
    }

    long nowMillis() {
        return nowMillis;
    }

    /** Lets time pass. */
    void pass(double seconds) {
        nowMillis += Math.round(seconds * 1_000);
    }

    /** Writes what has happened. */
    void write(Fact fact) {
        job = switch (job.propose(device, by, nowMillis, fact)) {
            case Proposal.Accepted accepted -> Job.of(job.log().with(accepted.event()), PLANNER);
            case Proposal.Refused refused ->
                throw new IllegalStateException("the demo's own job is refused: " + refused.why());
        };
    }

    /** Does the next step with everything that it asks for, each wait whole. */
    void step(double secondsOfWork) {
        OrderStep step = next();
        if (step.kind() == OrderStep.Kind.HOLD && step.seconds().isPresent()) {
            startHold();
            pass(step.seconds().getAsDouble() + 5);
        } else {
            pass(secondsOfWork);
        }
        write(new Fact.StepConfirmed(
                order().id(),
                step.n(),
                secondPerson(step),
                reading(step),
                label(step),
                step.items(),
                Optional.empty()));
    }

    /** Does steps until the next one is a wait. */
    void stepsToHold(double secondsEach) {
        while (next().kind() != OrderStep.Kind.HOLD) {
            step(secondsEach);
        }
    }

    void stepsTo(Order.Phase phase, double secondsEach) {
        while (order().phase() != phase) {
            step(secondsEach);
        }
    }

    void startHold() {
        write(new Fact.HoldStarted(order().id(), next().n()));
    }

    private Order order() {
        return job.currentOrder().orElseThrow();
    }

    private OrderStep next() {
        return order().next().orElseThrow();
    }

    private Optional<String> secondPerson(OrderStep step) {
        return step.secondPerson() ? Optional.of(second) : Optional.empty();
    }

    private static Optional<String> reading(OrderStep step) {
        if (step.task() instanceof Task.Counted counted) {
            return Optional.of(String.valueOf(counted.count()));
        }
        return switch (step.task()) {
            case Task.TesterProved ignored -> Optional.of("lamp and tone, on the proving unit");
            case Task.TestedNoCapacitance ignored -> Optional.of("0.00 µF");
            case Task.TestedNoCurrent ignored -> Optional.of("0.0 A");
            default -> step.kind() == OrderStep.Kind.TEST ? Optional.of("0 V") : Optional.empty();
        };
    }

    private Optional<String> label(OrderStep step) {
        return step.task() instanceof Task.Confirmed confirmed
                ? confirmed.label(job.bank().orElseThrow())
                : Optional.empty();
    }
}
