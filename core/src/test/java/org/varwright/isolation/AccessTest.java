package org.varwright.isolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/**
 * <pre>
 *  line ──[52-7]── cable ──/89-2/── bus ──┬──(24-1)── stage 1     43-2 off ─TF-1─ 89-2 open ─TF-2─ 57-2 closed ─TF-3─ exchange
 *                                         ├── …                                          TF-4 … bays, TF-8 + TF-9 incoming
 *                                   57-2 ─┴─ ground
 * </pre>
 */
class AccessTest {
    private final Bank bank = Banks.tamarack();

    private Plan plan(PlanRequest request) {
        return Access.plan(bank, request);
    }

    private OrderOfWork order(String... access) {
        return OrderOfWorkTraceTest.planned(bank, PlanRequest.to(List.of(access)));
    }

    private static List<String> moves(List<OrderStep> steps) {
        List<String> texts = new ArrayList<>();
        steps.forEach(s -> s.moves().forEach(m -> texts.add(m.text())));
        return texts;
    }

    @Test
    void theWayIntoABayIsTheOneThatTheKeysPrescribe() {
        OrderOfWork order = order("bay 1");
        // selector, four switches, 89-2, 57-2 at 2; the door at 2; four waits, six bolts, the exchange at 1
        assertEquals(2 * (1 + 4 + 1 + 1) + 2 + 4 + 6 + 1, order.cost());
        List<String> moves = moves(order.in());
        assertEquals("turn 43-2 to off", moves.getFirst());
        assertEquals("open the door of bay 1", moves.getLast());
        assertFalse(moves.contains("open 52-7"), "somebody far away is not needed");
        Map<String, ConductorState> atWork = order.in().getLast().conductors();
        assertEquals(ConductorState.GROUNDED, atWork.get("bus"));
        assertEquals(ConductorState.GROUNDED, atWork.get("stage 1"), "by portable grounds");
        assertEquals(ConductorState.LIVE, atWork.get("cable"));
        assertEquals(ConductorState.FLOATING, atWork.get("stage 2"));
    }

    @Test
    void theSameRequestGivesTheSamePaperEveryTime() {
        String first = IsolationText.of(bank, List.of("bay 2"), plan(PlanRequest.to(List.of("bay 2"))));
        assertEquals(first, IsolationText.of(bank, List.of("bay 2"), plan(PlanRequest.to(List.of("bay 2")))));
    }

    @Test
    void theNeutralIsTestedDischargedAndGroundedAsAFourthConductor() {
        OrderOfWork order = order("bay 1");
        assertTrue(order.in().stream()
                .filter(s -> s.task().equals(new Task.TestedDead("bay 1", "stage 1")))
                .anyMatch(s -> s.items().contains("neutral of stage 1 to ground (a fourth conductor)")));
        assertTrue(order.in().stream()
                .anyMatch(s -> s.task().equals(new Task.GroundsOn("bay 1", "neutral of stage 1", 1))));
        assertTrue(order.responsibilities().stream().anyMatch(r -> r.text().contains("floats")));
    }

    @Test
    void aHoldTakesTheLongerOfStandardAndDecayAndEndsWithProveDead() {
        OrderStep hold = order("bay 1").in().stream()
                .filter(s -> s.kind() == OrderStep.Kind.HOLD)
                .findFirst()
                .orElseThrow();
        assertEquals(
                org.varwright.discharge.Discharge.of(bank, Optional.empty()).longestWaitSeconds(),
                hold.seconds().orElseThrow());
        assertEquals(4, hold.moves().size(), "the waits of all stages run together");
        assertTrue(hold.expected().endsWith("now prove dead"));
        assertTrue(hold.why().contains("failed resistor"));
        assertTrue(hold.basis().isPresent());
    }

    @Test
    void everyIsolatingOrGroundingMoveIsFollowedByALook() {
        OrderOfWork order = order("incoming");
        for (int i = 0; i < order.in().size(); i++) {
            for (Move move : order.in().get(i).moves()) {
                boolean switching =
                        move instanceof Move.Operate o && !o.device().equals("43-2");
                if (switching) {
                    Task next = order.in().get(i + 1).task();
                    assertEquals(
                            move.what(),
                            assertInstanceOf(Task.Looked.class, next).device());
                }
            }
        }
    }

