package org.varwright.job;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bankfile.BankFile;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;
import org.varwright.isolation.SavedState;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Which events may follow. The rules of single steps are {@link StepRules}. */
final class JobRules {
    /** Findings of one disturbance record that a job keeps at most, and characters of one: more than any record has. */
    private static final int MOST_FINDINGS = 300;

    private static final int LONGEST_FINDING = 2000;

    private static final long MILLIS_OF_DAY = 86_400_000;

    private final Ledger ledger;
    private final Planner planner;

    JobRules(Ledger ledger, Planner planner) {
        this.ledger = ledger;
        this.planner = planner;
    }

    /** Every reason why the event may not be counted; none where it may. */
    List<Problem> refusals(JobEvent event) {
        Fact fact = event.fact();
        if (fact instanceof Fact.NotUnderstood unknown) {
            return no(Message.JOB_TYPE_UNKNOWN, unknown.type());
        }
        if (fact instanceof Fact.Opened opened) {
            return ledger.opened.isPresent() ? no(Message.JOB_OPEN_ALREADY) : unreadable(opened.bankText());
        }
        if (ledger.opened.isEmpty() || ledger.bank.isEmpty()) {
            return no(Message.JOB_NOT_OPEN);
        }
        if (ledger.closed.isPresent() && !mayFollowClose(fact)) {
            return no(Message.JOB_CLOSED);
        }
        Optional<String> stopped = ledger.stopped();
        if (stopped.isPresent() && !mayFollowStop(fact)) {
            return no(Message.JOB_STOPPED, stopped.get());
        }
        return refusals(event, ledger.bank.get());
    }

    private static boolean mayFollowClose(Fact fact) {
        return fact instanceof Fact.Noted
                || fact instanceof Fact.Signed
                || fact instanceof Fact.VisitAgreed
                // who signed on elsewhere, not knowing that the job was closed
                || fact instanceof Fact.SignedOff;
    }

    private static boolean mayFollowStop(Fact fact) {
        return fact instanceof Fact.Resumed
                || fact instanceof Fact.Stopped
                || fact instanceof Fact.Noted
                || fact instanceof Fact.Attached
                || fact instanceof Fact.RecordRead
                || fact instanceof Fact.VisitAgreed
                || fact instanceof Fact.SignedOff
                || fact instanceof Fact.Deviated
                || fact instanceof Fact.Corrected
                || fact instanceof Fact.ClockMoved;
    }

    private List<Problem> refusals(JobEvent event, Bank bank) {
        return switch (event.fact()) {
            case Fact.Opened f -> no(Message.JOB_OPEN_ALREADY);
            case Fact.BankReplaced f -> unreadable(f.bankText());
            case Fact.OrderMade f -> order(bank, f);
            case Fact.StepConfirmed f -> new StepRules(ledger, bank).confirm(event, f);
            case Fact.HoldStarted f -> new StepRules(ledger, bank).startHold(f);
            case Fact.Deviated f -> new StepRules(ledger, bank).next(f.order(), f.step());
            case Fact.Stopped f -> List.of();
            case Fact.Resumed f -> ledger.stopped().isEmpty() ? no(Message.JOB_NOT_STOPPED) : List.of();
            case Fact.SignedOn f -> signOn(f);
            case Fact.SignedOff f ->
                ledger.people.containsKey(f.person()) ? List.of() : no(Message.JOB_PERSON_NOT_ON, f.person());
            case Fact.ReadingTaken f -> reading(bank, f);
            case Fact.ReadingsImported f -> tooLong(f.text());
            case Fact.SparesImported f -> tooLong(f.text());
            case Fact.UnitMoved f -> moved(bank, f);
            case Fact.Measured f -> List.of();
            case Fact.AsLeft f -> asLeft(bank, f);
            case Fact.Noted f -> List.of();
            case Fact.Attached f -> f.sha256().matches("[0-9a-f]{64}") ? List.of() : no(Message.JOB_HASH, f.sha256());
            case Fact.RecordRead f -> recordRead(f);
            case Fact.ClockMoved f -> List.of();
            case Fact.Corrected f -> corrected(f);
            case Fact.Settled f ->
                ledger.conflicts().stream().anyMatch(c -> c.events().contains(f.event()))
                        ? List.of()
                        : no(Message.JOB_NO_CONFLICT, f.event());
            case Fact.VisitAgreed f -> visit(event, f);
            case Fact.MeterStated f -> meter(f);
            case Fact.Signed f -> List.of();
            case Fact.Closed f -> close(bank);
            case Fact.NotUnderstood f -> no(Message.JOB_TYPE_UNKNOWN, f.type());
        };
    }

