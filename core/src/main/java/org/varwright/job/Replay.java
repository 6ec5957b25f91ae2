package org.varwright.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.isolation.Plan;
import org.varwright.problem.Problem;

/** Turns events, one after another, into what stands. */
final class Replay {
    private final Ledger ledger = new Ledger();
    private final List<NotCounted> notCounted = new ArrayList<>();
    private final JobRules rules;

    Replay(Planner planner) {
        rules = new JobRules(ledger, planner);
    }

    Ledger ledger() {
        return ledger;
    }

    JobRules rules() {
        return rules;
    }

    List<NotCounted> notCounted() {
        return notCounted;
    }

    /** Counts the event where the rules allow it, else keeps why not. */
    void take(JobEvent event) {
        List<Problem> refusals = rules.refusals(event);
        if (refusals.isEmpty()) {
            ledger.counted.put(event.id(), event);
            apply(event);
        } else {
            notCounted.add(
                    new NotCounted(event, refusals.stream().map(Problem::text).toList()));
            disagree(event);
        }
    }

    private void apply(JobEvent event) {
        switch (event.fact()) {
            case Fact.Opened f -> {
                ledger.opened = Optional.of(f);
                bank(f.bankText());
            }
            case Fact.BankReplaced f -> {
                bank(f.bankText());
                ledger.currentOrder()
                        .filter(o -> o.phase() != Order.Phase.IN_SERVICE)
                        .ifPresent(o -> ledger.replaceOrder(
                                o.ended("the description of the bank was replaced: " + f.reason())));
            }
            case Fact.OrderMade f -> order(event, f);
            case Fact.StepConfirmed f -> {
                Order order = ledger.order().orElseThrow();
                ledger.replaceOrder(order.with(new Order.Confirmation(event, f)));
                ledger.holds.clear();
            }
            case Fact.HoldStarted f ->
                ledger.holds.put(
                        event.device(),
                        new Ledger.HoldRun(event, f, event.clock().wallMillis()));
            case Fact.Deviated f -> {
                Order order = ledger.order().orElseThrow();
                ledger.replaceOrder(order.ended("step " + f.step() + " was not done as written: " + f.reason()));
            }
            case Fact.Stopped f -> {
                ledger.stops.put(event.id(), f);
                ledger.holds.clear();
            }
            case Fact.Resumed f ->
                ledger.stops
                        .keySet()
                        .removeIf(id -> f.stops().isEmpty() || f.stops().contains(id));
            case Fact.SignedOn f -> ledger.signOn(new Ledger.Person(f.person(), f.lock(), event));
            case Fact.SignedOff f -> ledger.signOff(f.person(), event.id());
            case Fact.ReadingTaken f -> ledger.readings.add(new Counted<>(event, f));
            case Fact.ReadingsImported f -> ledger.readingTables.add(new Counted<>(event, f));
            case Fact.SparesImported f -> ledger.spareTables.add(new Counted<>(event, f));
            case Fact.UnitMoved f -> ledger.unitMoves.add(new Counted<>(event, f));
            case Fact.Measured f -> ledger.measured.add(new Counted<>(event, f));
            case Fact.AsLeft f -> ledger.asLeft.add(new Counted<>(event, f));
            case Fact.Noted f -> ledger.notes.add(new Counted<>(event, f));
            case Fact.Attached f -> ledger.attachments.add(new Counted<>(event, f));
            case Fact.RecordRead f -> ledger.records.add(new Counted<>(event, f));
            // The later of both, so that no event makes a wait shorter than it is.
            case Fact.ClockMoved f ->
                restartHold(event.device(), Math.max(f.toMillis(), event.clock().wallMillis()));
            case Fact.Corrected f -> withdraw(f);
            case Fact.Settled f -> settle(event, f);
            case Fact.VisitAgreed f -> ledger.visits.add(new Counted<>(event, f));
            case Fact.MeterStated f -> ledger.meters.add(new Counted<>(event, f));
            case Fact.Signed f -> ledger.signatures.add(new Counted<>(event, f));
            case Fact.Closed f -> ledger.closed = Optional.of(f);
            case Fact.NotUnderstood ignored -> {}
        }
    }

    private void bank(String text) {
        ledger.bankText = text;
        ledger.bankHash = Sha256.of(text);
        ledger.bank = Optional.of(JobRules.bank(text));
    }

    private void order(JobEvent event, Fact.OrderMade fact) {
        Bank bank = ledger.bank.orElseThrow();
        if (!(rules.plan(bank, fact) instanceof Plan.Planned planned)) {
            throw new IllegalStateException("the rules let an order through that could not be planned: " + event.id());
        }
        ledger.order().ifPresent(o -> ledger.replaceOrder(o.replaced(event.id())));
        ledger.orders.add(new Order(event, planned.order(), List.of(), Order.Standing.CURRENT, Optional.empty()));
        ledger.holds.clear();
    }

    private void restartHold(String device, long nowMillis) {
        Ledger.HoldRun run = ledger.holds.get(device);
        if (run != null) {
            ledger.holds.put(device, new Ledger.HoldRun(run.event(), run.fact(), nowMillis));
        }
    }

