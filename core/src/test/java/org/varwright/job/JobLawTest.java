package org.varwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.isolation.OrderStep;
import org.varwright.quantity.CalendarDate;

/**
 * Two tablets that do as they like and meet now and then: whatever order their lines arrive in, they tell the same job, and a plain reader of the lines finds no step out of
 * order, no wait cut short, nobody on the bank when the way back begins.
 */
class JobLawTest {
    private static final int ROUNDS = 12;
    private static final int ACTIONS = 120;
    private static final List<String> PEOPLE = List.of("R. Imhof", "T. Okafor", "L. Brandt");

    @Test
    void whateverTwoTabletsDo() {
        int accepted = 0;
        int refused = 0;
        int notCounted = 0;
        int steps = 0;
        int waysBack = 0;
        for (int round = 0; round < ROUNDS; round++) {
            long seed = 20_261_125L + round;
            Random random = new Random(seed);
            Walk a = new Walk("tablet-a", JobLog.empty("job-1"), 1_795_000_000_000L);
            a.yes(new Fact.Opened("law", JobTest.TAMARACK, Optional.empty(), Optional.empty(), Optional.empty()));
            a.yes(new Fact.OrderMade(List.of("bay 2"), Fact.Origin.AsFound.inService(), Optional.empty(), "first"));
            if (round % 2 == 0) {
                a.stepsUntil(Order.Phase.WORK);
            }
            Walk b = new Walk("tablet-b", a.log, a.now + random.nextInt(60_000));
            for (int i = 0; i < ACTIONS; i++) {
                Walk walk = random.nextInt(4) == 0 ? b : a;
                if (random.nextInt(10) == 0) {
                    a.log = a.log.merge(b.log);
                    b.log = b.log.merge(a.log);
                }
                if (act(walk, random)) {
                    accepted++;
                } else {
                    refused++;
                }
            }
            String where = "seed " + seed;
            JobLog ab = a.log.merge(b.log);
            JobLog ba = b.log.merge(a.log).merge(a.log);
            assertEquals(ab, ba, where + ": merging in any order, any number of times");
            assertEquals(ab.hash(), ba.hash(), where);
            assertEquals(List.of(), ab.findings(), where);
            assertEquals(ab, JobLog.read("job", ab.text()), where + ": written and read again");
            Job job = Job.of(ab, Walk.PLANNER);
            assertEquals(
                    JobJson.of(job).print(),
                    JobJson.of(Job.of(ba, Walk.PLANNER)).print(),
                    where);
            readPlainly(job, where);
            visitsPlainly(job, where);
            metersPlainly(job, where);
            notCounted += job.notCounted().size();
            waysBack += (int) job.orders().stream()
                    .filter(o -> o.confirmed().size() > o.work().in().size())
                    .count();
            steps += job.orders().stream().mapToInt(o -> o.confirmed().size()).sum();
        }
        System.out.println("job laws: " + accepted + " events written, " + refused + " refused, " + notCounted
                + " not counted after merging, " + steps + " steps confirmed, " + waysBack + " ways back begun");
        assertTrue(
                steps > ROUNDS * 10 && waysBack > 0 && refused > 0 && notCounted > 0,
                "the laws were tried on something");
    }

    private static boolean act(Walk walk, Random random) {
        walk.now += random.nextInt(120_000);
        Optional<Fact> fact = fact(walk, random);
        if (fact.isEmpty()) {
            return false;
        }
        return switch (walk.propose(fact.get())) {
            case Proposal.Accepted accepted -> {
                walk.log = walk.log.with(accepted.event());
                yield true;
            }
            case Proposal.Refused refused -> {
                assertTrue(!refused.why().isEmpty());
                yield false;
            }
        };
    }