    private static List<Problem> recordRead(Fact.RecordRead fact) {
        if (!fact.sha256().matches("[0-9a-f]{64}")) {
            return no(Message.JOB_HASH, fact.sha256());
        }
        int longest = fact.findings().stream().mapToInt(String::length).max().orElse(0);
        return fact.findings().size() > MOST_FINDINGS || longest > LONGEST_FINDING
                ? no(
                        Message.JOB_RECORD_LARGE,
                        String.valueOf(fact.findings().size()),
                        String.valueOf(longest),
                        String.valueOf(MOST_FINDINGS),
                        String.valueOf(LONGEST_FINDING))
                : List.of();
    }

    /** The bank of a text. */
    static Bank bank(String text) {
        return BankFile.read("bank", text.getBytes(StandardCharsets.UTF_8)).requireBank();
    }

    private static List<Problem> unreadable(String bankText) {
        try {
            bank(bankText);
            return List.of();
        } catch (VarwrightException e) {
            return e.problems();
        }
    }

    /** The plan that an order asks for. */
    Plan plan(Bank bank, Fact.OrderMade fact) {
        PlanRequest.Start start = switch (fact.origin()) {
            case Fact.Origin.AsFound found ->
                found.isInService()
                        ? new PlanRequest.Start.AsInFile()
                        : new PlanRequest.Start.Positions(
                                found.positions(),
                                new LinkedHashSet<>(found.openDoors()),
                                found.grounds(),
                                found.shorts());
            case Fact.Origin.AfterLastStep ignored -> {
                Order order = ledger.order().orElseThrow();
                yield new PlanRequest.Start.Saved(
                        order.work().stateAfter(order.confirmed().size()));
            }
        };
        return planner.plan(bank, PlanRequest.to(fact.access()).from(start));
    }

    /** The same wish with what its device knows: nobody can tell later from the log what another device had not heard of yet. */
    Fact knowing(Fact fact) {
        if (fact instanceof Fact.OrderMade made) {
            return knowing(made);
        }
        return fact instanceof Fact.Resumed resumed && resumed.stops().isEmpty()
                ? new Fact.Resumed(resumed.reason(), List.copyOf(ledger.stops.keySet()))
                : fact;
    }

    private Fact.OrderMade knowing(Fact.OrderMade made) {
        Fact.Origin origin = made.origin();
        if (origin instanceof Fact.Origin.AfterLastStep after && after.steps().isEmpty()) {
            origin = ledger.order()
                    .map(o -> new Fact.Origin.AfterLastStep(
                            OptionalInt.of(o.confirmed().size())))
                    .orElse(after);
        }
        Optional<String> hash = made.bankHash().isPresent() || ledger.bankHash.isEmpty()
                ? made.bankHash()
                : Optional.of(ledger.bankHash);
        return new Fact.OrderMade(made.access(), origin, made.replaces(), made.reason(), hash);
    }

    /** A plan made of what is here now would not be the one that the other device showed. */
    private List<Problem> madeOfSomethingElse(Fact.OrderMade fact) {
        if (fact.bankHash().filter(h -> !h.equals(ledger.bankHash)).isPresent()) {
            return no(Message.JOB_ORDER_OTHER_BANK);
        }
        int done = ledger.order().map(o -> o.confirmed().size()).orElse(0);
        return fact.origin() instanceof Fact.Origin.AfterLastStep after
                        && after.steps().isPresent()
                        && after.steps().getAsInt() != done
                ? no(Message.JOB_ORDER_OTHER_STEP, String.valueOf(after.steps().getAsInt()), String.valueOf(done))
                : List.of();
    }

    private List<Problem> order(Bank bank, Fact.OrderMade fact) {
        Optional<String> latest = ledger.order().map(Order::id);
        if (!latest.equals(fact.replaces())) {
            return latest.isEmpty() ? no(Message.JOB_ORDER_NONE_YET) : no(Message.JOB_ORDER_NOT_REPLACED, latest.get());
        }
        if (fact.origin() instanceof Fact.Origin.AfterLastStep
                && ledger.currentOrder().isEmpty()) {
            return no(
                    Message.JOB_ORDER_AS_FOUND,
                    ledger.order().flatMap(Order::why).orElse("there is no order yet"));
        }
        if (fact.origin() instanceof Fact.Origin.AsFound
                && ledger.currentOrder().filter(Order::isUnderWay).isPresent()) {
            return no(Message.JOB_ORDER_UNDER_WAY);
        }
        List<Problem> other = madeOfSomethingElse(fact);
        if (!other.isEmpty()) {
            return other;
        }
        if (fact.origin() instanceof Fact.Origin.AsFound found) {
            List<Problem> unsaid = groundsUnsaid(found);
            if (!unsaid.isEmpty()) {
                return unsaid;
            }
        }
        if (!ledger.people.isEmpty()) {
            return no(Message.JOB_PEOPLE_ON, String.join(", ", ledger.people.keySet()), "a new order of work");
        }
        try {
            return switch (plan(bank, fact)) {
                case Plan.Planned ignored -> List.of();
                case Plan.Refused refused -> no(Message.JOB_PLAN_REFUSED, refused.reason());
                case Plan.Undecided undecided -> no(Message.JOB_PLAN_UNDECIDED, String.valueOf(undecided.limit()));
            };
        } catch (VarwrightException e) {
            return e.problems();
        }
    }

