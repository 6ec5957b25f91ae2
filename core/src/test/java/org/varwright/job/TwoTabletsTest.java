package org.varwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.varwright.json.Json;
import org.varwright.problem.Message;

/** What was done on another tablet and can't be counted was done all the same: nobody goes on as if it had not been. */
class TwoTabletsTest {
    private final Walk walk = new Walk("tablet-a", JobLog.empty("job-1"), 1_795_000_000_000L);

    @BeforeEach
    void begin() {
        walk.yes(new Fact.Opened("t", JobTest.TAMARACK, Optional.empty(), Optional.empty(), Optional.empty()));
        walk.yes(order(Optional.empty(), Fact.Origin.AsFound.inService(), "bay 2"));
    }

    private static Fact.OrderMade order(Optional<String> replaces, Fact.Origin origin, String... access) {
        return new Fact.OrderMade(List.of(access), origin, replaces, "units to be measured");
    }

    private Walk other() {
        return new Walk("tablet-b", walk.log, walk.now);
    }

    private void meet(Walk other) {
        walk.log = walk.log.merge(other.log);
        other.log = walk.log;
        assertEquals(walk.log, other.log);
    }

    private void assertOrderHasEnded() {
        assertEquals(Order.Standing.ENDED, walk.order().standing());
        assertEquals(List.of(Message.JOB_ORDER_ENDED), walk.no(walk.fullConfirmation()));
    }

    @Test
    void aDeviationElsewhereEndsTheOrderThoughTheStepWasConfirmedHere() {
        Walk other = other();
        int step = walk.order().next().orElseThrow().n();
        other.now += 10_000;
        walk.step();
        walk.step();
        other.yes(new Fact.Deviated(other.order().id(), step, "the label is another one"));
        meet(other);
        assertOrderHasEnded();
        assertTrue(walk.order().why().orElseThrow().contains("the label is another one"));
    }

    @Test
    void aDeviationFromAnOrderThatWasReplacedChangesNothing() {
        Walk other = other();
        String old = walk.order().id();
        walk.yes(order(Optional.of(old), Fact.Origin.AsFound.inService(), "bay 3"));
        other.now = walk.now + 10_000;
        other.yes(new Fact.Deviated(old, 1, "the label is another one"));
        meet(other);
        assertEquals(Order.Standing.CURRENT, walk.order().standing());
    }

    /** Stopped here; there, not knowing, the next device was moved. */
    @Test
    void aStepDoneElsewhereThatDoesNotCountEndsTheOrder() {
        walk.step();
        Walk other = other();
        walk.yes(new Fact.Stopped("smell of oil"));
        other.now = walk.now + 10_000;
        other.step();
        meet(other);
        assertEquals(1, walk.order().confirmed().size());
        walk.now = other.now;
        walk.yes(new Fact.Resumed("clear"));
        assertOrderHasEnded();
    }

    /** Whoever resumes here has not looked at what was smelt there. */
    @Test
    void aStopElsewhereStandsUntilSomebodyLiftsItWhoKnewOfIt() {
        walk.step();
        Walk other = other();
        walk.yes(new Fact.Stopped("lightning"));
        other.now = walk.now + 10_000;
        other.yes(new Fact.Stopped("smell of oil"));
        walk.now = other.now + 10_000;
        JobEvent resumed = walk.yes(new Fact.Resumed("the storm is over"));
        meet(other);
        assertEquals(List.of(), walk.job().notCounted());
        assertTrue(walk.job().isStopped());
        assertEquals(List.of(Message.JOB_STOPPED), walk.no(walk.fullConfirmation()));
        assertTrue(JobText.of(walk.job()).contains("STOPPED: smell of oil"));
        assertEquals(
                resumed.fact(), FactReader.read("resumed", FactJson.body(resumed.fact())), "it names what it lifts");
        walk.yes(new Fact.Resumed("a rag on a heater"));
        assertEquals(List.of(Message.JOB_NOT_STOPPED), walk.no(new Fact.Resumed("once more")));
        walk.step();
    }

    @Test
    void aSecondStopIsWrittenTooAndWhoKnowsBothLiftsBoth() {
        walk.yes(new Fact.Stopped("lightning"));
        walk.yes(new Fact.Stopped("smell of oil"));
        walk.yes(new Fact.Resumed("all clear"));
        walk.step();
        Json old = Json.object().put("reason", "clear").build();
        assertEquals(new Fact.Resumed("clear"), FactReader.read("resumed", old), "a log from before it was kept");
    }