    private static Optional<Fact> fact(Walk walk, Random random) {
        Order order = walk.order();
        String person = PEOPLE.get(random.nextInt(PEOPLE.size()));
        int dice = random.nextInt(100);
        if (dice < 70) {
            Optional<OrderStep> next = order.next();
            if (next.isEmpty()) {
                return Optional.empty();
            }
            boolean starts = next.get().kind() == OrderStep.Kind.HOLD && random.nextInt(3) == 0;
            return Optional.of(
                    starts ? new Fact.HoldStarted(order.id(), next.get().n()) : walk.fullConfirmation());
        }
        if (dice < 76) {
            return Optional.of(new Fact.SignedOn(person, Optional.empty()));
        }
        if (dice < 84) {
            return Optional.of(new Fact.SignedOff(person));
        }
        if (dice < 88) {
            return Optional.of(new Fact.ReadingTaken(
                    "stage 2/A/u" + (1 + random.nextInt(2)), Map.of("capacitance", random.nextInt(20) + " uF")));
        }
        if (dice < 90) {
            return Optional.of(new Fact.Stopped("weather"));
        }
        if (dice < 94) {
            return Optional.of(new Fact.Resumed("clear"));
        }
        if (dice < 95) {
            return Optional.of(new Fact.Corrected(
                    walk.log
                            .events()
                            .get(random.nextInt(walk.log.events().size()))
                            .event()
                            .id(),
                    "slip"));
        }
        if (dice < 96) {
            return order.next().map(s -> new Fact.Deviated(order.id(), s.n(), "jammed"));
        }
        if (dice < 97) {
            List<String> known = walk.job().nextVisits().stream()
                    .filter(v -> random.nextBoolean())
                    .map(v -> v.event().id())
                    .toList();
            return Optional.of(new Fact.VisitAgreed(new CalendarDate(2027, 1 + random.nextInt(12), 1), "again", known));
        }
        if (dice < 98) {
            Optional<String> name = random.nextBoolean() ? Optional.of("bridge") : Optional.empty();
            List<String> known = walk.job().meterLimits().of(name).stream()
                    .filter(m -> random.nextBoolean())
                    .map(m -> m.event().id())
                    .toList();
            return Optional.of(new Fact.MeterStated(name, 1 + random.nextInt(4) + " %", known));
        }
        Fact.Origin origin = random.nextBoolean() ? new Fact.Origin.AfterLastStep() : Fact.Origin.AsFound.inService();
        return Optional.of(new Fact.OrderMade(
                List.of("bay 2", "bay " + (1 + random.nextInt(4))), origin, Optional.of(order.id()), "scope"));
    }

    /** Reads what counted straight from the lines, with none of the rules. */
    private static void readPlainly(Job job, String where) {
        Set<String> without = job.notCounted().stream().map(n -> n.event().id()).collect(Collectors.toSet());
        List<JobEvent> counted = job.log().events().stream()
                .map(LoggedEvent::event)
                .filter(e -> !without.contains(e.id()))
                .toList();
        for (Order order : job.orders()) {
            int expected = 1;
            for (Order.Confirmation confirmation : order.confirmed()) {
                assertEquals(expected, confirmation.fact().step(), where + ": steps one after another");
                expected++;
                OrderStep step = order.work().steps().get(confirmation.fact().step() - 1);
                if (step.kind() == OrderStep.Kind.HOLD && step.seconds().isPresent()) {
                    long start = lastStart(counted, confirmation, order);
                    assertTrue(
                            confirmation.event().clock().wallMillis() - start
                                    >= step.seconds().getAsDouble() * 1_000,
                            where + ": a wait of " + step.seconds().getAsDouble() + " s was cut short");
                }
                assertEquals(
                        Set.of(),
                        onBefore(job.log(), without, confirmation.event()),
                        where + ": step " + step.n() + " with people on");
                assertEquals(
                        Set.of(),
                        stopsBefore(job.log(), without, confirmation.event()),
                        where + ": step " + step.n() + " while stopped");
                assertNothingDoneOutOfTurn(job.log(), without, confirmation, where);
            }
            if (order.event().fact() instanceof Fact.OrderMade made
                    && made.origin() instanceof Fact.Origin.AfterLastStep after) {
                Order before = job.orders().stream()
                        .filter(o -> Optional.of(o.id()).equals(made.replaces()))
                        .findFirst()
                        .orElseThrow();
                assertEquals(
                        OptionalInt.of(before.confirmed().size()), after.steps(), where + ": made from what it said");
            }
        }
    }

    /** Before a confirmation that counts nobody did a later step of that order, or said that one was not done as written. */
    private static void assertNothingDoneOutOfTurn(
            JobLog log, Set<String> without, Order.Confirmation confirmation, String where) {
        String order = confirmation.fact().order();
        for (LoggedEvent logged : log.events()) {
            JobEvent event = logged.event();
            if (event.id().equals(confirmation.event().id())) {
                return;
            }
            boolean outOfTurn = without.contains(event.id())
                    && event.fact() instanceof Fact.StepConfirmed step
                    && step.order().equals(order)
                    && step.step() >= confirmation.fact().step();
            boolean deviated = event.fact() instanceof Fact.Deviated deviation
                    && deviation.order().equals(order);
            assertFalse(outOfTurn || deviated, where + ": a step after " + event.id());
        }
    }

