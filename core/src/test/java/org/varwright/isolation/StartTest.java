package org.varwright.isolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.interlock.ConductorState;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Where an order of work may begin: what can't be so is refused, what is not known yet is said to be undecided, what is named must exist. */
class StartTest {
    private final Bank bank = Banks.tamarack();

    private Plan from(PlanRequest.Start start, String... access) {
        return Access.plan(bank, PlanRequest.to(List.of(access)).from(start));
    }

    private static PlanRequest.Start found(Map<String, Integer> grounds, Map<String, Integer> shorts) {
        return new PlanRequest.Start.Positions(Map.of(), Set.of(), grounds, shorts);
    }

    private void assertRefused(PlanRequest.Start start, String reason) {
        Plan.Refused refused = assertInstanceOf(Plan.Refused.class, from(start, "bay 1"), reason);
        assertTrue(refused.reason().startsWith("the start is refused"), refused.reason());
        assertTrue(refused.reason().contains(reason), refused.reason());
    }

    /** With the devices as they are said to stand these would be short circuits: one of both is not so. */
    @Test
    void groundsAndShortsOnWhatIsLiveAreRefused() {
        assertRefused(found(Map.of("bus", 3), Map.of()), "said to be on bus, which is live");
        assertRefused(found(Map.of("line", 3), Map.of()), "said to be on line, which is live");
        assertRefused(found(Map.of("control supply", 1), Map.of()), "said to be on control supply, which is live");
        assertRefused(
                found(Map.of("neutral of stage 2", 1), Map.of()), "said to be on neutral of stage 2, which is live");
        assertRefused(found(Map.of(), Map.of("stage 2", 6)), "units of stage 2 are said to be shorted");
    }

    @Test
    void noneFoundIsNoneAndWhatStandsOnADeadStageStays() {
        assertInstanceOf(Plan.Planned.class, from(found(Map.of("bus", 0), Map.of("stage 2", 0)), "bay 1"));
        PlanRequest.Start.Positions stageOut =
                new PlanRequest.Start.Positions(Map.of("24-2", "open"), Set.of(), Map.of("stage 2", 3), Map.of());
        OrderOfWork order = OrderOfWorkTraceTest.planned(
                bank, PlanRequest.to(List.of("bay 1")).from(stageOut));
        assertEquals(Map.of("stage 2", 3), order.start().grounds());
        assertEquals(
                Map.of(), order.stateAfter(order.steps().size()).grounds(), "it comes off before the stage goes on");
    }

    /** One clamp found where three belong grounds one phase: the others are put on before a hand goes in, and all three come off. */
    @Test
    void fewerGroundsFoundThanPhasesAreMadeUp() {
        PlanRequest.Start.Positions one =
                new PlanRequest.Start.Positions(Map.of("24-1", "open"), Set.of(), Map.of("stage 1", 1), Map.of());
        OrderOfWork order = OrderOfWorkTraceTest.planned(
                bank, PlanRequest.to(List.of("bay 1")).from(one));
        List<Task> tasks = order.steps().stream().map(OrderStep::task).toList();
        assertTrue(tasks.contains(new Task.GroundsOn("bay 1", "stage 1", 2)), tasks.toString());
        assertTrue(tasks.contains(new Task.GroundsOff("stage 1", 3)), tasks.toString());
        assertEquals(ConductorState.CHARGED, order.in().getFirst().conductors().get("stage 1"));
        assertEquals(ConductorState.GROUNDED, order.in().getLast().conductors().get("stage 1"));
    }

    @Test
    void aSavedStateWithGroundsOnWhatIsLiveIsRefusedToo() {
        SavedState service = OrderOfWorkTraceTest.planned(bank, PlanRequest.to(List.of("bay 1")))
                .stateAfter(0);
        SavedState grounded = new SavedState(
                service.bank(),
                service.positions(),
                service.openDoors(),
                service.bolts(),
                service.exchanges(),
                service.charges(),
                Map.of("bus", 3),
                Map.of());
        assertRefused(new PlanRequest.Start.Saved(grounded), "said to be on bus, which is live");
    }

    private List<Message> messages(SavedState state) {
        return assertThrows(VarwrightException.class, () -> from(new PlanRequest.Start.Saved(state), "bay 1"))
                .problems()
                .stream()
                .map(Problem::message)
                .toList();
    }

    private static <V> Map<String, V> without(Map<String, V> all, String name) {
        Map<String, V> fewer = new LinkedHashMap<>(all);
        fewer.remove(name);
        return fewer;
    }

