package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.DischargePath;
import org.varwright.bank.FuseType;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/** Stages in time: every unit's decay, strings, switching on again, windings, the moment asked for. */
class DischargeCourseTest {
    private static final double OHMS = 4e6;

    private static UnitType unit(double volts) {
        return BankSketch.type(
                "U",
                200e3,
                volts,
                60,
                new Tolerance(0.0, 0.0),
                0,
                0,
                false,
                Optional.of(new DischargeDevice.Resistor(OHMS)));
    }

    private static BankSketch sketch(Connection connection, LegLayout layout) {
        return new BankSketch()
                .system(12.47e3, 60, SystemGrounding.SOLID)
                .stage("s", connection, layout, unit(7200.0 / layout.groups()));
    }

    private static StageCourse course(Bank bank, Question question) {
        return Discharge.of(bank, question).courses().getFirst();
    }

    private static StageCourse course(Bank bank) {
        return course(bank, Question.NOTHING_MORE);
    }

    private static Bank withPath(Bank bank, DischargePath path) {
        Stage s = bank.stages().getFirst();
        Stage changed = new Stage(
                s.name(),
                s.connection(),
                s.switchName(),
                s.layout(),
                s.second(),
                s.unit(),
                s.fuse(),
                s.lineFuse(),
                s.reactor(),
                s.busMetres(),
                s.strayHenries(),
                Optional.of(path),
                s.label(),
                s.note());
        return new Bank(
                bank.name(),
                bank.site(),
                bank.standard(),
                bank.system(),
                bank.unitTypes(),
                bank.fuseTypes(),
                List.of(changed),
                bank.protection(),
                bank.control(),
                bank.isolation(),
                bank.units(),
                bank.spares(),
                bank.label(),
                bank.note());
    }

    private static DischargePath path(DischargePath.Between between, OptionalDouble henries) {
        return new DischargePath(DischargePath.Kind.TRANSFORMER, between, 2100.0, henries);
    }

    private static Check check(Discharge discharge, String subject) {
        return discharge.checks().stream()
                .filter(c -> c.subject().contains(subject))
                .findFirst()
                .orElseThrow(() -> new AssertionError(subject + " is not among " + discharge.checks()));
    }

