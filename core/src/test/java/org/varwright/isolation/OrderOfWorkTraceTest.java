package org.varwright.isolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;

/** Replays every order of work on a plain simulator that shares no code with the scheme. */
class OrderOfWorkTraceTest {
    @Test
    void everyOrderOfWorkOfTheExamplesIsAllowedSafeAndComplete() {
        for (Bank bank : Banks.all()) {
            for (var compartment : bank.isolation().orElseThrow().compartments()) {
                Plan plan = Access.plan(bank, PlanRequest.to(List.of(compartment.name())));
                Plan.Planned planned = assertInstanceOf(
                        Plan.Planned.class, plan, bank.name() + ", " + compartment.name() + ": " + plan);
                replay(planned.order());
            }
        }
    }

    @Test
    void anOrderFromWhereTheScopeChangedIsReplayedFromThere() {
        Bank bank = Banks.tamarack();
        OrderOfWork first = planned(bank, PlanRequest.to(List.of("bay 1")));
        for (int n = 0; n <= first.in().size(); n++) {
            SavedState half = SavedStateReader.read(
                    "state.json", first.stateAfter(n).json().print());
            assertEquals(first.stateAfter(n), half, "what is saved is what is read, step " + n);
            if (n % 7 == 0 || n == first.in().size()) {
                OrderOfWork next = planned(
                        bank, PlanRequest.to(List.of("bay 1", "bay 2")).from(new PlanRequest.Start.Saved(half)));
                replay(next);
            }
        }
    }

    static OrderOfWork planned(Bank bank, PlanRequest request) {
        Plan plan = Access.plan(bank, request);
        return assertInstanceOf(Plan.Planned.class, plan, request + " " + plan).order();
    }

    @Test
    void severalCompartmentsAtOnceAreReplayedToo() {
        Bank bank = Banks.tamarack();
        Plan.Planned planned = assertInstanceOf(
                Plan.Planned.class, Access.plan(bank, PlanRequest.to(List.of("bay 1", "bay 3", "incoming"))));
        replay(planned.order());
    }