    /** What the order before left on must be counted again: a ground that nobody counts is energized onto. */
    private List<Problem> groundsUnsaid(Fact.Origin.AsFound found) {
        List<Problem> problems = new ArrayList<>();
        ledger.order().ifPresent(order -> {
            SavedState left = order.work().stateAfter(order.confirmed().size());
            left.grounds().forEach((conductor, count) -> {
                if (count > 0 && !found.grounds().containsKey(conductor)) {
                    problems.add(problem(Message.JOB_GROUNDS_UNSAID, count + " portable grounds", conductor));
                }
            });
            left.shorts().forEach((stage, count) -> {
                if (count > 0 && !found.shorts().containsKey(stage)) {
                    problems.add(problem(Message.JOB_GROUNDS_UNSAID, count + " shorts", stage));
                }
            });
        });
        return problems;
    }

    private List<Problem> signOn(Fact.SignedOn fact) {
        if (ledger.people.containsKey(fact.person())) {
            return no(Message.JOB_PERSON_ON, fact.person());
        }
        boolean atWork =
                ledger.currentOrder().filter(o -> o.phase() == Order.Phase.WORK).isPresent();
        return atWork ? List.of() : no(Message.JOB_NOT_AT_WORK, "signing on to the bank");
    }

    private List<Problem> reading(Bank bank, Fact.ReadingTaken fact) {
        List<Problem> problems = new ArrayList<>();
        if (bank.position(fact.position()).isEmpty()) {
            problems.add(problem(Message.POSITION_UNKNOWN, fact.position(), bank.positionHint()));
        }
        if (fact.values().keySet().stream().noneMatch(Ledger.QUANTITIES::contains)) {
            problems.add(problem(Message.JOB_READING_EMPTY, String.join(", ", sorted(Ledger.QUANTITIES))));
        }
        boolean reachable = bank.isolation().isEmpty()
                || ledger.currentOrder()
                        .filter(o -> o.phase() == Order.Phase.WORK)
                        .isPresent();
        if (!reachable) {
            problems.add(problem(Message.JOB_NOT_AT_WORK, "measuring units"));
        }
        return problems;
    }

    private List<Problem> moved(Bank bank, Fact.UnitMoved fact) {
        List<Problem> problems = new ArrayList<>();
        List<String> places = new ArrayList<>();
        fact.from().ifPresent(places::add);
        fact.to().ifPresent(places::add);
        if (places.isEmpty()) {
            problems.add(problem(Message.JOB_MOVE_NOWHERE, fact.serial()));
        }
        for (String place : places) {
            if (bank.position(place).isEmpty()) {
                problems.add(problem(Message.POSITION_UNKNOWN, place, bank.positionHint()));
            }
        }
        if (bank.isolation().isPresent()
                && ledger.currentOrder()
                        .filter(o -> o.phase() == Order.Phase.WORK)
                        .isEmpty()) {
            problems.add(problem(Message.JOB_NOT_AT_WORK, "lifting units"));
        }
        return problems;
    }

    private static List<Problem> asLeft(Bank bank, Fact.AsLeft fact) {
        Optional<Device> device = bank.isolation().flatMap(i -> i.device(fact.selector()));
        if (device.isEmpty()) {
            return no(
                    Message.ISOLATION_UNKNOWN_DEVICE,
                    fact.selector(),
                    "",
                    String.join(", ", selectors(bank).stream().map(Device::name).toList()));
        }
        List<String> positions = device.get().positions();
        return positions.contains(fact.position())
                ? List.of()
                : no(
                        Message.ISOLATION_UNKNOWN_POSITION,
                        fact.selector(),
                        fact.position(),
                        String.join(", ", positions));
    }

    private List<Problem> visit(JobEvent event, Fact.VisitAgreed fact) {
        List<Problem> problems = new ArrayList<>();
        // Somewhere it is still the day before that of the clock's own zone.
        long yesterday = Math.floorDiv(event.clock().wallMillis(), MILLIS_OF_DAY) - 1;
        if (fact.date().epochDay() < yesterday) {
            problems.add(problem(Message.JOB_VISIT_PAST, fact.date().toString()));
        }
        if (fact.purpose().isEmpty()) {
            problems.add(problem(Message.JOB_VISIT_PURPOSE));
        }
        for (String id : fact.replaces()) {
            JobEvent replaced = ledger.counted.get(id);
            if (replaced == null || !(replaced.fact() instanceof Fact.VisitAgreed)) {
                problems.add(problem(Message.JOB_VISIT_NOT_HERE, id));
            }
        }
        return problems;
    }