    /** Somebody signs on here; there, not knowing, the shorts come off. */
    @Test
    void theWayBackBegunElsewhereWithSomebodyOnEndsTheOrder() {
        walk.stepsUntil(Order.Phase.WORK);
        Walk other = other();
        walk.yes(new Fact.SignedOn("T. Okafor", Optional.empty()));
        other.now = walk.now + 10_000;
        other.step();
        other.step();
        meet(other);
        walk.now = other.now;
        assertEquals(List.of("T. Okafor"), walk.job().peopleOn());
        assertOrderHasEnded();
    }

    @Test
    void aStepConfirmedTwiceDoesNotEndTheOrder() {
        Walk other = other();
        other.now += 10_000;
        walk.step();
        other.step();
        meet(other);
        walk.now = other.now;
        assertEquals(Order.Standing.CURRENT, walk.order().standing());
        assertEquals(1, walk.job().conflicts().size());
        walk.step();
    }

    /** Here two orders followed one another, there one in place of the same first one. */
    @Test
    void anOrderMadeElsewhereEndsALaterOneHereToo() {
        Walk other = other();
        walk.yes(order(Optional.of(walk.order().id()), Fact.Origin.AsFound.inService(), "bay 3"));
        walk.yes(order(Optional.of(walk.order().id()), Fact.Origin.AsFound.inService(), "bay 4"));
        other.now = walk.now + 10_000;
        other.yes(order(Optional.of(other.order().id()), Fact.Origin.AsFound.inService(), "bay 1"));
        other.step();
        meet(other);
        assertOrderHasEnded();
    }

    /** There it was planned from where step 2 left things. Planned from step 3 its steps would be others under the same numbers. */
    @Test
    void anOrderMadeElsewhereFromFewerStepsIsNotReadAsOneFromMore() {
        walk.step();
        walk.step();
        Walk other = other();
        walk.step();
        other.now = walk.now + 10_000;
        JobEvent made =
                other.yes(order(Optional.of(walk.order().id()), new Fact.Origin.AfterLastStep(), "bay 2", "bay 3"));
        other.step();
        assertEquals(
                new Fact.Origin.AfterLastStep(OptionalInt.of(2)),
                ((Fact.OrderMade) made.fact()).origin(),
                "the line says what its device knew");
        meet(other);
        assertEquals(1, walk.job().orders().size());
        assertOrderHasEnded();
    }

    @Test
    void anOrderMadeElsewhereFromAnotherDescriptionOfTheBankIsNotReadOnThisOne() {
        walk.step();
        Walk other = other();
        other.yes(new Fact.Deviated(walk.order().id(), 2, "another label"));
        other.log = walk.log.merge(other.log);
        walk.log = other.log;
        walk.now = other.now;
        walk.yes(new Fact.BankReplaced(JobTest.TAMARACK + "# a device more\n", "a device was missing"));
        other.now = walk.now + 10_000;
        other.yes(order(Optional.of(other.order().id()), Fact.Origin.AsFound.inService(), "bay 2"));
        meet(other);
        assertEquals(1, walk.job().orders().size());
        assertTrue(walk.job().notCounted().getFirst().reasons().getFirst().contains("another description"));
    }

    @Test
    void anOrderOfALogFromBeforeItWasKeptIsReadAsItStands() {
        walk.step();
        JobEvent made = walk.yes(order(Optional.of(walk.order().id()), new Fact.Origin.AfterLastStep(), "bay 2"));
        Json body = Json.parse(
                "{\"access\":[\"bay 2\"],\"origin\":{\"kind\":\"after-last-step\"},\"replaces\":\"tablet-a:2\",\"reason\":\"x\"}");
        assertEquals(
                new Fact.OrderMade(List.of("bay 2"), new Fact.Origin.AfterLastStep(), Optional.of("tablet-a:2"), "x"),
                FactReader.read("order-made", body));
        Fact.OrderMade fact = (Fact.OrderMade) made.fact();
        assertEquals(fact, FactReader.read("order-made", FactJson.body(fact)), "and what is kept is read back");
        assertEquals(Optional.of(Sha256.of(JobTest.TAMARACK)), fact.bankHash());
    }