    @Test
    void stagesComeBackOneByOneInManualWithTheirCurrents() {
        OrderOfWork order = order("bay 1");
        List<OrderStep> energize = order.back().stream()
                .filter(s -> s.kind() == OrderStep.Kind.ENERGIZE)
                .toList();
        assertEquals(4, energize.size());
        // 300 kvar a leg at 7.96 kV: I = Q/V · (13.8/√3)/7.96 by hand
        double expected = 300e3 / 7960.0 * (13.8e3 / Math.sqrt(3.0) / 7960.0);
        assertEquals(
                expected, NominalCurrent.amperes(energize.getFirst().basis().orElseThrow()), 1e-9 * expected);
        List<String> moves = moves(order.back());
        assertTrue(moves.indexOf("turn 43-2 to manual") < moves.indexOf("close 24-1"));
        assertTrue(moves.indexOf("turn 43-2 to auto") > moves.indexOf("close 24-4"));
        assertTrue(order.back().stream()
                .anyMatch(s -> s.task().equals(new Task.Confirmed(Task.Confirmed.Point.SELECTOR, "43-2"))));
    }

    @Test
    void aControlCubicleIsPlannedWithItsSupplyAsPeoplesBusiness() {
        OrderOfWork order = order("controls");
        assertEquals(
                List.of("exposed-low-voltage"),
                order.responsibilities().stream().map(r -> r.property()).toList());
        assertTrue(order.in().stream()
                .anyMatch(s -> s.task().equals(new Task.Confirmed(Task.Confirmed.Point.SOURCE, "station service"))
                        && s.text().contains("lock it there")));
    }

    @Test
    void whatDoesNotExistIsNamedWithWhatDoes() {
        VarwrightException wrong = assertThrows(
                VarwrightException.class,
                () -> plan(PlanRequest.to(List.of("bai 1")).without(Set.of("89-3"))));
        assertEquals(
                List.of(Message.ISOLATION_UNKNOWN_COMPARTMENT, Message.ISOLATION_UNKNOWN_DEVICE),
                wrong.problems().stream().map(p -> p.message()).toList());
        assertTrue(wrong.problems().getFirst().text().contains("\"bay 1\""));
        assertThrows(VarwrightException.class, () -> plan(PlanRequest.to(List.of())));
    }

    @Test
    void anImpossibleStartIsRefusedWithTheReason() {
        Plan.Refused refused = assertInstanceOf(
                Plan.Refused.class,
                plan(PlanRequest.to(List.of("bay 1"))
                        .from(new PlanRequest.Start.Positions(Map.of("57-2", "closed"), Set.of()))));
        assertTrue(refused.reason().contains("the start is refused"), refused.reason());
        SavedState service = order("bay 1").stateAfter(0);
        Map<String, String> positions = new java.util.LinkedHashMap<>(service.positions());
        positions.put("57-2", "closed");
        SavedState defeated = new SavedState(
                service.bank(),
                positions,
                service.openDoors(),
                service.bolts(),
                service.exchanges(),
                service.charges(),
                Map.of(),
                Map.of());
        Plan.Refused saved = assertInstanceOf(
                Plan.Refused.class, plan(PlanRequest.to(List.of("bay 1")).from(new PlanRequest.Start.Saved(defeated))));
        assertTrue(saved.reason().contains("lock"), saved.reason());
    }

    @Test
    void aStartWithOneStageOutIsPlannedFromThere() {
        OrderOfWork order = OrderOfWorkTraceTest.planned(
                bank,
                PlanRequest.to(List.of("bay 1"))
                        .from(new PlanRequest.Start.Positions(Map.of("24-1", "open"), Set.of())));
        assertFalse(moves(order.in()).contains("open 24-1"));
        OrderOfWorkTraceTest.replay(order);
    }

    @Test
    void withoutADeviceThatIsNeededThereIsNoPlan() {
        Plan.Refused refused = assertInstanceOf(
                Plan.Refused.class, plan(PlanRequest.to(List.of("incoming")).without(Set.of("52-7"))));
        assertTrue(refused.reason().contains("without 52-7"), refused.reason());
        assertTrue(refused.wayToHarm().isEmpty(), "the locks let nobody in at all");
    }

