package org.varwright.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Task;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/** When a step of an order may be confirmed: one after another, each as the order asks. */
final class StepRules {
    private final Ledger ledger;
    private final Bank bank;

    StepRules(Ledger ledger, Bank bank) {
        this.ledger = ledger;
        this.bank = bank;
    }

    /** Why the step is not the one to be done next. */
    List<Problem> next(String order, int step) {
        if (ledger.order().isEmpty()) {
            return JobRules.no(Message.JOB_NO_ORDER);
        }
        Order latest = ledger.order().get();
        if (latest.standing() != Order.Standing.CURRENT) {
            return JobRules.no(
                    Message.JOB_ORDER_ENDED,
                    latest.why().orElse(latest.standing().code()));
        }
        if (!latest.id().equals(order)) {
            return JobRules.no(Message.JOB_ORDER_OLD, order, latest.id());
        }
        Optional<OrderStep> next = latest.next();
        if (next.isEmpty()) {
            return JobRules.no(Message.JOB_ALL_DONE);
        }
        return next.get().n() == step
                ? List.of()
                : JobRules.no(
                        Message.JOB_STEP_NOT_NEXT,
                        String.valueOf(step),
                        String.valueOf(next.get().n()));
    }

    List<Problem> startHold(Fact.HoldStarted fact) {
        List<Problem> order = next(fact.order(), fact.step());
        if (!order.isEmpty()) {
            return order;
        }
        return nextStep().kind() == OrderStep.Kind.HOLD
                ? List.of()
                : JobRules.no(Message.JOB_NOT_A_HOLD, String.valueOf(fact.step()));
    }

    List<Problem> confirm(JobEvent event, Fact.StepConfirmed fact) {
        List<Problem> order = next(fact.order(), fact.step());
        if (!order.isEmpty()) {
            return order;
        }
        OrderStep step = nextStep();
        List<Problem> problems = new ArrayList<>();
        secondPerson(step, event, fact).ifPresent(problems::add);
        step.items().stream()
                .filter(item -> !fact.ticked().contains(item))
                .forEach(item -> problems.add(JobRules.problem(Message.JOB_ITEM, item)));
        label(step, fact).ifPresent(problems::add);
        reading(step, fact).ifPresent(problems::add);
        photo(fact).ifPresent(problems::add);
        hold(step, event).ifPresent(problems::add);
        peopleOn(step).ifPresent(problems::add);
        return problems;
    }

    private OrderStep nextStep() {
        return ledger.order().flatMap(Order::next).orElseThrow();
    }

    private static Optional<Problem> secondPerson(OrderStep step, JobEvent event, Fact.StepConfirmed fact) {
        if (!step.secondPerson()) {
            return Optional.empty();
        }
        if (fact.second().isEmpty()) {
            return Optional.of(JobRules.problem(Message.JOB_SECOND_PERSON, String.valueOf(step.n())));
        }
        return same(fact.second().get(), event.by())
                ? Optional.of(JobRules.problem(Message.JOB_SECOND_SAME, event.by()))
                : Optional.empty();
    }

    /** Bank and compartment are told by what stands on them, not by where a person believes to be. */
    private Optional<Problem> label(OrderStep step, Fact.StepConfirmed fact) {
        if (!(step.task() instanceof Task.Confirmed confirmed) || step.asks().isEmpty()) {
            return Optional.empty();
        }
        Optional<String> wanted = confirmed.label(bank);
        if (wanted.isEmpty() || fact.label().filter(l -> same(l, wanted.get())).isPresent()) {
            return Optional.empty();
        }
        return Optional.of(
                fact.label().isEmpty()
                        ? JobRules.problem(Message.JOB_LABEL_MISSING, confirmed.name())
                        : JobRules.problem(Message.JOB_LABEL_WRONG, fact.label().get(), wanted.get()));
    }

    private static Optional<Problem> reading(OrderStep step, Fact.StepConfirmed fact) {
        if (step.asks().equals(Optional.of(OrderStep.Asks.READING))
                && fact.reading().isEmpty()) {
            return Optional.of(JobRules.problem(Message.JOB_READING_MISSING, String.valueOf(step.n())));
        }
        if (step.task() instanceof Task.Counted counted && step.asks().isPresent()) {
            String wanted = String.valueOf(counted.count());
            if (fact.reading().isEmpty()) {
                return Optional.of(JobRules.problem(Message.JOB_COUNT_MISSING, String.valueOf(step.n())));
            }
            if (!fact.reading().get().equals(wanted)) {
                return Optional.of(
                        JobRules.problem(Message.JOB_COUNT_WRONG, fact.reading().get(), wanted));
            }
        }
        return Optional.empty();
    }

    /** A photo is named by its content, so it must be in the job before a step leans on it. */
    private Optional<Problem> photo(Fact.StepConfirmed fact) {
        return fact.photo()
                .filter(hash -> ledger.attachments.stream()
                        .noneMatch(a -> a.fact().sha256().equals(hash)))
                .map(hash -> JobRules.problem(Message.JOB_PHOTO_UNKNOWN, hash));
    }

    private Optional<Problem> hold(OrderStep step, JobEvent event) {
        if (step.kind() != OrderStep.Kind.HOLD || step.seconds().isEmpty()) {
            return Optional.empty();
        }
        Ledger.HoldRun run = ledger.holds.get(event.device());
        if (run == null) {
            return Optional.of(JobRules.problem(Message.JOB_HOLD_NOT_STARTED, String.valueOf(step.n())));
        }
        double waited = (event.clock().wallMillis() - run.fromMillis()) / 1000.0;
        if (waited < 0) {
            return Optional.of(JobRules.problem(Message.JOB_CLOCK_BACK));
        }
        double left = step.seconds().getAsDouble() - waited;
        return left <= 0
                ? Optional.empty()
                : Optional.of(JobRules.problem(Message.JOB_HOLD_RUNNING, String.valueOf((long) Math.ceil(left))));
    }

    /** While somebody is on the bank nothing on it is moved: not on the way back, and not on a way in after a sign-off that was taken back. */
    private Optional<Problem> peopleOn(OrderStep step) {
        boolean startsWayBack =
                ledger.order().filter(o -> o.phase() == Order.Phase.WORK).isPresent();
        return ledger.people.isEmpty()
                ? Optional.empty()
                : Optional.of(JobRules.problem(
                        Message.JOB_PEOPLE_ON,
                        String.join(", ", ledger.people.keySet()),
                        "step " + step.n() + (startsWayBack ? ", which starts the way back" : "")));
    }

    private static boolean same(String one, String other) {
        return plain(one).equalsIgnoreCase(plain(other));
    }

    private static String plain(String typed) {
        return typed.strip().replaceAll("\\s+", " ");
    }
}