    private void withdraw(Fact.Corrected corrected) {
        JobEvent event = ledger.counted.get(corrected.event());
        if (event == null) {
            throw new IllegalStateException("the rules let a correction of nothing through: " + corrected.event());
        }
        ledger.withdrawn.add(event.id());
        switch (event.fact()) {
            case Fact.StepConfirmed f ->
                ledger.order()
                        .filter(o -> ledger.restsOn(f.order()) && o.phase() != Order.Phase.IN_SERVICE)
                        .ifPresent(o -> ledger.replaceOrder(o.ended(
                                "the confirmation of step " + f.step() + " was taken back: " + corrected.reason())));
            case Fact.SignedOn f -> ledger.people.remove(f.person());
            case Fact.SignedOff f -> ledger.notOff(f.person());
            case Fact.ReadingTaken ignored -> drop(ledger.readings, event);
            case Fact.ReadingsImported ignored -> drop(ledger.readingTables, event);
            case Fact.SparesImported ignored -> drop(ledger.spareTables, event);
            case Fact.UnitMoved ignored -> drop(ledger.unitMoves, event);
            case Fact.Measured ignored -> drop(ledger.measured, event);
            case Fact.AsLeft ignored -> drop(ledger.asLeft, event);
            case Fact.Noted ignored -> drop(ledger.notes, event);
            case Fact.Attached ignored -> drop(ledger.attachments, event);
            case Fact.RecordRead ignored -> drop(ledger.records, event);
            case Fact.VisitAgreed ignored -> drop(ledger.visits, event);
            case Fact.MeterStated ignored -> drop(ledger.meters, event);
            case Fact.Signed ignored -> drop(ledger.signatures, event);
            case Fact.Settled ignored -> drop(ledger.settled, event);
            case Fact.Opened ignored -> throw notTakenBack(event);
            case Fact.BankReplaced ignored -> throw notTakenBack(event);
            case Fact.OrderMade ignored -> throw notTakenBack(event);
            case Fact.HoldStarted ignored -> throw notTakenBack(event);
            case Fact.Deviated ignored -> throw notTakenBack(event);
            case Fact.Stopped ignored -> throw notTakenBack(event);
            case Fact.Resumed ignored -> throw notTakenBack(event);
            case Fact.ClockMoved ignored -> throw notTakenBack(event);
            case Fact.Corrected ignored -> throw notTakenBack(event);
            case Fact.Closed ignored -> throw notTakenBack(event);
            case Fact.NotUnderstood ignored -> throw notTakenBack(event);
        }
    }

    private static IllegalStateException notTakenBack(JobEvent event) {
        return new IllegalStateException("the rules let a correction through of " + event.id());
    }

    private static <F extends Fact> void drop(List<Counted<F>> list, JobEvent event) {
        list.removeIf(c -> c.event().id().equals(event.id()));
    }

    /** Of what disagrees only what holds is used from now on. */
    private void settle(JobEvent event, Fact.Settled fact) {
        List<String> losers = ledger.conflicts().stream()
                .filter(c -> c.events().contains(fact.event()))
                .flatMap(c -> c.events().stream())
                .filter(id -> !id.equals(fact.event()))
                .toList();
        ledger.settled.add(new Counted<>(event, fact));
        ledger.readings.removeIf(r -> losers.contains(r.event().id()));
        JobEvent holds = ledger.counted.get(fact.event());
        if (holds != null && holds.fact() instanceof Fact.VisitAgreed) {
            ledger.visits.removeIf(v -> !v.event().id().equals(holds.id()));
        }
        if (holds != null && holds.fact() instanceof Fact.MeterStated stated) {
            ledger.meters.removeIf(m -> MeterLimits.key(m.fact()).equals(MeterLimits.key(stated))
                    && !m.event().id().equals(holds.id()));
        }
    }

    /**
     * What a device did without knowing of another. The rules let no device write what they refuse, so what they refuse now was done all the same: it counts for
     * nothing, but nobody goes on as if it had not been.
     */
    private void disagree(JobEvent event) {
        if (event.fact() instanceof Fact.StepConfirmed confirmed) {
            stepTwice(event, confirmed);
            stepOutOfTurn(event, confirmed);
        }
        if (event.fact() instanceof Fact.Deviated deviated) {
            end(
                    deviated.order(),
                    "on another device step " + deviated.step() + " was not done as written: " + deviated.reason());
        }
        if (event.fact() instanceof Fact.OrderMade) {
            orderTwice(event);
        }
        if (event.fact() instanceof Fact.SignedOn on) {
            ledger.signOn(new Ledger.Person(on.person(), on.lock(), event));
        }
    }

    /** Ends the order to work by, where it is this one. */
    private void end(String order, String why) {
        ledger.currentOrder().filter(o -> o.id().equals(order)).ifPresent(o -> ledger.replaceOrder(o.ended(why)));
    }

    private void stepTwice(JobEvent event, Fact.StepConfirmed fact) {
        ledger.order()
                .filter(o -> o.id().equals(fact.order())
                        && fact.step() <= o.confirmed().size())
                .map(o -> o.confirmed().get(fact.step() - 1).event())
                .filter(first -> !first.device().equals(event.device()))
                .ifPresent(first -> ledger.stepConflicts.add(new Conflict(
                        "step " + fact.step() + ", confirmed on two devices", List.of(first.id(), event.id()))));
    }

    /** Something was moved that nobody here knows of, so what is live and what is not is not known. */
    private void stepOutOfTurn(JobEvent event, Fact.StepConfirmed fact) {
        if (ledger.order().filter(o -> fact.step() > o.confirmed().size()).isPresent()) {
            end(
                    fact.order(),
                    "step " + fact.step() + " was confirmed where it could not count (event " + event.id()
                            + "), so what was moved is not known: stop, go clear, and make an order from what is found");
        }
    }

    /** An order that can't count: somebody works by it elsewhere, so neither holds. */
    private void orderTwice(JobEvent event) {
        ledger.currentOrder()
                .ifPresent(o -> ledger.replaceOrder(o.ended("another order, " + event.id()
                        + ", was made at the same time on another device: stop, go clear, and make one order from what"
                        + " is found")));
    }
}
