package org.varwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Standard;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.survey.UnitVerdict;

/** The meters' limits of error as part of a job's record, and what is judged by them. */
class MeterLimitsTest {
    private final Walk walk = new Walk("tablet-a", JobLog.empty("job-1"), 1_795_000_000_000L);

    @BeforeEach
    void open() {
        walk.yes(new Fact.Opened("blown fuse", JobTest.TAMARACK, Optional.empty(), Optional.empty(), Optional.empty()));
    }

    private static Fact.MeterStated meter(String limit, String... replaces) {
        return new Fact.MeterStated(Optional.empty(), limit, List.of(replaces));
    }

    private static Fact.MeterStated bridge(String limit, String... replaces) {
        return new Fact.MeterStated(Optional.of("Bridge 4"), limit, List.of(replaces));
    }

    private MeterLimits limits() {
        return walk.job().meterLimits();
    }

    @Test
    void whereNobodyStatesThemTheUsualLimitsJudgeAndThatIsSaid() {
        assertEquals(0.01, limits().limit());
        assertEquals(Map.of(), limits().byInstrument());
        assertEquals("±1 % (usual; nobody has stated the meter's)", limits().words());
        assertTrue(JobText.of(walk.job()).contains("nobody has stated it"), JobText.of(walk.job()));
    }

    @Test
    void whatIsStatedJudgesAndALaterWordTakesItsPlace() {
        walk.yes(meter("2 %"));
        walk.yes(bridge("0.3 %"));
        assertEquals(0.02, limits().limit());
        JobEvent last = walk.yes(meter("0.5 %"));
        assertEquals(0.005, limits().settings(Standard.IEEE).meterLimit(Optional.of("another")));
        assertEquals(0.003, limits().settings(Standard.IEEE).meterLimit(Optional.of(" bridge 4 ")), 1e-15);
        assertEquals("±0.5 %, bridge 4 ±0.3 %", limits().words());
        assertTrue(
                JobText.of(walk.job()).contains("every meter not stated by name: ±0.5 % (" + Walk.PERSON + ")"),
                JobText.of(walk.job()));
        walk.yes(new Fact.Corrected(last.id(), "slip"));
        assertEquals(0.02, limits().limit(), "what was said before stands again");
    }

    @Test
    void onlyLimitsThatAMeterHasAreTaken() {
        assertEquals(List.of(Message.NO_UNIT), walk.no(meter("0.5")));
        assertEquals(List.of(Message.NOT_A_QUANTITY), walk.no(meter("fine")));
        assertEquals(List.of(Message.DECIMAL_COMMA), walk.no(meter("0,5 %")));
        assertEquals(List.of(Message.WRONG_UNIT), walk.no(meter("1 uF")));
        assertEquals(List.of(Message.METER_LIMIT), walk.no(meter("0 %")));
        assertEquals(List.of(Message.METER_LIMIT), walk.no(meter("20 %")));
        assertEquals(List.of(Message.JOB_METER_NOT_HERE), walk.no(meter("1 %", "tablet-a:1")));
        walk.yes(new Fact.Closed("done"));
        assertEquals(List.of(Message.JOB_CLOSED), walk.no(meter("1 %")), "a closed job's verdicts stay");
    }

    @Test
    void theFactIsReadBackAsItWasWritten() {
        walk.yes(bridge("0.3 %", walk.yes(bridge("1 %")).id()));
        Job again = Job.of(JobLog.read("job", walk.log.text()), Walk.PLANNER);
        assertEquals(JobJson.of(walk.job()), JobJson.of(again));
        Json.Obj json = (Json.Obj) ((Json.Obj) JobJson.of(again)).get("meterLimits");
        assertEquals(
                Json.object().put("bridge 4", 0.003).build().print(),
                json.get("instruments").print());
    }

    @Test
    void devicesThatDisagreeAreShownAndTheSmallerLimitsJudgeUntilSettled() {
        Walk other = new Walk("tablet-b", walk.log, walk.now);
        JobEvent mine = walk.yes(meter("3 %"));
        walk.yes(bridge("0.3 %"));
        other.yes(meter("2 %"));
        JobEvent theirs = other.yes(meter("1 %"));
        walk.log = walk.log.merge(other.log);
        assertEquals(
                List.of("limits of error of every meter not stated by name"),
                walk.job().conflicts().stream().map(Conflict::about).toList(),
                "another meter is none of it");
        assertEquals(0.01, limits().limit(), "the smaller hides nothing");
        assertEquals(List.of(Message.JOB_CONFLICT_OPEN), walk.no(new Fact.Closed("done")));
        JobLog before = walk.log;
        walk.yes(new Fact.Settled(mine.id(), "the data sheet says 3 %"));
        assertEquals(0.03, limits().limit(), "nothing of the other device comes up again");
        assertEquals(0.003, limits().byInstrument().getOrDefault("bridge 4", Double.NaN), 1e-15);
        assertEquals(List.of(), walk.job().conflicts());
        walk.log = before;
        walk.yes(meter("1.5 %", mine.id(), theirs.id()));
        assertEquals(0.015, limits().limit(), "one that knows both takes the place of both");
        assertEquals(List.of(), walk.job().conflicts());
    }

    @Test
    void theSameLimitsSaidOnTwoDevicesAreNoDisagreement() {
        Walk other = new Walk("tablet-b", walk.log, walk.now);
        walk.yes(meter("1 %"));
        other.yes(meter("1.0 %"));
        walk.log = walk.log.merge(other.log);
        assertEquals(1, limits().stated().size());
        assertEquals(List.of(), walk.job().conflicts());
    }

    /** One unit 4 % low: beyond what a good meter may be off, within what a bad one may. The verdict is the log's, whoever asks. */
    @Test
    void theSurveyOfAJobIsJudgedByWhatItsLogStates() {
        walk.yes(new Fact.OrderMade(List.of("bay 2"), Fact.Origin.AsFound.inService(), Optional.empty(), "measure"));
        walk.stepsUntil(Order.Phase.WORK);
        assertEquals(Optional.empty(), JobReadings.of(walk.job()).found());
        StringBuilder table = new StringBuilder("position,capacitance\n");
        walk.job().bank().orElseThrow().positions().stream()
                .filter(p -> p.name().startsWith("stage 2/"))
                .forEach(p -> table.append(p.name())
                        .append(',')
                        .append(p.name().equals("stage 2/A/u1") ? "12.15" : "12.70")
                        .append(" uF\n"));
        walk.yes(new Fact.ReadingsImported("readings.csv", table.toString()));
        assertEquals(
                0.01,
                JobReadings.of(walk.job()).found().orElseThrow().settings().meterLimit());
        walk.yes(meter("0.2 %"));
        UnitVerdict good = verdict();
        walk.yes(meter("12 %"));
        UnitVerdict bad = verdict();
        assertEquals(0.12, JobReadings.of(walk.job()).found().orElseThrow().largestMeterLimit());
        assertNotEquals(UnitVerdict.HEALTHY, good, "a good meter shows it");
        assertEquals(UnitVerdict.HEALTHY, bad, "a bad one may be off by more");
    }

    private UnitVerdict verdict() {
        return JobReadings.of(walk.job())
                .found()
                .orElseThrow()
                .unit("stage 2/A/u1")
                .orElseThrow()
                .verdict();
    }
}
