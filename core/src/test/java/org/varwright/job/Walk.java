package org.varwright.job;

import static org.junit.jupiter.api.Assertions.fail;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.isolation.Access;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Plan;
import org.varwright.isolation.Task;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/** One device and the person who holds it, walking through a job. */
public final class Walk {
    /** Plans are kept over all tests: the same request has the same plan. */
    private static final Map<Object, Plan> PLANS = new HashMap<>();

    public static final Planner PLANNER =
            (bank, request) -> PLANS.computeIfAbsent(List.of(bank, request), k -> Access.plan(bank, request));

    public static final String PERSON = "R. Imhof";
    public static final String SECOND = "T. Okafor";

    final String device;
    JobLog log;
    long now;
    private @Nullable Job told;

    public Walk(String device, JobLog log, long now) {
        this.device = device;
        this.log = log;
        this.now = now;
    }

    /** The job that the log tells; told once for each log. */
    public Job job() {
        if (told == null || !told.log().equals(log)) {
            told = Job.of(log, PLANNER);
        }
        return told;
    }

    Proposal propose(Fact fact) {
        return job().propose(device, PERSON, now, fact);
    }

    /** Writes the fact, which the rules must allow. */
    public JobEvent yes(Fact fact) {
        now += 1_000;
        return switch (propose(fact)) {
            case Proposal.Accepted accepted -> {
                log = log.with(LoggedEvent.parse("log", 0, accepted.event().line()));
                yield accepted.event().event();
            }
            case Proposal.Refused refused ->
                fail("refused: " + refused.why().stream().map(Problem::text).toList());
        };
    }

    /** The messages with which the rules refuse the fact. */
    List<Message> no(Fact fact) {
        return switch (propose(fact)) {
            case Proposal.Accepted accepted ->
                fail("accepted: " + accepted.event().line());
            case Proposal.Refused refused ->
                refused.why().stream().map(Problem::message).toList();
        };
    }

    public Order order() {
        return job().orders().getLast();
    }

    /** A confirmation of the next step with everything that it asks for. */
    public Fact.StepConfirmed fullConfirmation() {
        Order order = order();
        OrderStep step = order.next().orElseThrow();
        Optional<String> reading = switch (step.task()) {
            case Task.Counted counted -> Optional.of(String.valueOf(counted.count()));
            default -> step.kind() == OrderStep.Kind.TEST ? Optional.of("0 V") : Optional.empty();
        };
        return new Fact.StepConfirmed(
                order.id(), step.n(), Optional.of(SECOND), reading, label(step), step.items(), Optional.empty());
    }

    private Optional<String> label(OrderStep step) {
        return step.task() instanceof Task.Confirmed confirmed
                ? confirmed.label(job().bank().orElseThrow())
                : Optional.empty();
    }

    /** Does the next step as the order asks, waiting where it says so. */
    public void step() {
        OrderStep step = order().next().orElseThrow();
        if (step.kind() == OrderStep.Kind.HOLD && step.seconds().isPresent()) {
            yes(new Fact.HoldStarted(order().id(), step.n()));
            now += (long) (step.seconds().getAsDouble() * 1_000);
        }
        yes(fullConfirmation());
    }

    public void stepsUntil(Order.Phase phase) {
        while (order().phase() != phase) {
            step();
        }
    }

    public void stepsUntil(OrderStep.Kind kind) {
        while (order().next().orElseThrow().kind() != kind) {
            step();
        }
    }
}