    private List<Problem> meter(Fact.MeterStated fact) {
        List<Problem> problems = new ArrayList<>(MeterLimits.problems(fact.limit()));
        for (String id : fact.replaces()) {
            JobEvent replaced = ledger.counted.get(id);
            if (replaced == null || !(replaced.fact() instanceof Fact.MeterStated)) {
                problems.add(problem(Message.JOB_METER_NOT_HERE, id));
            }
        }
        return problems;
    }

    private List<Problem> corrected(Fact.Corrected fact) {
        JobEvent event = ledger.counted.get(fact.event());
        if (event == null) {
            return no(Message.JOB_EVENT_NOT_HERE, fact.event());
        }
        if (ledger.withdrawn.contains(fact.event())) {
            return no(Message.JOB_EVENT_WITHDRAWN, fact.event());
        }
        boolean mayBeTakenBack = switch (event.fact()) {
            case Fact.StepConfirmed f -> true;
            // only what that person did last: what came before says nothing of who is on now
            case Fact.SignedOn f ->
                Optional.ofNullable(ledger.people.get(f.person()))
                        .filter(p -> p.event().id().equals(event.id()))
                        .isPresent();
            case Fact.SignedOff f ->
                !ledger.people.containsKey(f.person()) && event.id().equals(ledger.lastOff.get(f.person()));
            case Fact.ReadingTaken f -> true;
            case Fact.ReadingsImported f -> true;
            case Fact.SparesImported f -> true;
            case Fact.UnitMoved f -> true;
            case Fact.Measured f -> true;
            case Fact.AsLeft f -> true;
            case Fact.Noted f -> true;
            case Fact.Attached f -> true;
            case Fact.RecordRead f -> true;
            case Fact.Settled f -> true;
            case Fact.VisitAgreed f -> true;
            case Fact.MeterStated f -> true;
            case Fact.Signed f -> true;
            case Fact.Opened f -> false;
            case Fact.BankReplaced f -> false;
            case Fact.OrderMade f -> false;
            case Fact.HoldStarted f -> false;
            case Fact.Deviated f -> false;
            case Fact.Stopped f -> false;
            case Fact.Resumed f -> false;
            case Fact.ClockMoved f -> false;
            case Fact.Corrected f -> false;
            case Fact.Closed f -> false;
            case Fact.NotUnderstood f -> false;
        };
        return mayBeTakenBack ? List.of() : no(Message.JOB_NOT_TAKEN_BACK, fact.event(), FactJson.type(event.fact()));
    }

    private List<Problem> close(Bank bank) {
        List<Problem> problems = new ArrayList<>();
        ledger.order().ifPresent(order -> {
            boolean ended = order.standing() == Order.Standing.ENDED;
            if (ended || order.isUnderWay() || order.leavesSomethingOn()) {
                problems.add(problem(
                        Message.JOB_ORDER_UNFINISHED,
                        order.why().orElse("step " + (order.confirmed().size() + 1) + " is next")));
            }
            if (!order.confirmed().isEmpty()) {
                asLeftMissing(bank, order).forEach(s -> problems.add(problem(Message.JOB_AS_LEFT_MISSING, s)));
            }
        });
        if (!ledger.people.isEmpty()) {
            problems.add(problem(Message.JOB_PEOPLE_ON, String.join(", ", ledger.people.keySet()), "closing the job"));
        }
        ledger.conflicts().forEach(c -> problems.add(problem(Message.JOB_CONFLICT_OPEN, c.about())));
        return problems;
    }

    private List<String> asLeftMissing(Bank bank, Order order) {
        return selectors(bank).stream()
                .map(Device::name)
                .filter(name -> ledger.asLeft.stream()
                        .noneMatch(a -> a.fact().selector().equals(name)
                                && a.event().clock().compareTo(order.event().clock()) > 0))
                .toList();
    }

    private static List<Device> selectors(Bank bank) {
        return bank.isolation().map(Isolation::devices).orElse(List.of()).stream()
                .filter(d -> d.kind() == Device.Kind.SELECTOR)
                .toList();
    }

    private static List<Problem> tooLong(String text) {
        return text.length() <= BankFile.MAXIMUM_BYTES
                ? List.of()
                : no(Message.JOB_TABLE_LARGE, String.valueOf(text.length()), String.valueOf(BankFile.MAXIMUM_BYTES));
    }

    private static List<String> sorted(Set<String> names) {
        return names.stream().sorted().toList();
    }

    static List<Problem> no(Message message, String... arguments) {
        return List.of(problem(message, arguments));
    }

    static Problem problem(Message message, String... arguments) {
        return Problem.of(message, Place.NOWHERE, arguments);
    }
}
