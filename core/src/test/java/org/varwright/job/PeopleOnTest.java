package org.varwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Message;

/** Who may be on the bank: who is not known to be off counts as on, and while somebody is on nothing is moved. */
class PeopleOnTest {
    private static final String OKAFOR = "T. Okafor";
    private final Walk walk = new Walk("tablet-a", JobLog.empty("job-1"), 1_795_000_000_000L);

    @BeforeEach
    void atWork() {
        walk.yes(new Fact.Opened("t", JobTest.TAMARACK, Optional.empty(), Optional.empty(), Optional.empty()));
        walk.yes(new Fact.OrderMade(
                List.of("bay 2"), Fact.Origin.AsFound.inService(), Optional.empty(), "units to be measured"));
        walk.stepsUntil(Order.Phase.WORK);
    }

    private static Fact on(String person) {
        return new Fact.SignedOn(person, Optional.of("blue 4"));
    }

    private static Fact off(String person) {
        return new Fact.SignedOff(person);
    }

    private static Fact takenBack(JobEvent event) {
        return new Fact.Corrected(event.id(), "slip");
    }

    @Test
    void whoSignedOnAgainStaysOnWhenTheFirstTimeIsTakenBack() {
        JobEvent first = walk.yes(on(OKAFOR));
        walk.yes(off(OKAFOR));
        walk.yes(on(OKAFOR));
        assertEquals(List.of(Message.JOB_NOT_TAKEN_BACK), walk.no(takenBack(first)), "it is over, and another stands");
        assertEquals(List.of(OKAFOR), walk.job().peopleOn());
        assertEquals(List.of(Message.JOB_PEOPLE_ON), walk.no(walk.fullConfirmation()));
    }

    @Test
    void aSignOnOrOffIsTakenBackWhileItIsThatPersonsLast() {
        JobEvent on = walk.yes(on(OKAFOR));
        JobEvent off = walk.yes(off(OKAFOR));
        assertEquals(List.of(Message.JOB_NOT_TAKEN_BACK), walk.no(takenBack(on)));
        walk.yes(takenBack(off));
        assertEquals(List.of(OKAFOR), walk.job().peopleOn());
        walk.yes(takenBack(on));
        assertEquals(List.of(), walk.job().peopleOn());
        walk.yes(on("L. Brandt"));
        JobEvent again = walk.yes(on(OKAFOR));
        walk.yes(takenBack(again));
        assertEquals(List.of("L. Brandt"), walk.job().peopleOn(), "nobody else's");
    }

    /** Somebody was ticked off by mistake and is still in the bank when the first device is moved. */
    @Test
    void theWayBackStandsStillWhenASignOffIsTakenBack() {
        walk.yes(on(OKAFOR));
        JobEvent off = walk.yes(off(OKAFOR));
        walk.step();
        walk.yes(takenBack(off));
        assertEquals(List.of(Message.JOB_PEOPLE_ON), walk.no(walk.fullConfirmation()));
        walk.yes(off(OKAFOR));
        walk.step();
    }

    @Test
    void aNewOrderStandsStillTooWhenASignOffBeforeItIsTakenBack() {
        walk.yes(on(OKAFOR));
        JobEvent off = walk.yes(off(OKAFOR));
        walk.yes(new Fact.OrderMade(
                List.of("bay 2", "bay 3"),
                new Fact.Origin.AfterLastStep(),
                Optional.of(walk.order().id()),
                "one bay more"));
        walk.step();
        walk.yes(takenBack(off));
        assertEquals(List.of(Message.JOB_PEOPLE_ON), walk.no(walk.fullConfirmation()));
    }

    /** The other tablet could not know that the way back had begun. */
    @Test
    void whoSignedOnElsewhereCountsAsOnUntilSignedOff() {
        Walk other = new Walk("tablet-b", walk.log, walk.now + 60_000);
        walk.step();
        walk.step();
        other.yes(on(OKAFOR));
        walk.log = walk.log.merge(other.log);
        assertEquals(1, walk.job().notCounted().size());
        assertEquals(List.of(OKAFOR), walk.job().peopleOn());
        assertEquals(List.of(Message.JOB_PEOPLE_ON), walk.no(walk.fullConfirmation()));
        walk.yes(off(OKAFOR));
        walk.step();
    }

    @Test
    void whoSignedOnInTwoPlacesStaysOnWhenOneIsTakenBack() {
        Walk other = new Walk("tablet-b", walk.log, walk.now + 60_000);
        JobEvent here = walk.yes(on(OKAFOR));
        other.yes(on(OKAFOR));
        walk.log = walk.log.merge(other.log);
        assertEquals(List.of(Message.JOB_NOT_TAKEN_BACK), walk.no(takenBack(here)));
        walk.yes(off(OKAFOR));
        assertEquals(List.of(), walk.job().peopleOn());
    }

    @Test
    void whoSignedOnElsewhereIsSignedOffThoughTheJobWasClosed() {
        Walk other = new Walk("tablet-b", walk.log, walk.now);
        walk.stepsUntil(Order.Phase.IN_SERVICE);
        walk.yes(new Fact.AsLeft("43-2", "auto"));
        walk.yes(new Fact.Closed("done"));
        other.now = walk.now;
        other.yes(on(OKAFOR));
        walk.log = walk.log.merge(other.log);
        assertEquals(List.of(OKAFOR), walk.job().peopleOn());
        walk.yes(off(OKAFOR));
        assertEquals(List.of(), walk.job().peopleOn());
    }

    @Test
    void theLockThatAPersonHasIsKept() {
        walk.yes(on(OKAFOR));
        assertTrue(JobJson.of(walk.job()).print().contains("blue 4"));
    }

    @Test
    void signingOffIsPossibleWhileWorkIsStoppedAndSigningOnIsNot() {
        walk.yes(on(OKAFOR));
        walk.yes(new Fact.Stopped("smell of oil"));
        assertEquals(List.of(Message.JOB_STOPPED), walk.no(on("L. Brandt")));
        walk.yes(off(OKAFOR));
        assertEquals(List.of(), walk.job().peopleOn());
    }
}