    @Test
    void everyUnitHasItsOwnCapacitanceAndResistance() {
        Bank bank = sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2))
                .known("s/B/u2", "7", 12e-6)
                .build();
        UnitPosition at = bank.position("s/A/u1").orElseThrow();
        UnitPosition open = bank.position("s/C/u1").orElseThrow();
        Question question =
                Question.NOTHING_MORE.with(new UnitReadings(Map.of(at, 9e6, open, Double.POSITIVE_INFINITY), Map.of()));
        Discharge discharge = Discharge.of(bank, question);
        List<UnitDecay> units = discharge.courses().getFirst().units();
        assertEquals(6, units.size());
        UnitDecay first = units.getFirst();
        assertEquals(9e6, first.ohms().orElseThrow());
        assertEquals(
                9e6 * first.farads() * Math.log(first.initialVolts() / 50.0),
                first.secondsToSafe().orElseThrow(),
                1e-6);
        assertEquals(1.1 * OHMS, units.get(1).ohms().orElseThrow(), 1e-6);
        assertEquals(12e-6, units.get(3).farads());
        assertTrue(units.get(4).ohms().isEmpty());
        assertEquals(units.get(4).initialVolts(), units.get(4).endVolts());
        // an open resistor is slower than any other; the wait grows with a slow one and never shrinks
        assertEquals("s/C/u1", discharge.courses().getFirst().slowest().at().name());
        assertTrue(discharge.longestWaitSeconds() >= first.secondsToSafe().orElseThrow());
        assertTrue(discharge.longestWaitSeconds()
                >= Discharge.of(bank, Optional.empty()).longestWaitSeconds());
        assertEquals(
                Verdict.FAIL,
                check(discharge, "s/C/u1: its discharge resistor reads open").verdict());
        assertTrue(DischargeText.of(discharge).contains("RESISTOR OPEN BY ITS READING"));
    }

    @Test
    void quickReadingsNeverShortenTheWait() {
        Bank bank = sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2)).build();
        UnitPosition at = bank.position("s/A/u1").orElseThrow();
        Question question = Question.NOTHING_MORE.with(new UnitReadings(Map.of(at, 1e5), Map.of(at, 1e-7)));
        assertTrue(Discharge.of(bank, question).longestWaitSeconds()
                >= Discharge.of(bank, Optional.empty()).longestWaitSeconds());
    }

    /** Unequal legs: the simulation finds more than 1.366 and the wait is worked out from that. */
    @Test
    void capacitancesThatAreKnownMakeTheOpeningWorseWhereTheyDo() {
        Bank even = sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1)).build();
        Bank uneven = sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1))
                .known("s/A", "", 8e-6)
                .known("s/B", "", 10.23e-6)
                .known("s/C", "", 10.23e-6)
                .build();
        double closed = Opening.of(even, even.stages().getFirst()).factor();
        double more = Opening.of(uneven, uneven.stages().getFirst()).factor();
        assertEquals(Opening.UNGROUNDED_FACTOR, closed);
        assertTrue(more > 1.02 * closed, "factor " + more);
        assertTrue(Opening.of(uneven, uneven.stages().getFirst()).initialVolts()
                > Opening.of(even, even.stages().getFirst()).initialVolts());
    }

    /**
     * <pre>
     *   A ──u1── g1 ──u2── neutral     u1's resistor open: u1 keeps its voltage while u2 decays;
     *                                  ends joined: + v0/2 on u1, − v0/2 on u2, 0 V between the ends
     * </pre>
     */
    @Test
    void aStringWithOneOpenResistorHidesHalfItsVoltage() {
        Bank bank = sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 2, 1)).build();
        Discharge discharge = Discharge.of(bank, Optional.empty());
        StageDischarge stage = discharge.stages().getFirst();
        StringCase.Case open =
                discharge.courses().getFirst().string().orElseThrow().oneOpen();
        double v0 = stage.opening().initialVolts();
        double tau = stage.timeConstantSeconds().orElseThrow();
        double left = v0 * Math.exp(-stage.waitSeconds() / tau);
        assertEquals(v0, open.slowVolts(), 1e-6 * v0);
        assertEquals(left, open.mateVolts(), 1e-6 * v0);
        assertEquals(v0 + left, open.endsVolts(), 1e-6 * v0);
        assertEquals((v0 - left) / 2.0, open.joinedSlowVolts(), 1e-6 * v0);
        assertEquals(-(v0 - left) / 2.0, open.joinedMateVolts(), 1e-6 * v0);
        assertEquals(stage.hiddenVolts().orElseThrow(), open.worstJoinedVolts(), 0.01 * v0);
        // joined ends drain it with twice the time constant (DIS-8)
        assertEquals(
                2.0 * tau * Math.log((v0 - left) / 2.0 / 50.0),
                open.joinedSecondsToSafe().orElseThrow(),
                1e-3);
        StringCase.Sample last = open.samples().getLast();
        assertEquals(0.0, last.endsVolts(), 1e-6 * v0);
    }

    /** Two strings side by side: the bus follows the sound string down to 0 V by itself, nobody has to join anything. */
    @Test
    void besideASoundStringTheBusReadsZeroByItself() {
        Bank bank = sketch(Connection.WYE_UNGROUNDED, new LegLayout(40, 2, 1)).build();
        StringCase.Case open = course(bank).string().orElseThrow().oneOpen();
        assertTrue(Math.abs(open.endsVolts()) < 0.25 * open.slowVolts(), "ends " + open.endsVolts());
        assertTrue(open.slowVolts() > 500.0);
        assertTrue(open.mateVolts() < -500.0);
    }

    @Test
    void oneResistorOfManySideBySideHidesLittle() {
        Bank single =
                sketch(Connection.DOUBLE_WYE_UNGROUNDED, new LegLayout(1, 2, 1)).build();
        Bank many =
                sketch(Connection.DOUBLE_WYE_UNGROUNDED, new LegLayout(1, 2, 8)).build();
        assertTrue(course(many).string().orElseThrow().oneOpen().hiddenVolts()
                < 0.1 * course(single).string().orElseThrow().oneOpen().hiddenVolts());
        assertEquals(8, course(many).string().orElseThrow().oneOpen().unitsInGroup());
        assertTrue(
                course(sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2)).build())
                        .string()
                        .isEmpty());
    }

    /**
     * <pre>
     *   A ─┬─ul (open)─┬─ middle ─┬─ll─┬─ 0    ur still drains ul, twice as slowly;
     *      └─ur────────┘          └─lr─┘       joined, upper and lower quarters hold ± against each other
     * </pre>
     */
    @Test
    void aBridgeHidesVoltageAcrossItsMiddle() {
        Bank bank = sketch(Connection.BRIDGE_UNGROUNDED, new LegLayout(1, 1, 1)).build();
        Discharge discharge = Discharge.of(bank, Optional.empty());
        StageDischarge stage = discharge.stages().getFirst();
        StringCase.Case open =
                discharge.courses().getFirst().string().orElseThrow().oneOpen();
        double v0 = stage.opening().initialVolts();
        double half = stage.waitSeconds() / stage.timeConstantSeconds().orElseThrow();
        assertEquals(v0 * Math.exp(-half / 2.0), open.slowVolts(), 1e-6 * v0);
        assertEquals(v0 * Math.exp(-half), open.mateVolts(), 1e-6 * v0);
        double hidden = (open.slowVolts() - open.mateVolts()) / 2.0;
        assertEquals(hidden, open.joinedSlowVolts(), 1e-6 * v0);
        assertEquals(-hidden, open.joinedMateVolts(), 1e-6 * v0);
    }

    @Test
    void switchingOnAgainIsShownOverTime() {
        Bank bank = sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2))
                .reclose(90.0)
                .build();
        Discharge discharge = Discharge.of(bank, Optional.empty());
        Reclosing reclosing = discharge.courses().getFirst().reclosing().orElseThrow();
        StageDischarge stage = discharge.stages().getFirst();
        assertEquals(90.0, reclosing.delaySeconds().orElseThrow());
        Reclosing.Row first = reclosing.rows().getFirst();
        assertEquals(0.0, first.seconds());
        assertEquals(2.0 + first.perPeak(), first.voltagePerPeak(), 1e-12);
        assertEquals(1.0 + first.perPeak(), first.inrushPerDischarged(), 1e-12);
        assertTrue(reclosing.rows().stream().anyMatch(r -> r.seconds() == 90.0));
        // the stricter reading needs RC·ln(√2·V_leg/V_rated) more
        double tau = stage.timeConstantSeconds().orElseThrow();
        assertEquals(
                reclosing.shortestSeconds() + tau * Math.log(stage.opening().peakInServiceVolts() / 7200.0),
                reclosing.ratedSeconds(),
                1e-6);
        assertEquals(Verdict.WARN, check(discharge, "10 % of rated voltage").verdict());
        assertEquals(
                Verdict.PASS,
                check(
                                Discharge.of(
                                        sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2))
                                                .reclose(600.0)
                                                .build(),
                                        Optional.empty()),
                                "10 % of rated voltage")
                        .verdict());
        assertTrue(Discharge.of(sketch(Connection.DELTA, new LegLayout(1, 1, 1)).build(), Optional.empty())
                .unanswered()
                .getLast()
                .contains("control.reclose-delay"));
    }

    @Test
    void approachingEarlyIsRefusedInWords() {
        Bank bank = sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2)).build();
        Discharge early = Discharge.of(bank, Question.NOTHING_MORE.after(120.0));
        assertEquals(Verdict.FAIL, check(early, "voltage of a unit after 2 min").verdict());
        assertEquals(Verdict.FAIL, check(early, "time waited").verdict());
        assertTrue(DischargeText.of(early).contains("STAY OUT"));
        StageDischarge stage = early.stages().getFirst();
        assertEquals(
                stage.voltsAfter(120.0).orElseThrow(),
                early.courses().getFirst().after().orElseThrow().volts(),
                1e-9);
        Discharge late = Discharge.of(bank, Question.NOTHING_MORE.after(3600.0));
        assertEquals(Verdict.PASS, check(late, "time waited").verdict());
        String text = DischargeText.of(late);
        assertTrue(text.contains("minimum wait over: now prove dead"));
        assertFalse(text.toLowerCase(Locale.ROOT).contains("safe to touch"));
    }

    @Test
    void fiveTimeConstantsAreSaidNotToBeEnough() {
        Bank bank = sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2)).build();
        Discharge five = Discharge.of(bank, Question.NOTHING_MORE.timeConstants(5.0));
        StageDischarge stage = five.stages().getFirst();
        Residual left = five.courses().getFirst().timeConstants().orElseThrow();
        assertEquals(stage.opening().initialVolts() * Math.exp(-5.0), left.volts(), 1e-6);
        assertEquals(Verdict.FAIL, check(five, "after 5 time constants").verdict());
        assertTrue(DischargeText.of(five).replaceAll("\\s+", " ").contains("Not enough: 50 V takes"));
        Discharge ten = Discharge.of(bank, Question.NOTHING_MORE.timeConstants(10.0));
        assertEquals(Verdict.PASS, check(ten, "after 10 time constants").verdict());
    }

    @Test
    void withoutAResistanceTheMomentAskedForHoldsTheFullVoltage() {
        UnitType bare = BankSketch.type("U", 200e3, 7200, 60, new Tolerance(0.0, 0.0), 0, 0, false, Optional.empty());
        Bank bank = new BankSketch()
                .stage("s", Connection.WYE_GROUNDED, new LegLayout(1, 1, 1), bare)
                .build();
        Discharge discharge =
                Discharge.of(bank, Question.NOTHING_MORE.after(7200.0).timeConstants(5.0));
        Residual left = discharge.courses().getFirst().after().orElseThrow();
        assertEquals(discharge.stages().getFirst().opening().initialVolts(), left.volts());
        assertEquals(
                Verdict.FAIL, check(discharge, "voltage of a unit after 2 h").verdict());
        assertTrue(discharge.courses().getFirst().timeConstants().isEmpty());
        assertTrue(discharge.unanswered().getFirst().contains("without discharge-resistance"));
    }

    /** C = 2·10.2337 µF a leg, R = 2.1 kΩ, L = 900 H: α = 1.16667/s, ω0 = 7.36845/s, underdamped. Worked by hand. */
    @Test
    void windingsFromLineToNeutralSwing() {
        Bank bank = withPath(
                sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2)).build(),
                path(DischargePath.Between.LINE_TO_NEUTRAL, OptionalDouble.of(900.0)));
        Discharge discharge = Discharge.of(bank, Optional.empty());
        WindingDischarge path = discharge.courses().getFirst().path().orElseThrow();
        double c = 2.0 * 200e3 / (2.0 * Math.PI * 60.0 * 7200.0 * 7200.0);
        double alpha = 2100.0 / 1800.0;
        double w = Math.sqrt(1.0 / (900.0 * c) - alpha * alpha);
        assertEquals(c, path.farads(), 1e-9 * c);
        assertEquals(WindingDischarge.Behaviour.OSCILLATING, path.behaviour());
        assertEquals(w / (2.0 * Math.PI), path.oscillationHertz().orElseThrow(), 1e-9);
        double v0 = discharge.stages().getFirst().opening().initialVolts();
        assertEquals(
                Math.log(v0 / 50.0 * Math.sqrt(1.0 + alpha * alpha / (w * w))) / alpha,
                path.secondsToSafe().orElseThrow(),
                1e-6);
        assertEquals(0.5 * c * v0 * v0, path.windingJoules(), 1e-6 * path.windingJoules());
        assertTrue(path.peakAmperes() < v0 * Math.sqrt(c / 900.0));
        // a path never shortens a wait
        assertEquals(
                Discharge.of(
                                sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2))
                                        .build(),
                                Optional.empty())
                        .longestWaitSeconds(),
                discharge.longestWaitSeconds());
    }

    @Test
    void windingsBetweenLinesSeeAThirdOfAWyesLegAndAllThreeOfADelta() {
        Bank wye = withPath(
                sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1)).build(),
                path(DischargePath.Between.LINES, OptionalDouble.of(900.0)));
        Bank delta = withPath(
                sketch(Connection.DELTA, new LegLayout(1, 1, 1)).build(),
                path(DischargePath.Between.LINES, OptionalDouble.of(900.0)));
        double c = 200e3 / (2.0 * Math.PI * 60.0 * 7200.0 * 7200.0);
        assertEquals(c / 3.0, course(wye).path().orElseThrow().farads(), 1e-9 * c);
        assertEquals(c, course(delta).path().orElseThrow().farads(), 1e-9 * c);
        assertEquals(0.0, course(wye).path().orElseThrow().leftVolts());
        // on a grounded neutral they leave the third of the peak that all legs have in common
        Bank grounded = withPath(
                sketch(Connection.WYE_GROUNDED, new LegLayout(1, 1, 1)).build(),
                path(DischargePath.Between.LINES, OptionalDouble.empty()));
        Discharge discharge = Discharge.of(grounded, Optional.empty());
        StageDischarge stage = discharge.stages().getFirst();
        assertEquals(
                stage.opening().peakInServiceVolts() / 3.0,
                discharge.courses().getFirst().path().orElseThrow().leftVolts(),
                1e-3);
        assertEquals(
                Verdict.WARN,
                check(discharge, "what windings between lines leave").verdict());
    }

    @Test
    void withoutAnInductanceOnlyBoundsAreStated() {
        Bank bank = withPath(
                sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2)).build(),
                path(DischargePath.Between.LINE_TO_NEUTRAL, OptionalDouble.empty()));
        Discharge discharge = Discharge.of(bank, Optional.empty());
        WindingDischarge path = discharge.courses().getFirst().path().orElseThrow();
        assertEquals(WindingDischarge.Behaviour.NOT_KNOWN, path.behaviour());
        assertTrue(path.secondsToSafe().isEmpty());
        assertEquals(path.initialVolts() / 2100.0, path.peakAmperes(), 1e-9);
        assertTrue(discharge.unanswered().getFirst().contains("without its inductance"));
        Bank odd = withPath(
                sketch(Connection.DELTA, new LegLayout(1, 1, 2)).build(),
                path(DischargePath.Between.LINE_TO_NEUTRAL, OptionalDouble.empty()));
        assertTrue(course(odd).path().isEmpty());
        assertTrue(Discharge.of(odd, Optional.empty()).unanswered().stream()
                .anyMatch(u -> u.contains("a delta has no neutral")));
    }

    /** Source of the rule: GB 50053-2013 §5.2, no switch or fuse between a bank and its discharge device. */
    @Test
    void aFuseBetweenUnitsAndWindingsIsNamed() {
        FuseType fuse = BankSketch.fuse("F40");
        UnitType bare = BankSketch.type("U", 200e3, 7200, 60, new Tolerance(0.0, 0.0), 0, 0, false, Optional.empty());
        DischargePath path = path(DischargePath.Between.LINE_TO_NEUTRAL, OptionalDouble.empty());
        Bank unfused = withPath(
                sketch(Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2)).build(), path);
        Bank fused = withPath(
                new BankSketch()
                        .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2), unit(7200.0), Optional.of(fuse))
                        .build(),
                path);
        Bank onlyPath = withPath(
                new BankSketch()
                        .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2), bare, Optional.of(fuse))
                        .build(),
                path);
        String subject = "switches and fuses that may stand between";
        assertEquals(
                Verdict.PASS,
                check(Discharge.of(unfused, Optional.empty()), subject).verdict());
        assertEquals(
                Verdict.WARN,
                check(Discharge.of(fused, Optional.empty()), subject).verdict());
        assertEquals(
                Verdict.FAIL,
                check(Discharge.of(onlyPath, Optional.empty()), subject).verdict());
    }

    @Test
    void aStickBearsSoManyUnitsInSuccession() {
        Stick stick = new Stick(1000.0, OptionalDouble.of(2000.0));
        // 10 µF at 10 kV: 500 J a unit
        assertEquals(4, stick.unitsInSuccession(500.0).orElseThrow());
        assertEquals(0, stick.unitsInSuccession(5000.0).orElseThrow());
        assertTrue(new Stick(1000.0, OptionalDouble.empty())
                .unitsInSuccession(500.0)
                .isEmpty());
    }

    @Test
    void theTextOfEveryConnectionKeepsToThePage() {
        for (Connection connection : Connection.values()) {
            Bank bank = withPath(
                    sketch(connection, new LegLayout(2, 2, 2)).reclose(77.0).build(),
                    path(DischargePath.Between.LINES, OptionalDouble.of(900.0)));
            String text = DischargeText.of(Discharge.of(
                    bank,
                    Question.NOTHING_MORE
                            .after(60.0)
                            .timeConstants(5.0)
                            .with(Optional.of(new Stick(1e4, OptionalDouble.of(5e3))))));
            text.lines().forEach(line -> assertTrue(line.length() <= 100, connection + ": " + line));
            assertTrue(text.contains("poles clear"), connection.code());
        }
    }
}
