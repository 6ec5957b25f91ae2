package org.varwright.switching;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Reactor;
import org.varwright.bank.SwitchType;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.network.Capacitances;

/**
 * Outrush against the ratings of the breaker that feeds the bank and of the stages' switches (SWI-5).
 *
 * <p>By hand: {@code √(2/3)·12470/(2π) = 1620.47 V/rad}; 60 µH: 2.70078e7 A·Hz, 30 µH: 5.40157e7, both 8.10235e7.
 */
class OutrushRatingTest {
    private static final double FIRST = 1620.47 / 60e-6;
    private static final double SECOND = 1620.47 / 30e-6;

    private static TestBank.Plan plan(double henries) {
        TestBank.Plan plan = TestBank.Plan.of(Connection.WYE_UNGROUNDED, 600e3);
        return henries > 0.0 ? plan.reactor(henries, 0.02, Reactor.Position.LINE, 4e3) : plan;
    }

    private static Device device(String name, Device.Kind kind, double outrush) {
        SwitchType type = new SwitchType(
                "T " + name,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                outrush > 0.0 ? OptionalDouble.of(outrush) : OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        return new Device(
                name,
                kind,
                List.of("closed", "open"),
                Optional.empty(),
                Optional.of(type),
                false,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    private record Judged(List<Check> checks, List<Gap> gaps) {}

    /** Stages s1, s2 … with these inductances; 0 for none that is known. */
    private static Judged judged(List<Device> devices, double... henries) {
        TestBank sketch = new TestBank(12.47e3, 60.0).source(210e6, 9.0);
        for (int s = 0; s < henries.length; s++) {
            sketch.stage("s" + (s + 1), plan(henries[s]));
        }
        Bank bank = sketch.build()
                .with(new Isolation(
                        List.of(),
                        devices,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        java.util.Map.of()));
        Source source = Source.of(bank.system());
        Capacitances values = Capacitances.known(bank);
        List<SwitchedStage> stages =
                bank.stages().stream().map(s -> SwitchedStage.of(s, values)).toList();
        InrushChecks checks = new InrushChecks(bank, source, stages, List.of());
        List<Check> found = new ArrayList<>(checks.of(OutrushStudy.of(source, stages)));
        return new Judged(found, checks.gaps());
    }

    private static void holds(Verdict verdict, double value, Check check) {
        assertEquals(verdict, check.verdict(), check.toString());
        assertEquals(value, check.value(), 1e-5 * value, check.toString());
        assertEquals("SWI-5", check.basis().id());
    }

    @Test
    void theBreakerBearsAllStages() {
        for (double part : new double[] {0.999, 1.001}) {
            Judged judged = judged(List.of(device("main", Device.Kind.BREAKER, part * (FIRST + SECOND))), 60e-6, 30e-6);
            assertEquals(1, judged.checks().size(), "no hint beside a rating");
            holds(
                    part < 1.0 ? Verdict.FAIL : Verdict.PASS,
                    FIRST + SECOND,
                    judged.checks().getFirst());
            assertFalse(judged.gaps().stream().anyMatch(g -> g.missing().contains("outrush-product")));
        }
    }

    /** A fault behind the switch of a stage is fed by the others through it, not by the stage itself. */
    @Test
    void aStageSwitchBearsTheOthers() {
        for (double part : new double[] {0.999, 1.001}) {
            Judged judged = judged(
                    List.of(
                            device("switch s1", Device.Kind.STAGE_SWITCH, part * SECOND),
                            device("switch s2", Device.Kind.STAGE_SWITCH, part * FIRST)),
                    60e-6,
                    30e-6);
            assertEquals(2, judged.checks().size());
            Verdict expected = part < 1.0 ? Verdict.FAIL : Verdict.PASS;
            holds(expected, SECOND, judged.checks().get(0));
            holds(expected, FIRST, judged.checks().get(1));
        }
    }

    /** A breaker that switches a stage is judged once, as what feeds a fault at the bus; a disconnector's data are no breaker's. */
    @Test
    void eachDeviceIsJudgedOnceAndAsWhatItIs() {
        Judged judged = judged(
                List.of(
                        device("switch s1", Device.Kind.BREAKER, 9e7),
                        device("d", Device.Kind.DISCONNECTOR, 1.0),
                        device("main", Device.Kind.BREAKER, 0.0)),
                60e-6,
                30e-6);
        assertEquals(1, judged.checks().size());
        holds(Verdict.PASS, FIRST + SECOND, judged.checks().getFirst());
    }

    /** ANSI C37.06-2000: 2e7 A·Hz. One stage behind 90 µH sends 1.80e7, behind 80 µH 2.03e7: no rating is known, so neither passes and neither fails. */
    @Test
    void againstAGeneralPurposeBreakerNothingPassesAndNothingFails() {
        for (double henries : new double[] {90e-6, 80e-6}) {
            Judged judged = judged(List.of(), henries);
            holds(Verdict.WARN, 1620.47 / henries, judged.checks().getFirst());
            assertEquals(2e7, judged.checks().getFirst().limit());
            assertTrue(judged.gaps().stream().anyMatch(g -> g.missing().contains("outrush-product")));
        }
    }

    /** Found by reading: the sum without a stage of which no inductance is known passed as if it were the whole. */
    @Test
    void aSumInWhichAStageIsMissingPassesNothing() {
        List<Device> devices = List.of(
                device("main", Device.Kind.BREAKER, 1e9),
                device("switch s1", Device.Kind.STAGE_SWITCH, 1e9),
                device("switch s3", Device.Kind.STAGE_SWITCH, 1e9));
        Judged judged = judged(devices, 60e-6, 30e-6, 0.0);
        holds(Verdict.WARN, FIRST + SECOND, judged.checks().get(0));
        assertTrue(judged.checks().get(0).subject().contains("not known of s3"));
        holds(Verdict.WARN, SECOND, judged.checks().get(1));
        // behind the switch of s3 itself the others are all known
        holds(Verdict.PASS, FIRST + SECOND, judged.checks().get(2));
        // what breaks a limit without it breaks it all the more
        Judged broken = judged(List.of(device("main", Device.Kind.BREAKER, 8e7)), 60e-6, 30e-6, 0.0);
        holds(Verdict.FAIL, FIRST + SECOND, broken.checks().getFirst());
        // of nothing known nothing is judged
        assertTrue(judged(List.of(device("main", Device.Kind.BREAKER, 1e9)), 0.0)
                .checks()
                .isEmpty());
    }
}