    /** A device, bolt, door, exchange or charge that the state does not name is not known, and nobody plans over that. */
    @Test
    void aSavedStateOfAnotherBankOrWithAPartMissingIsRefused() {
        SavedState s = OrderOfWorkTraceTest.planned(bank, PlanRequest.to(List.of("bay 1")))
                .stateAfter(0);
        assertEquals(
                List.of(Message.ISOLATION_STATE_OTHER_BANK),
                messages(new SavedState(
                        "another",
                        s.positions(),
                        s.openDoors(),
                        s.bolts(),
                        s.exchanges(),
                        s.charges(),
                        Map.of(),
                        Map.of())));
        for (int part = 0; part < 5; part++) {
            SavedState fewer = new SavedState(
                    s.bank(),
                    part == 0 ? without(s.positions(), "89-2") : s.positions(),
                    part == 1 ? without(s.openDoors(), "bay 1") : s.openDoors(),
                    part == 2 ? without(s.bolts(), "89-2/open/TF-2") : s.bolts(),
                    part == 3
                            ? without(
                                    s.exchanges(),
                                    s.exchanges().keySet().iterator().next())
                            : s.exchanges(),
                    part == 4 ? without(s.charges(), "stage 3") : s.charges(),
                    Map.of(),
                    Map.of());
            assertEquals(List.of(Message.ISOLATION_STATE_NAMES), messages(fewer), "part " + part);
        }
        Map<String, String> odd = new LinkedHashMap<>(s.positions());
        odd.put("89-2", "half");
        assertEquals(
                List.of(Message.ISOLATION_UNKNOWN_POSITION),
                messages(new SavedState(
                        s.bank(), odd, s.openDoors(), s.bolts(), s.exchanges(), s.charges(), Map.of(), Map.of())));
    }

    @Test
    void everythingThatDoesNotExistIsNamedAtOnce() {
        PlanRequest.Start start = new PlanRequest.Start.Positions(
                Map.of("89-9", "open", "89-2", "half"), Set.of("attic"), Map.of("bvs", 3), Map.of("stage 9", 6));
        VarwrightException wrong = assertThrows(VarwrightException.class, () -> from(start, "bay 1"));
        assertEquals(
                List.of(
                        Message.ISOLATION_UNKNOWN_POSITION,
                        Message.ISOLATION_UNKNOWN_COUNTED,
                        Message.ISOLATION_UNKNOWN_COUNTED,
                        Message.ISOLATION_UNKNOWN_COMPARTMENT,
                        Message.ISOLATION_UNKNOWN_DEVICE),
                wrong.problems().stream().map(Problem::message).toList());
        assertTrue(wrong.problems().get(1).text().contains("\"bus\""), "and what was meant, perhaps");
    }

    /** With doors open on a live conductor nobody plans on: go clear first. */
    @Test
    void aStartThatIsNotSafeIsRefused() {
        Bank unlocked = Reworked.with(
                bank,
                i -> new org.varwright.bank.Isolation(
                        i.sources(),
                        i.devices(),
                        i.compartments(),
                        i.locks().stream()
                                .filter(l -> !l.on().name().equals("bay 1"))
                                .toList(),
                        i.keys(),
                        i.exchanges(),
                        i.interlocks(),
                        i.delays(),
                        i.start()));
        Plan.Refused refused = assertInstanceOf(
                Plan.Refused.class,
                Access.plan(
                        unlocked,
                        PlanRequest.to(List.of("bay 2"))
                                .from(new PlanRequest.Start.Positions(Map.of(), Set.of("bay 1")))));
        assertTrue(
                refused.reason().contains("exposed-live") && refused.reason().contains("Go clear"), refused.reason());
    }

    /** Given up early, the answer is the same plan, the same refusal, or not known: over every start and every kind of answer. */
    @Test
    void fewStatesGiveTheSameAnswerOrNone() {
        SavedState half = OrderOfWorkTraceTest.planned(bank, PlanRequest.to(List.of("bay 1")))
                .stateAfter(12);
        List<PlanRequest> requests = List.of(
                PlanRequest.to(List.of("bay 1")),
                PlanRequest.to(List.of("controls")),
                PlanRequest.to(List.of("bay 1", "bay 2")).from(new PlanRequest.Start.Saved(half)),
                PlanRequest.to(List.of("bay 1"))
                        .from(new PlanRequest.Start.Positions(Map.of("24-1", "open"), Set.of())),
                PlanRequest.to(List.of("bay 1"))
                        .from(new PlanRequest.Start.Positions(Map.of("57-2", "closed"), Set.of())),
                PlanRequest.to(List.of("incoming")).without(Set.of("52-7")));
        int undecided = 0;
        for (PlanRequest request : requests) {
            Plan whole = Access.plan(bank, request);
            for (int limit : new int[] {1, 3, 8, 15, 25, 40, 70, 130, 260, 600, 2_000}) {
                PlanRequest few =
                        new PlanRequest(request.compartments(), request.start(), request.devicesNotToUse(), limit);
                Plan plan = Access.plan(bank, few);
                if (plan instanceof Plan.Undecided given) {
                    assertTrue(given.limit() <= limit, request + " with " + limit);
                    undecided++;
                } else {
                    assertEquals(whole, plan, request + " with " + limit);
                }
            }
        }
        assertTrue(undecided > 10, undecided + " undecided");
    }
}
