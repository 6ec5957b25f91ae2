package org.varwright.isolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;

/** One thing wrong: each single fault is replayed, and what shows it changes with the bank. */
class FaultTableTest {
    private final Bank bank = Banks.tamarack();
    private final OrderOfWork order = order(bank, "bay 1");

    private static OrderOfWork order(Bank bank, String access) {
        return OrderOfWorkTraceTest.planned(bank, PlanRequest.to(List.of(access)));
    }

    private static Fault fault(OrderOfWork order, Fault.Kind kind, String what) {
        return order.faults().stream()
                .filter(f -> f.kind() == kind && f.what().equals(what))
                .findFirst()
                .orElseThrow();
    }

    private static OrderStep caughtAt(OrderOfWork order, Fault.Kind kind, String what) {
        int n = fault(order, kind, what).caughtAtStep().orElseThrow();
        return order.steps().get(n - 1);
    }

    @Test
    void nothingIsLeftUncaughtInAnyPlanOfTheExamples() {
        for (Bank each : Banks.all()) {
            for (var compartment : each.isolation().orElseThrow().compartments()) {
                assertTrue(
                        order(each, compartment.name()).faults().stream().noneMatch(Fault::isHole),
                        each.name() + " " + compartment.name());
            }
        }
    }

    @Test
    void aPoleThatStayedClosedIsSeenThroughTheWindow() {
        OrderStep step = caughtAt(order, Fault.Kind.POLE_STAYED_CLOSED, "89-2");
        assertEquals(new Task.Looked("89-2", "open", true), step.task());
    }

    @Test
    void withNoWindowTheTestBeforeGroundingCarriesTheBurden() {
        OrderOfWork blind = order(Reworked.withoutWindow(bank, "89-2"), "bay 1");
        OrderStep step = caughtAt(blind, Fault.Kind.POLE_STAYED_CLOSED, "89-2");
        assertEquals(new Task.TestedBeforeGrounding("57-2", "bus"), step.task());
        assertTrue(
                blind.responsibilities().stream().anyMatch(r -> r.text().contains("Only 89-2 parts")),
                "people are told that no gap is seen");
    }

    @Test
    void aWeldedStageSwitchIsFoundByItsCurrentBeforeTheDisconnectorIsOpened() {
        OrderStep step = caughtAt(order, Fault.Kind.WELDED, "24-1");
        assertEquals(new Task.TestedNoCurrent("89-2"), step.task());
        assertEquals(
                step.n(),
                fault(order, Fault.Kind.LAMP_LIES, "24-1").caughtAtStep().orElseThrow());
    }

    /** One live phase of a floating neutral carries no current; the other gap is seen, so it meets nobody. */
    @Test
    void oneWeldedPoleOfAFloatingNeutralMeetsNobody() {
        Fault fault = fault(order, Fault.Kind.POLE_STAYED_CLOSED, "24-1");
        assertFalse(fault.harms());
        assertTrue(fault.caughtAtStep().isEmpty());
    }

    @Test
    void aGroundingBladeThatDidNotCloseIsSeenOrMadeGoodByPortableGrounds() {
        assertEquals(
                new Task.Looked("57-2", "closed", true),
                caughtAt(order, Fault.Kind.BLADE_DID_NOT_CLOSE, "57-2").task());
        OrderOfWork blind = order(Reworked.withoutWindow(bank, "57-2"), "bay 1");
        assertTrue(has(blind, s -> s.task().equals(new Task.GroundsOn("bay 1", "bus", 3))));
        assertFalse(fault(blind, Fault.Kind.BLADE_DID_NOT_CLOSE, "57-2").harms());
        assertEquals(
                new Task.TestedFreeOfGround("57-2", "bus"),
                caughtAt(blind, Fault.Kind.BLADE_DID_NOT_OPEN, "57-2").task());
    }

    private static boolean has(OrderOfWork order, Predicate<OrderStep> wanted) {
        return order.steps().stream().anyMatch(wanted);
    }

    @Test
    void anOpenResistorIsShownByTheTesterOrByTheStick() {
        List<Fault> resistors = order.faults().stream()
                .filter(f -> f.kind() == Fault.Kind.RESISTOR_OPEN && f.what().equals("stage 1"))
                .toList();
        assertEquals(2, resistors.size());
        assertEquals(
                new Task.TestedDead("bay 1", "stage 1"),
                order.steps()
                        .get(resistors.getFirst().caughtAtStep().orElseThrow() - 1)
                        .task());
        assertEquals(
                new Task.StickUsed("bay 1", "stage 1"),
                order.steps()
                        .get(resistors.getLast().caughtAtStep().orElseThrow() - 1)
                        .task());
    }

    @Test
    void aSecondKeyMeetsThePersonalLocks() {
        for (String key : bank.isolation().orElseThrow().keyNames()) {
            OrderStep step = caughtAt(order, Fault.Kind.SECOND_KEY, key);
            assertEquals(new Task.LocksOn(List.of("89-2", "57-2")), step.task());
        }
    }

    @Test
    void aForgottenGroundIsMissedAtTheCount() {
        OrderStep step = caughtAt(order, Fault.Kind.GROUND_LEFT_ON, "stage 1");
        assertEquals(OrderStep.Kind.COUNT, step.kind());
    }

    /** The count that shows it is the one after it should have come off; before that it is on by right. The incoming compartment has grounds and no shorts. */
    @Test
    void aForgottenGroundIsMissedOnTheWayBackAndNotWhereItIsPutOn() {
        for (String access : List.of("incoming", "bay 1")) {
            OrderOfWork each = order(bank, access);
            List<Fault> left = each.faults().stream()
                    .filter(f -> f.kind() == Fault.Kind.GROUND_LEFT_ON)
                    .toList();
            assertFalse(left.isEmpty(), access);
            for (Fault fault : left) {
                OrderStep off = each.back().stream()
                        .filter(s -> s.task() instanceof Task.GroundsOff o
                                && o.conductor().equals(fault.what()))
                        .findFirst()
                        .orElseThrow();
                OrderStep count = each.steps().get(fault.caughtAtStep().orElseThrow() - 1);
                assertTrue(count.n() > off.n(), access + ", " + fault.what() + ": step " + count.n());
                assertEquals(OrderStep.Kind.COUNT, count.kind());
            }
        }
    }

    /** A table that can't fail would be no check: without its looks and tests the same order has holes. */
    @Test
    void withoutItsChecksTheSameOrderHasHoles() {
        Site site = new Site(org.varwright.interlock.Scheme.of(bank), List.of("bay 1"));
        SavedState atWork = order.stateAfter(order.in().size());
        for (Class<?> check : List.of(
                Task.Looked.class,
                Task.TestedNoCurrent.class,
                Task.TestedBeforeGrounding.class,
                Task.StickUsed.class,
                Task.GroundsOn.class,
                Task.Counted.class)) {
            List<OrderStep> fewer = order.steps().stream()
                    .filter(s -> !check.isInstance(s.task()))
                    .toList();
            List<Fault> holes = FaultTable.of(bank, order.start(), fewer, site, atWork, Fillings.NONE).faults().stream()
                    .filter(Fault::isHole)
                    .toList();
            assertFalse(holes.isEmpty(), "without " + check.getSimpleName() + " nothing is missed");
        }
    }
}
