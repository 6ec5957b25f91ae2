package org.varwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

class JobLogTest {
    private static LoggedEvent event(String device, int seq, long order, String text, String previous) {
        return LoggedEvent.of(JobEvent.of(
                "job-1", device, seq, new JobClock(order, order, 0), "R. Imhof", new Fact.Noted(text), previous));
    }

    private final LoggedEvent one = event("tablet-a", 1, 100, "one", "");
    private final LoggedEvent two = event("tablet-a", 2, 200, "two", one.hash());
    private final LoggedEvent three = event("tablet-a", 3, 300, "three", two.hash());

    private static String lines(LoggedEvent... events) {
        StringBuilder text = new StringBuilder();
        for (LoggedEvent event : events) {
            text.append(event.line()).append('\n');
        }
        return text.toString();
    }

    @Test
    void aWholeChainHasNoFindings() {
        JobLog log = JobLog.read("job", lines(one, two, three));
        assertEquals(List.of(), log.findings());
        assertEquals(List.of("tablet-a:1", "tablet-a:2", "tablet-a:3"), ids(log));
        assertEquals(lines(one, two, three), log.text());
    }

    private static List<String> ids(JobLog log) {
        return log.events().stream().map(e -> e.event().id()).toList();
    }

    @Test
    void aChangedLineBreaksTheChain() {
        String changed = two.line().replace("\"two\"", "\"2\"");
        JobLog log = JobLog.read("job", one.line() + "\n" + changed + "\n" + three.line() + "\n");
        assertEquals(List.of(new LogFinding.BrokenChain("tablet-a:3")), log.findings());
    }

    @Test
    void aLineTakenOutIsMissed() {
        JobLog log = JobLog.read("job", lines(one, three));
        assertEquals(List.of(new LogFinding.Missing("tablet-a", 2, 2)), log.findings());
    }

    @Test
    void theFirstLineTakenOutIsMissedToo() {
        JobLog log = JobLog.read("job", lines(two, three));
        assertEquals(List.of(new LogFinding.Missing("tablet-a", 1, 1)), log.findings());
    }

    @Test
    void twoEventsOfOneNumberAreAForkAndBothStay() {
        LoggedEvent other = event("tablet-a", 2, 250, "another two", one.hash());
        JobLog log = JobLog.read("job", lines(one, two, other));
        assertEquals(List.of(new LogFinding.Forked("tablet-a:2")), log.findings());
        assertEquals(3, log.events().size());
    }

    @Test
    void anOrderThatRunsBackwardsIsFound() {
        LoggedEvent early = event("tablet-a", 2, 50, "early", one.hash());
        JobLog log = JobLog.read("job", lines(one, early));
        assertEquals(List.of(new LogFinding.ClockBackwards("tablet-a:2")), log.findings());
    }

    @Test
    void aTornLastLineIsKeptAndSaid() {
        String torn = three.line().substring(0, 40);
        JobLog log = JobLog.read("job", lines(one, two) + torn);
        assertEquals(List.of(new LogFinding.TornLine(3)), log.findings());
        assertEquals(List.of(torn), log.unreadable());
        assertTrue(log.text().endsWith(torn + "\n"), "not a byte is dropped");
    }

    @Test
    void anUnreadableLineInTheMiddleIsKeptAndSaid() {
        JobLog log = JobLog.read("job", one.line() + "\nhello\n" + two.line() + "\n");
        assertEquals(1, log.findings().size());
        assertInstanceOf(LogFinding.UnreadableLine.class, log.findings().getFirst());
        assertEquals(2, log.events().size());
    }

    @Test
    void linesOfTwoJobsAreRefused() {
        LoggedEvent stranger = LoggedEvent.of(
                JobEvent.of("job-2", "tablet-b", 1, new JobClock(1, 1, 0), "R. Imhof", new Fact.Noted("other"), ""));
        VarwrightException e = assertThrows(VarwrightException.class, () -> JobLog.read("job", lines(one, stranger)));
        assertEquals(Message.JOB_MIXED, e.problems().getFirst().message());
    }

    @Test
    void anIdThatIsNotThatOfItsDeviceIsRefused() {
        String lie = one.line().replace("\"tablet-a:1\"", "\"tablet-a:7\"");
        VarwrightException e = assertThrows(VarwrightException.class, () -> LoggedEvent.parse("job", 1, lie));
        assertEquals(Message.JOB_EVENT_ID, e.problems().getFirst().message());
    }

    @Test
    void aLaterVersionsEventIsKeptAsItIs() {
        String line = one.line().replace("\"noted\"", "\"thermography-taken\"");
        LoggedEvent event = LoggedEvent.parse("job", 1, line);
        assertInstanceOf(Fact.NotUnderstood.class, event.event().fact());
        assertEquals(line, event.line());
        assertEquals(line, event.event().line(), "and would be written the same");
    }

    @Test
    void aClockThatJumpsBackDoesNotPutEventsOutOfOrder() {
        Walk walk = new Walk("tablet-a", JobLog.empty("job-1"), 1_000_000);
        walk.yes(new Fact.Opened("t", JobTest.TAMARACK, Optional.empty(), Optional.empty(), Optional.empty()));
        walk.now -= 500_000;
        walk.yes(new Fact.Noted("after the jump"));
        walk.yes(new Fact.Noted("and one more"));
        assertEquals(List.of("tablet-a:1", "tablet-a:2", "tablet-a:3"), ids(walk.log));
        assertEquals(List.of(), walk.log.findings());
    }
}