    /** Every device's last word on the next visit stands, unless another took its place by name, said the same later, or was settled on. */
    private static void visitsPlainly(Job job, String where) {
        List<Counted<Fact.VisitAgreed>> next = job.nextVisits();
        assertEquals(
                next.size(),
                next.stream().map(v -> v.event().device()).distinct().count(),
                where + ": one word a device");
        assertEquals(
                next.size() > 1,
                job.conflicts().stream().anyMatch(c -> c.about().equals("the next visit")),
                where + ": two words are a conflict");
        List<Counted<Fact.VisitAgreed>> all = job.counted(Fact.VisitAgreed.class);
        boolean isSettled = job.counted(Fact.Settled.class).size() > 0;
        if (!all.isEmpty() && !isSettled) {
            assertEquals(
                    all.getLast().event().id(), next.getLast().event().id(), where + ": the latest word always stands");
        }
    }

    /** Of each meter every device has one word at most, the least of what stands judges, and one nobody spoke of counts by the usual limits. */
    private static void metersPlainly(Job job, String where) {
        MeterLimits limits = job.meterLimits();
        for (Optional<String> name : List.of(Optional.<String>empty(), Optional.of("bridge"))) {
            List<Counted<Fact.MeterStated>> stand = limits.of(name);
            assertEquals(
                    stand.size(),
                    stand.stream()
                            .map(m -> m.event().device())
                            .collect(Collectors.toSet())
                            .size(),
                    where + ": one word a device");
            int least = stand.stream()
                    .mapToInt(m -> Integer.parseInt(m.fact().limit().replace(" %", "")))
                    .min()
                    .orElse(1);
            double judges =
                    name.isEmpty() ? limits.limit() : limits.byInstrument().getOrDefault("bridge", 0.01);
            assertEquals(least / 100.0, judges, 1e-15, where);
        }
    }

    private static long lastStart(List<JobEvent> counted, Order.Confirmation confirmation, Order order) {
        long start = Long.MAX_VALUE;
        for (JobEvent event : counted) {
            if (event.id().equals(confirmation.event().id())) {
                break;
            }
            if (event.device().equals(confirmation.event().device())
                    && event.fact() instanceof Fact.HoldStarted hold
                    && hold.order().equals(order.id())
                    && hold.step() == confirmation.fact().step()) {
                start = event.clock().wallMillis();
            }
        }
        return start;
    }

    /** Stops, counted or not, that no resumption names. */
    private static Set<String> stopsBefore(JobLog log, Set<String> without, JobEvent until) {
        Set<String> stops = new HashSet<>();
        for (LoggedEvent logged : log.events()) {
            JobEvent event = logged.event();
            if (event.id().equals(until.id())) {
                break;
            }
            if (event.fact() instanceof Fact.Stopped) {
                stops.add(event.id());
            }
            if (event.fact() instanceof Fact.Resumed resumed && !without.contains(event.id())) {
                resumed.stops().forEach(stops::remove);
            }
        }
        return stops;
    }

    /** Who signed on, counted or not, and was not signed off; taken back counts where it counts. */
    private static Set<String> onBefore(JobLog log, Set<String> without, JobEvent until) {
        Set<String> withdrawn = new HashSet<>();
        List<JobEvent> before = new ArrayList<>();
        for (LoggedEvent logged : log.events()) {
            JobEvent event = logged.event();
            if (event.id().equals(until.id())) {
                break;
            }
            if (event.fact() instanceof Fact.Corrected corrected && !without.contains(event.id())) {
                withdrawn.add(corrected.event());
            }
            before.add(event);
        }
        Set<String> on = new HashSet<>();
        for (JobEvent event : before) {
            if (withdrawn.contains(event.id())) {
                continue;
            }
            if (event.fact() instanceof Fact.SignedOn person) {
                on.add(person.person());
            }
            if (event.fact() instanceof Fact.SignedOff person && !without.contains(event.id())) {
                on.remove(person.person());
            }
        }
        return on;
    }
}