    @Test
    void aDoorToTheLineIsRefusedWithTheWayInWhichItWouldHurt() {
        Bank open = Reworked.with(bank, i -> {
            List<Compartment> more = new ArrayList<>(i.compartments());
            more.add(new Compartment("feeder box", List.of("line"), Optional.empty(), Optional.empty()));
            return Reworked.compartments(i, more);
        });
        Plan.Refused refused =
                assertInstanceOf(Plan.Refused.class, Access.plan(open, PlanRequest.to(List.of("feeder box"))));
        assertEquals(List.of(new Move.OpenDoor("feeder box")), refused.wayToHarm());
        assertTrue(refused.harm().contains("exposed-live"), refused.harm());
        String text = IsolationText.of(open, List.of("feeder box"), refused);
        assertTrue(text.startsWith("NO ORDER OF WORK"), text);
    }

    @Test
    void givenUpIsUndecidedAndNeverAPlan() {
        PlanRequest few = new PlanRequest(List.of("bay 1"), new PlanRequest.Start.AsInFile(), Set.of(), 5);
        Plan plan = plan(few);
        assertEquals(new Plan.Undecided(5), plan);
        assertTrue(IsolationText.of(bank, List.of("bay 1"), plan).startsWith("UNDECIDED"));
    }

    @Test
    void paperKeepsToItsWidth() {
        OrderOfWork order = order("bay 1", "incoming");
        String paper = IsolationText.of(bank, order.access(), new Plan.Planned(order)) + SequenceCardText.of(order);
        assertTrue(paper.lines().allMatch(l -> l.length() <= 100), "a line is longer than 100 columns");
    }

    @Test
    void iecBanksSpeakOfEarth() {
        Bank iec = Banks.demo("hallin-moor-2");
        OrderOfWork order = OrderOfWorkTraceTest.planned(iec, PlanRequest.to(List.of("mesh enclosure")));
        String paper = IsolationText.of(iec, order.access(), new Plan.Planned(order));
        assertTrue(paper.contains("earthing switch"));
        assertFalse(
                paper.toLowerCase(java.util.Locale.ROOT).matches("(?s).*\\bground.*"), "IEEE words in an IEC paper");
    }

    /** A second feeder over a tie that no lock holds: the plan opens it by rule, and both sources are crossed off. */
    @Test
    void aSecondSourceBehindATieIsOpenedByRule() {
        Bank tied = Reworked.with(bank, i -> {
            List<EnergySource> sources = new ArrayList<>(i.sources());
            sources.add(new EnergySource("utility feeder 8", "bus 2", OptionalDouble.empty(), Optional.empty()));
            List<Device> devices = new ArrayList<>(i.devices());
            devices.add(new Device(
                    "52-T",
                    Device.Kind.BREAKER,
                    Device.positionsOf(Device.Kind.BREAKER, false),
                    Optional.of(new Device.Between("bus", "bus 2")),
                    false,
                    false,
                    Optional.empty(),
                    Optional.of("window"),
                    Optional.empty(),
                    Optional.empty()));
            return new org.varwright.bank.Isolation(
                    sources,
                    devices,
                    i.compartments(),
                    i.locks(),
                    i.keys(),
                    i.exchanges(),
                    i.interlocks(),
                    i.delays(),
                    i.start());
        });
        OrderOfWork order = OrderOfWorkTraceTest.planned(tied, PlanRequest.to(List.of("bay 1")));
        OrderOfWorkTraceTest.replay(order);
        OrderStep tie = order.in().stream()
                .filter(s -> s.moves().contains(new Move.Operate("52-T", "open")))
                .findFirst()
                .orElseThrow();
        assertEquals(OrderStep.EnforcedBy.RULE, tie.enforcedBy());
        assertTrue(tie.why().contains("without it"), tie.why());
        assertTrue(order.in().stream()
                .anyMatch(s -> s.text().startsWith("Cross off source \"utility feeder 8\"")
                        && s.text().contains("52-T (open)")));
        assertTrue(order.in().stream()
                .anyMatch(s -> s.task().equals(new Task.LocksOn(List.of("89-2", "52-T", "57-2")))));
    }
}