    /** Moves allowed, properties kept, tests before hands, everything on comes off, the bank ends as it began. */
    static void replay(OrderOfWork order) {
        Bank bank = order.bank();
        Isolation isolation = bank.isolation().orElseThrow();
        PlainBank plain = new PlainBank(bank);
        Map<String, String> atStart = new HashMap<>(plain.position);
        Set<Integer> boltsAtStart = new HashSet<>(plain.withdrawn);
        plain.take(order.start());
        Set<String> peoples = new HashSet<>();
        order.responsibilities().forEach(r -> peoples.add(r.property()));
        Map<String, Integer> on = new HashMap<>();
        order.start().grounds().forEach((name, count) -> on.put("ground " + name, count));
        order.start().shorts().forEach((name, count) -> on.put("short " + name, count));
        boolean clean = on.isEmpty();
        Set<String> tested = new HashSet<>();
        boolean testerProved = false;
        boolean locked = false;
        int counted = -1;
        int number = 0;
        for (OrderStep step : order.steps()) {
            assertEquals(++number, step.n());
            assertFalse(
                    step.text().isBlank()
                            || step.where().isBlank()
                            || step.why().isBlank(),
                    "step " + number);
            for (Move move : step.moves()) {
                String at = bank.name() + " step " + number + " " + move.text();
                assertTrue(plain.allows(move), at);
                for (String broken : plain.make(move)) {
                    String property = broken.split(" ", 2)[0];
                    assertTrue(
                            property.equals("exposed-low-voltage") || property.equals("ungrounded-entry"),
                            at + " breaks " + broken);
                    assertTrue(peoples.contains(property), at + " breaks " + broken + ", which nobody was told");
                }
                if (move instanceof Move.OpenDoor) {
                    assertTrue(locked, at + ": no personal lock is on yet");
                    assertTrue(on.isEmpty() || !clean, at);
                } else if (move instanceof Move.Operate) {
                    assertTrue(on.isEmpty() || !clean, at + ": something is moved while grounds or shorts are on");
                }
            }
            switch (step.task()) {
                case Task.TesterProved proved -> {
                    testerProved = !proved.again();
                    if (proved.again()) {
                        tested.add("proved again");
                    }
                }
                case Task.TestedDead dead -> {
                    assertTrue(testerProved, "the tester was not proved before step " + number);
                    assertFalse(plain.stateOf(dead.conductor()).equals("live"));
                    assertFalse(plain.stateOf(dead.conductor()).equals("charged"));
                    tested.add(dead.compartment() + " " + dead.conductor());
                }
                case Task.StickUsed ignored -> assertAllTested(order, isolation, tested, number);
                case Task.ShortsOn shorts -> {
                    assertAllTested(order, isolation, tested, number);
                    assertEquals(
                            bank.stage(shorts.stage()).orElseThrow().positions().size(), shorts.count());
                    on.put("short " + shorts.stage(), shorts.count());
                }
                case Task.GroundsOn grounds -> {
                    assertAllTested(order, isolation, tested, number);
                    on.put("ground " + grounds.conductor(), grounds.count());
                }
                case Task.ShortsOff off -> assertEquals(on.remove("short " + off.stage()), off.count());
                case Task.GroundsOff off -> assertEquals(on.remove("ground " + off.conductor()), off.count());
                case Task.LocksOn ignored -> locked = true;
                case Task.LocksOff ignored -> {
                    assertTrue(on.isEmpty(), "locks come off while " + on + " are still on");
                    locked = false;
                }
                case Task.Counted count
                when count.of() == Task.Counted.Things.SHORTS_AND_GROUNDS -> {
                    if (!on.isEmpty() || counted < 0) {
                        counted =
                                on.values().stream().mapToInt(Integer::intValue).sum();
                        assertEquals(counted, count.count());
                    } else {
                        assertTrue(on.isEmpty());
                        assertEquals(counted, count.count(), "as many off as on");
                    }
                }
                case Task.Confirmed confirmed
                when confirmed.of() == Task.Confirmed.Point.WORK_MAY_BEGIN -> {
                    assertAllTested(order, isolation, tested, number);
                    assertTrue(plain.openDoors.containsAll(order.access()));
                    for (String conductor : exposed(order, isolation)) {
                        boolean low = isolation.sources().stream()
                                .anyMatch(s -> s.isLowVoltage() && s.at().equals(conductor));
                        assertTrue(
                                low
                                        || plain.stateOf(conductor).equals("grounded")
                                        || on.containsKey("ground " + conductor),
                                conductor + " is not grounded when work begins");
                    }
                }
                default -> {}
            }
            Map<String, ConductorState> said = step.conductors();
            for (var entry : said.entrySet()) {
                String is = on.containsKey("ground " + entry.getKey()) ? "grounded" : plain.stateOf(entry.getKey());
                String says = entry.getValue() == ConductorState.LIVE_LOW_VOLTAGE
                        ? "low"
                        : entry.getValue().code();
                assertEquals(is, says, bank.name() + " step " + number + ": " + entry.getKey());
            }
        }
        assertEquals(Map.of(), on);
        assertFalse(locked);
        assertEquals(atStart, plain.position);
        assertEquals(boltsAtStart, plain.withdrawn);
        assertEquals(Set.of(), plain.openDoors);
        assertEquals(Set.of(), plain.given);
    }

    private static List<String> exposed(OrderOfWork order, Isolation isolation) {
        List<String> all = new ArrayList<>();
        order.access()
                .forEach(a -> all.addAll(isolation.compartment(a).orElseThrow().exposes()));
        return all;
    }

    private static void assertAllTested(OrderOfWork order, Isolation isolation, Set<String> tested, int step) {
        for (String compartment : order.access()) {
            for (String conductor :
                    isolation.compartment(compartment).orElseThrow().exposes()) {
                assertTrue(
                        tested.contains(compartment + " " + conductor),
                        "step " + step + " comes before " + conductor + " is tested in " + compartment);
            }
        }
        assertTrue(tested.contains("proved again"), "step " + step + " comes before the tester is proved again");
    }
}