    @Test
    void anOrderThatGoesOnFromAStepTakenBackEndsWithIt() {
        for (int i = 0; i < 4; i++) {
            walk.step();
        }
        String taken = walk.order().confirmed().get(2).event().id();
        walk.yes(order(Optional.of(walk.order().id()), new Fact.Origin.AfterLastStep(), "bay 2", "bay 3"));
        walk.step();
        walk.yes(order(Optional.of(walk.order().id()), new Fact.Origin.AfterLastStep(), "bay 2", "bay 4"));
        walk.yes(new Fact.Corrected(taken, "it was another switch"));
        assertOrderHasEnded();
    }

    @Test
    void anOrderMadeFromWhatWasFoundDoesNotEndWithAStepOfTheOneBefore() {
        walk.step();
        String taken = walk.order().confirmed().getLast().event().id();
        walk.yes(new Fact.Deviated(walk.order().id(), 2, "another label"));
        walk.yes(order(Optional.of(walk.order().id()), Fact.Origin.AsFound.inService(), "bay 3"));
        walk.yes(new Fact.Corrected(taken, "slip"));
        assertEquals(Order.Standing.CURRENT, walk.order().standing());
    }

    /** A wider order that nobody has begun does not make the bank that it was made at a bank in service. */
    @Test
    void anOrderThatGoesOnFromAnotherIsUnderWayFromTheStart() {
        walk.stepsUntil(Order.Phase.WORK);
        walk.yes(order(Optional.of(walk.order().id()), new Fact.Origin.AfterLastStep(), "bay 2", "bay 3"));
        walk.yes(new Fact.AsLeft("43-2", "off"));
        assertEquals(List.of(Message.JOB_ORDER_UNFINISHED), walk.no(new Fact.Closed("done")));
        assertEquals(
                List.of(Message.JOB_ORDER_UNDER_WAY),
                walk.no(order(Optional.of(walk.order().id()), Fact.Origin.AsFound.inService(), "bay 2")));
    }

    @Test
    void aJobWithSomethingFoundOnTheBankIsNotClosedBeforeItIsOff() {
        walk.stepsUntil(Order.Phase.WORK);
        Order left = walk.order();
        var state = left.work().stateAfter(left.confirmed().size());
        walk.yes(new Fact.Deviated(left.id(), left.next().orElseThrow().n(), "a ground clamp is jammed"));
        walk.yes(order(
                Optional.of(left.id()),
                new Fact.Origin.AsFound(state.positions(), List.of("bay 2"), state.grounds(), state.shorts()),
                "bay 2"));
        assertEquals(List.of(Message.JOB_ORDER_UNFINISHED), walk.no(new Fact.Closed("done")));
    }

    @Test
    void anOrderThatNobodyBeganAtABankInServiceHoldsNothingUp() {
        walk.yes(order(
                Optional.of(walk.order().id()),
                new Fact.Origin.AsFound(Map.of("24-1", "open"), List.of(), Map.of(), Map.of()),
                "bay 2"));
        walk.yes(new Fact.Closed("not needed"));
        assertTrue(walk.job().isClosed());
    }

    /** Two units read apart on both tablets: what a person says of one leaves the other open, and the job with it. */
    @Test
    void whatIsSettledOfOneLeavesTheOtherOpen() {
        walk.stepsUntil(Order.Phase.WORK);
        Walk other = other();
        for (String unit : List.of("stage 2/A/u1", "stage 2/B/u1")) {
            walk.yes(new Fact.ReadingTaken(unit, Map.of("capacitance", "12.7 uF")));
            other.yes(new Fact.ReadingTaken(unit, Map.of("capacitance", "16.9 uF")));
        }
        meet(other);
        List<Conflict> both = walk.job().conflicts();
        assertEquals(2, both.size(), both.toString());
        walk.yes(new Fact.Settled(both.getFirst().events().getFirst(), "measured again, link was off"));
        assertEquals(List.of(both.getLast()), walk.job().conflicts());
        walk.yes(new Fact.Settled(both.getLast().events().getLast(), "measured again, meter was cold"));
        assertEquals(List.of(), walk.job().conflicts());
    }
}
