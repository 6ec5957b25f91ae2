package org.varwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Task;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.CalendarDate;

class JobTest {
    static final String TAMARACK = example("tamarack-flats-2.bank.yaml");
    private static final String CORBEL = example("demo/corbel-reach-3.bank.yaml");

    private Walk walk = new Walk("tablet-a", JobLog.empty("job-1"), 1_795_000_000_000L);

    static String example(String name) {
        try {
            return Files.readString(Path.of("..", "examples").resolve(name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @BeforeEach
    void open() {
        walk.yes(opened(TAMARACK));
    }

    private static Fact opened(String bank) {
        return new Fact.Opened(
                "blown fuse", bank, Optional.of("T-7"), Optional.of("find and replace"), Optional.empty());
    }

    private static Fact.OrderMade order(Optional<String> replaces, Fact.Origin origin, String... access) {
        return new Fact.OrderMade(List.of(access), origin, replaces, "units to be measured");
    }

    private void makeOrder() {
        walk.yes(order(Optional.empty(), Fact.Origin.AsFound.inService(), "bay 2"));
    }

    private Fact.StepConfirmed confirmation(int step) {
        return new Fact.StepConfirmed(
                walk.order().id(),
                step,
                Optional.of(Walk.SECOND),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty());
    }

    // ---- opening and closing

    @Test
    void aJobOpensOnceAndWithAReadableBank() {
        assertEquals(List.of(Message.JOB_OPEN_ALREADY), walk.no(opened(TAMARACK)));
        Walk fresh = new Walk("tablet-a", JobLog.empty("job-2"), 1);
        assertEquals(List.of(Message.JOB_NOT_OPEN), fresh.no(new Fact.Noted("early")));
        assertFalse(fresh.no(opened("format: varwright/1\nname: nothing\n")).isEmpty());
    }

    @Test
    void aWholeJobFromOrderToClose() {
        makeOrder();
        walk.stepsUntil(Order.Phase.WORK);
        walk.yes(new Fact.SignedOn(Walk.PERSON, Optional.of("red 12")));
        walk.yes(new Fact.ReadingTaken("stage 2/A/u1", Map.of("capacitance", "12.7 uF")));
        walk.yes(new Fact.UnitMoved("TF21-0098", Optional.empty(), Optional.of("stage 2/A/u1")));
        walk.yes(new Fact.SignedOff(Walk.PERSON));
        walk.stepsUntil(Order.Phase.IN_SERVICE);
        walk.yes(new Fact.Measured("stage 2/A", "25.1 A"));
        assertEquals(List.of(Message.JOB_AS_LEFT_MISSING), walk.no(new Fact.Closed("replaced one unit")));
        walk.yes(new Fact.AsLeft("43-2", "auto"));
        walk.yes(new Fact.Closed("replaced one unit"));
        assertTrue(walk.job().isClosed());
        assertEquals(List.of(), walk.job().notCounted());
        assertEquals(List.of(), walk.log.findings());
        assertEquals(List.of(Message.JOB_CLOSED), walk.no(new Fact.Stopped("late")));
        walk.yes(new Fact.Noted("a note may follow"));
        assertEquals(
                Optional.of("position,\"capacitance\"\n\"stage 2/A/u1\",\"12.7 uF\"\n"),
                walk.job().readingsTable());
    }

    @Test
    void whatARecordSaidIsKept() {
        String hash = "a".repeat(64);
        assertEquals(List.of(Message.JOB_HASH), walk.no(new Fact.RecordRead("trip.cff", "abc", List.of())));
        assertEquals(
                List.of(Message.JOB_RECORD_LARGE),
                walk.no(new Fact.RecordRead("trip.cff", hash, java.util.Collections.nCopies(301, "x"))));
        Fact.RecordRead fact = new Fact.RecordRead("trip.cff", hash, List.of("stage 2 opened.", "a unit out"));
        walk.yes(fact);
        JobEvent back = walk.log.events().getLast().event();
        assertEquals(fact, back.fact());
        String json = JobJson.of(walk.job()).print();
        assertTrue(json.contains("\"records\"") && json.contains("a unit out"), json);
        assertTrue(JobText.of(walk.job()).contains("a unit out"));
    }

    // ---- steps

    @Test
    void stepsAreConfirmedOneAfterAnother() {
        makeOrder();
        assertEquals(List.of(Message.JOB_STEP_NOT_NEXT), walk.no(confirmation(2)));
        walk.step();
        assertEquals(List.of(Message.JOB_STEP_NOT_NEXT), walk.no(confirmation(1)));
    }

    @Test
    void theBankIsToldByItsLabel() {
        Walk corbel = new Walk("tablet-a", JobLog.empty("job-2"), 1_000);
        corbel.yes(opened(CORBEL));
        corbel.yes(order(Optional.empty(), Fact.Origin.AsFound.inService(), "bay 2"));
        Fact.StepConfirmed full = corbel.fullConfirmation();
        assertEquals(Optional.of("CR-BK3"), full.label());
        assertEquals(List.of(Message.JOB_LABEL_MISSING), corbel.no(with(full, Optional.empty())));
        assertEquals(List.of(Message.JOB_LABEL_WRONG), corbel.no(with(full, Optional.of("CR-BK2"))));
        corbel.yes(with(full, Optional.of(" cr-bk3 ")));
    }

    private static Fact.StepConfirmed with(Fact.StepConfirmed full, Optional<String> label) {
        return new Fact.StepConfirmed(
                full.order(), full.step(), full.second(), full.reading(), label, full.ticked(), full.photo());
    }

    @Test
    void itemsAreTickedOneByOne() {
        makeOrder();
        Fact.StepConfirmed full = walk.fullConfirmation();
        assertFalse(full.ticked().isEmpty(), "the first step lists labels to be read");
        Fact.StepConfirmed one = new Fact.StepConfirmed(
                full.order(),
                full.step(),
                full.second(),
                full.reading(),
                full.label(),
                full.ticked().subList(1, full.ticked().size()),
                full.photo());
        assertEquals(List.of(Message.JOB_ITEM), walk.no(one));
    }

    @Test
    void aSecondPersonIsAnotherPerson() {
        makeOrder();
        Fact.StepConfirmed full = walk.fullConfirmation();
        assertTrue(walk.order().next().orElseThrow().secondPerson());
        assertEquals(List.of(Message.JOB_SECOND_PERSON), walk.no(second(full, Optional.empty())));
        assertEquals(List.of(Message.JOB_SECOND_SAME), walk.no(second(full, Optional.of(" r. imhof"))));
    }

    private static Fact.StepConfirmed second(Fact.StepConfirmed full, Optional<String> who) {
        return new Fact.StepConfirmed(
                full.order(), full.step(), who, full.reading(), full.label(), full.ticked(), full.photo());
    }

    @Test
    void aTestIsConfirmedWithWhatTheInstrumentShowed() {
        makeOrder();
        walk.stepsUntil(OrderStep.Kind.TEST);
        assertEquals(List.of(Message.JOB_READING_MISSING), walk.no(reading(walk.fullConfirmation(), Optional.empty())));
        walk.step();
    }

    private static Fact.StepConfirmed reading(Fact.StepConfirmed full, Optional<String> reading) {
        return new Fact.StepConfirmed(
                full.order(), full.step(), full.second(), reading, full.label(), full.ticked(), full.photo());
    }

    @Test
    void aCountThatIsNotTheNumberStops() {
        makeOrder();
        walk.stepsUntil(Order.Phase.WORK);
        while (!(walk.order().next().orElseThrow().task() instanceof Task.Counted counted
                && counted.of() == Task.Counted.Things.SHORTS_AND_GROUNDS)) {
            walk.step();
        }
        Fact.StepConfirmed full = walk.fullConfirmation();
        assertEquals(List.of(Message.JOB_COUNT_MISSING), walk.no(reading(full, Optional.empty())));
        assertEquals(List.of(Message.JOB_COUNT_WRONG), walk.no(reading(full, Optional.of("1"))));
    }

    // ---- waiting

    private void toTheHold() {
        makeOrder();
        walk.stepsUntil(OrderStep.Kind.HOLD);
    }

    private long holdMillis() {
        return (long) (walk.order().next().orElseThrow().seconds().orElseThrow() * 1_000);
    }

    private Fact.HoldStarted holdStarted() {
        return new Fact.HoldStarted(
                walk.order().id(), walk.order().next().orElseThrow().n());
    }

    @Test
    void aHoldRunsItsWholeTime() {
        toTheHold();
        assertEquals(List.of(Message.JOB_HOLD_NOT_STARTED), walk.no(walk.fullConfirmation()));
        walk.yes(holdStarted());
        walk.now += holdMillis() - 1;
        assertEquals(List.of(Message.JOB_HOLD_RUNNING), walk.no(walk.fullConfirmation()));
        walk.now += 1;
        walk.yes(walk.fullConfirmation());
    }

    @Test
    void aClockThatRanBackProvesNoWait() {
        toTheHold();
        walk.yes(holdStarted());
        walk.now -= 60_000;
        assertEquals(List.of(Message.JOB_CLOCK_BACK), walk.no(walk.fullConfirmation()));
    }

    @Test
    void aClockThatWasSeenToJumpStartsTheWaitAnew() {
        toTheHold();
        walk.yes(holdStarted());
        long before = walk.now;
        walk.now += 3_600_000;
        walk.yes(new Fact.ClockMoved(before, walk.now));
        assertEquals(List.of(Message.JOB_HOLD_RUNNING), walk.no(walk.fullConfirmation()));
        walk.now += holdMillis();
        walk.yes(walk.fullConfirmation());
    }

    @Test
    void aClockMovedToLongAgoMakesNoWaitShorter() {
        toTheHold();
        walk.yes(holdStarted());
        walk.yes(new Fact.ClockMoved(walk.now, walk.now - 86_400_000));
        assertEquals(List.of(Message.JOB_HOLD_RUNNING), walk.no(walk.fullConfirmation()));
    }

    @Test
    void aPhotoIsAttachedBeforeAStepIsConfirmedWithIt() {
        makeOrder();
        String hash = "ab".repeat(32);
        Fact.StepConfirmed full = walk.fullConfirmation();
        Fact.StepConfirmed withPhoto = new Fact.StepConfirmed(
                full.order(),
                full.step(),
                full.second(),
                full.reading(),
                full.label(),
                full.ticked(),
                Optional.of(hash));
        assertEquals(List.of(Message.JOB_PHOTO_UNKNOWN), walk.no(withPhoto));
        walk.yes(new Fact.Attached("look.jpg", "image/jpeg", hash, 120_000));
        walk.yes(withPhoto);
    }

    @Test
    void aNameWithMoreBlanksIsNoSecondPerson() {
        makeOrder();
        while (!walk.order().next().orElseThrow().secondPerson()) {
            walk.yes(walk.fullConfirmation());
        }
        Fact.StepConfirmed full = walk.fullConfirmation();
        assertEquals(
                List.of(Message.JOB_SECOND_SAME),
                walk.no(new Fact.StepConfirmed(
                        full.order(),
                        full.step(),
                        Optional.of(" r.  imhof "),
                        full.reading(),
                        full.label(),
                        full.ticked(),
                        full.photo())));
    }

    @Test
    void aHoldThatAnotherDeviceStartedIsNotProvenHere() {
        toTheHold();
        walk.yes(holdStarted());
        Walk other = new Walk("tablet-b", walk.log, walk.now + 600_000);
        assertEquals(List.of(Message.JOB_HOLD_NOT_STARTED), other.no(other.fullConfirmation()));
    }

    // ---- stop, deviation, new scope

    @Test
    void aStopLetsNothingPassButWhatLeadsOut() {
        toTheHold();
        walk.yes(holdStarted());
        walk.yes(new Fact.Stopped("smell of oil"));
        walk.now += 600_000;
        assertEquals(List.of(Message.JOB_STOPPED), walk.no(walk.fullConfirmation()));
        walk.yes(new Fact.Noted("fire brigade called"));
        walk.yes(new Fact.Resumed("all clear, everything as the last step left it"));
        assertEquals(List.of(Message.JOB_HOLD_NOT_STARTED), walk.no(walk.fullConfirmation()), "the wait starts anew");
    }

    @Test
    void aDeviationEndsTheOrderAndTheNextOneIsMadeFromWhatIsFound() {
        makeOrder();
        walk.stepsUntil(Order.Phase.WORK);
        String old = walk.order().id();
        Order order = walk.order();
        walk.yes(new Fact.Deviated(old, order.next().orElseThrow().n(), "a ground clamp is jammed"));
        assertEquals(List.of(Message.JOB_ORDER_ENDED), walk.no(walk.fullConfirmation()));
        assertEquals(
                List.of(Message.JOB_ORDER_AS_FOUND),
                walk.no(order(Optional.of(old), new Fact.Origin.AfterLastStep(), "bay 2")));
        List<Message> unsaid = walk.no(order(Optional.of(old), Fact.Origin.AsFound.inService(), "bay 2"));
        assertFalse(unsaid.isEmpty());
        assertTrue(unsaid.stream().allMatch(m -> m == Message.JOB_GROUNDS_UNSAID), "what was left on is counted again");
    }

    @Test
    void aWiderScopeMakesANewOrderFromTheLastStep() {
        makeOrder();
        for (int i = 0; i < 6; i++) {
            walk.step();
        }
        String old = walk.order().id();
        assertEquals(
                List.of(Message.JOB_ORDER_NOT_REPLACED),
                walk.no(order(Optional.empty(), new Fact.Origin.AfterLastStep(), "bay 2", "bay 3")));
        assertEquals(
                List.of(Message.JOB_ORDER_UNDER_WAY),
                walk.no(order(Optional.of(old), Fact.Origin.AsFound.inService(), "bay 2", "bay 3")));
        walk.yes(order(Optional.of(old), new Fact.Origin.AfterLastStep(), "bay 2", "bay 3"));
        assertEquals(Order.Standing.REPLACED, walk.job().orders().getFirst().standing());
        walk.stepsUntil(Order.Phase.IN_SERVICE);
        assertEquals(List.of(), walk.job().notCounted());
    }

    @Test
    void anOrderThatCanNotBeProvenIsRefused() {
        assertEquals(
                List.of(Message.ISOLATION_UNKNOWN_COMPARTMENT),
                walk.no(order(Optional.empty(), Fact.Origin.AsFound.inService(), "bay 9")));
        Fact.Origin impossible = new Fact.Origin.AsFound(Map.of("57-2", "closed"), List.of(), Map.of(), Map.of());
        assertEquals(List.of(Message.JOB_PLAN_REFUSED), walk.no(order(Optional.empty(), impossible, "bay 2")));
    }

    @Test
    void anotherDescriptionOfTheBankEndsTheOrder() {
        makeOrder();
        walk.step();
        walk.yes(new Fact.BankReplaced(TAMARACK, "a device was missing in the file"));
        assertEquals(List.of(Message.JOB_ORDER_ENDED), walk.no(walk.fullConfirmation()));
    }

    // ---- people, readings

    @Test
    void nobodyStartsTheWayBackWhileSomebodyIsOn() {
        makeOrder();
        assertEquals(List.of(Message.JOB_NOT_AT_WORK), walk.no(new Fact.SignedOn("T. Okafor", Optional.empty())));
        walk.stepsUntil(Order.Phase.WORK);
        walk.yes(new Fact.SignedOn("T. Okafor", Optional.of("blue 4")));
        assertEquals(List.of(Message.JOB_PERSON_ON), walk.no(new Fact.SignedOn("T. Okafor", Optional.empty())));
        assertEquals(List.of(Message.JOB_PEOPLE_ON), walk.no(walk.fullConfirmation()));
        assertEquals(List.of(Message.JOB_PERSON_NOT_ON), walk.no(new Fact.SignedOff("R. Imhof")));
        walk.yes(new Fact.SignedOff("T. Okafor"));
        walk.yes(walk.fullConfirmation());
    }

    @Test
    void unitsAreMeasuredOnlyAtWork() {
        Fact.ReadingTaken reading = new Fact.ReadingTaken("stage 2/A/u1", Map.of("capacitance", "12.7 uF"));
        assertEquals(List.of(Message.JOB_NOT_AT_WORK), walk.no(reading));
        makeOrder();
        walk.stepsUntil(Order.Phase.WORK);
        walk.yes(reading);
        assertEquals(
                List.of(Message.POSITION_UNKNOWN),
                walk.no(new Fact.ReadingTaken("stage 2/A/u9", Map.of("capacitance", "12.7 uF"))));
        assertEquals(
                List.of(Message.JOB_READING_EMPTY),
                walk.no(new Fact.ReadingTaken("stage 2/A/u1", Map.of("note", "rusty"))));
    }

    @Test
    void aCorrectionTakesBackOneEventAndStays() {
        makeOrder();
        walk.stepsUntil(Order.Phase.WORK);
        JobEvent reading = walk.yes(new Fact.ReadingTaken("stage 2/A/u1", Map.of("capacitance", "127 uF")));
        walk.yes(new Fact.Corrected(reading.id(), "slip of the finger"));
        assertEquals(Optional.empty(), walk.job().readingsTable());
        assertEquals(List.of(Message.JOB_EVENT_WITHDRAWN), walk.no(new Fact.Corrected(reading.id(), "once more")));
        assertEquals(List.of(Message.JOB_NOT_TAKEN_BACK), walk.no(new Fact.Corrected("tablet-a:1", "never opened")));
        assertTrue(walk.log.text().contains("127 uF"), "nothing is ever erased");
    }

    @Test
    void aStepTakenBackEndsTheOrder() {
        makeOrder();
        walk.step();
        walk.step();
        String id = walk.order().confirmed().getLast().event().id();
        walk.yes(new Fact.Corrected(id, "it was 43-1 that was turned"));
        assertEquals(List.of(Message.JOB_ORDER_ENDED), walk.no(walk.fullConfirmation()));
    }

    // ---- two tablets

    @Test
    void aStepDoneTwiceIsShownUntilSettled() {
        makeOrder();
        Walk other = new Walk("tablet-b", walk.log, walk.now);
        walk.step();
        other.step();
        walk.log = walk.log.merge(other.log);
        assertEquals(1, walk.job().conflicts().size());
        assertEquals(1, walk.order().confirmed().size());
        walk.yes(new Fact.Settled(walk.job().conflicts().getFirst().events().getFirst(), "both were there"));
        assertEquals(List.of(), walk.job().conflicts());
    }

    @Test
    void twoReadingsOfOneUnitBothStay() {
        makeOrder();
        walk.stepsUntil(Order.Phase.WORK);
        Walk other = new Walk("tablet-b", walk.log, walk.now);
        walk.yes(new Fact.ReadingTaken("stage 2/A/u1", Map.of("capacitance", "12.7 uF")));
        JobEvent theirs = other.yes(new Fact.ReadingTaken("stage 2/A/u1", Map.of("capacitance", "16.9 uF")));
        walk.log = walk.log.merge(other.log);
        assertEquals(
                "readings of stage 2/A/u1, capacitance",
                walk.job().conflicts().getFirst().about());
        walk.yes(new Fact.Settled(theirs.id(), "measured again, link was off"));
        assertEquals(
                Optional.of("position,\"capacitance\"\n\"stage 2/A/u1\",\"16.9 uF\"\n"),
                walk.job().readingsTable());
    }

    private static Fact.VisitAgreed visit(String date, String purpose, String... replaces) {
        return new Fact.VisitAgreed(CalendarDate.parse(date).orElseThrow(), purpose, List.of(replaces));
    }

    private static List<String> dates(Job job) {
        return job.nextVisits().stream().map(v -> v.fact().date().toString()).toList();
    }

    @Test
    void aLaterVisitTakesThePlaceOfTheFormer() {
        assertEquals(List.of(), walk.job().nextVisits());
        walk.yes(visit("2027-05-12", "measure stage 2 again"));
        JobEvent second = walk.yes(visit("2027-03-01", "measure stage 2 sooner"));
        assertEquals(List.of("2027-03-01"), dates(walk.job()));
        assertTrue(
                JobText.of(walk.job()).contains("2027-03-01: measure stage 2 sooner (" + Walk.PERSON + ")"),
                JobText.of(walk.job()));
        walk.yes(new Fact.Corrected(second.id(), "slip"));
        assertEquals(List.of("2027-05-12"), dates(walk.job()), "what was said before stands again");
    }

    @Test
    void aVisitIsToComeAndReplacesOnlyVisits() {
        assertEquals(List.of(Message.JOB_VISIT_PAST), walk.no(visit("2016-05-12", "typing slip")));
        assertEquals(List.of(Message.JOB_VISIT_PURPOSE), walk.no(visit("2027-05-12", " ")));
        assertEquals(List.of(Message.JOB_VISIT_NOT_HERE), walk.no(visit("2027-05-12", "again", "tablet-a:1")));
        Json body = Json.object().put("date", "2027-02-30").put("for", "x").build();
        VarwrightException refused =
                assertThrows(VarwrightException.class, () -> FactReader.read("visit-agreed", body));
        String said = refused.problems().getFirst().text();
        assertTrue(said.contains("a day that the calendar has"), said);
    }

    @Test
    void aVisitMayBeAgreedWhenTheJobIsClosed() {
        walk.yes(new Fact.Closed("done"));
        walk.yes(visit("2027-05-12", "measure stage 2 again"));
        assertEquals(List.of("2027-05-12"), dates(walk.job()));
    }

    @Test
    void twoVisitsAgreedApartBothStayUntilSettled() {
        Walk other = new Walk("tablet-b", walk.log, walk.now);
        JobEvent mine = walk.yes(visit("2027-05-12", "measure stage 2 again"));
        JobEvent theirs = other.yes(visit("2027-04-01", "gaskets"));
        walk.log = walk.log.merge(other.log);
        assertEquals(2, walk.job().nextVisits().size());
        assertEquals("the next visit", walk.job().conflicts().getFirst().about());
        assertEquals(List.of(Message.JOB_CONFLICT_OPEN), walk.no(new Fact.Closed("done")));
        JobLog before = walk.log;
        walk.yes(new Fact.Settled(theirs.id(), "the gaskets can't wait"));
        assertEquals(List.of("2027-04-01"), dates(walk.job()));
        assertEquals(List.of(), walk.job().conflicts());
        walk.log = before;
        walk.yes(visit("2027-06-01", "both", mine.id(), theirs.id()));
        assertEquals(List.of("2027-06-01"), dates(walk.job()), "one that knows both takes the place of both");
    }

    @Test
    void theSameVisitSaidOnTwoDevicesIsOne() {
        Walk other = new Walk("tablet-b", walk.log, walk.now);
        walk.yes(visit("2027-05-12", "gaskets"));
        other.yes(visit("2027-05-12", "gaskets"));
        walk.log = walk.log.merge(other.log);
        assertEquals(List.of("2027-05-12"), dates(walk.job()));
        assertEquals(List.of(), walk.job().conflicts());
    }

    @Test
    void aVisitIsDoneWhenALaterJobIsOpenedOnThatBank() {
        walk.yes(visit("2027-05-12", "gaskets"));
        List<DueVisit> due = DueVisit.of(List.of(walk.job()));
        assertEquals(1, due.size());
        assertEquals(DueVisit.Standing.AHEAD, due.getFirst().on(new CalendarDate(2027, 5, 11)));
        assertEquals(DueVisit.Standing.TODAY, due.getFirst().on(new CalendarDate(2027, 5, 12)));
        assertEquals(DueVisit.Standing.OVERDUE, due.getFirst().on(new CalendarDate(2027, 5, 13)));
        Walk later = new Walk("tablet-a", JobLog.empty("job-2"), walk.now + 1_000);
        later.yes(opened(TAMARACK));
        for (List<Job> jobs : List.of(List.of(walk.job(), later.job()), List.of(later.job(), walk.job()))) {
            assertEquals(
                    List.of(DueVisit.Standing.NONE),
                    DueVisit.of(jobs).stream()
                            .map(d -> d.on(new CalendarDate(2027, 5, 13)))
                            .toList());
        }
    }

    /** Found by JobFoldersLawIT: a damaged log, opened later, said "none is agreed" over the visit that another job had agreed. */
    @Test
    void aJobThatIsNotWholeSilencesNoOther() {
        walk.yes(visit("2027-05-12", "gaskets"));
        Walk later = new Walk("tablet-a", JobLog.empty("job-2"), walk.now + 1_000);
        later.yes(opened(TAMARACK));
        later.yes(new Fact.Noted("seen"));
        later.yes(visit("2027-07-01", "bushings"));
        List<String> lines = new ArrayList<>(later.log.text().lines().toList());
        for (int cut : List.of(1, 2)) {
            List<String> left = new ArrayList<>(lines);
            left.set(cut, "{");
            Job broken = Job.of(JobLog.read("job-2", String.join("\n", left) + "\n"), Planner.ANEW);
            assertFalse(broken.log().findings().isEmpty());
            List<DueVisit> due = DueVisit.of(List.of(broken, walk.job()));
            assertEquals(
                    "2027-05-12",
                    due.getFirst().visit().orElseThrow().fact().date().toString());
            assertEquals(walk.log.job(), due.getFirst().job());
            assertEquals(cut == 1, due.getFirst().isDisputed(), "what is left of it may be an earlier one");
        }
    }

    @Test
    void twoOrdersMadeApartBothEnd() {
        Walk other = new Walk("tablet-b", walk.log, walk.now);
        makeOrder();
        other.yes(order(Optional.empty(), Fact.Origin.AsFound.inService(), "bay 3"));
        other.step();
        walk.step();
        walk.log = walk.log.merge(other.log);
        assertEquals(Optional.empty(), walk.job().currentOrder(), "nobody may go on by either");
        assertEquals(List.of(Message.JOB_ORDER_ENDED), walk.no(walk.fullConfirmation()));
    }
}
