package org.varwright.switching;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Reactor;

/** Values from outside, or worked by hand from the formula of the source that is named. */
class InrushReferenceTest {
    private static InrushCase only(Bank bank, String stage, String... onto) {
        Inrush inrush = Inrush.of(
                bank,
                new InrushRequest(
                        Optional.of(stage),
                        Optional.of(List.of(onto)),
                        Map.of(),
                        Optional.of(List.of(90.0, 90.0, 90.0)),
                        false,
                        Map.of()));
        return inrush.cases().getFirst();
    }

    private static TestBank.Plan wye(double vars, double microhenries) {
        TestBank.Plan plan = TestBank.Plan.of(Connection.WYE_UNGROUNDED, vars);
        return microhenries > 0.0 ? plan.reactor(microhenries * 1e-6, 0.0, Reactor.Position.LINE, 0.0) : plan;
    }

    /** {@code Î = √2·√(I_sc·I_1)}, {@code f = f_s·√(I_sc/I_1)} (IEEE Std C37.012, C37.99; constants within 1 %). */
    @Test
    void isolated() {
        check(1291.0, 657.2, isolated(12.47e3, 1800e3, Math.sqrt(3.0) * 12.47e3 * 10e3));
        check(3006.1, 564.5, isolated(13.8e3, 5400e3, Math.sqrt(3.0) * 13.8e3 * 20e3));
        // 5 Mvar at a bus of 125 MVA: I_1 209.185 A, I_sc 5229.62 A (first principles)
        check(1479.16, 300.0, isolated(13.8e3, 5e6, 125e6));
    }

    private static ClosedForm isolated(double volts, double vars, double shortCircuit) {
        Bank bank = new TestBank(volts, 60.0)
                .source(shortCircuit)
                .stage("s", wye(vars, 0.0))
                .build();
        return only(bank, "s").formula().orElseThrow();
    }

    private static void check(double amperes, double hertz, ClosedForm formula) {
        assertEquals(amperes, formula.peakAmperes(), 1e-4 * amperes);
        assertEquals(hertz, formula.hertz(), 2e-4 * hertz);
    }

    /** {@code Î = √(2/3)·V·√(C_eq/L_eq)} (IEEE Std C37.012, C37.99; constants within 1 %). */
    @Test
    void backToBack() {
        check(7283.7, 7416.0, backToBack(12.47e3, 60.0, 1800e3, 30.0, 1));
        check(8143.4, 5505.0, backToBack(13.8e3, 60.0, 3000e3, 40.0, 1));
        // 600 kvar steps, 15 µH between them: 5947 A, 18.2 kHz (first principles)
        check(5947.08, 18165.4, backToBack(12.47e3, 60.0, 600e3, 15.0, 1));
    }

    /** 1800 kvar stages, 13.8 kV, 25 µH each, one, two and three already on: 5641.9, 7522.5, 8462.8 A at 6357.1 Hz (first principles). */
    @Test
    void severalStagesAlreadyOn() {
        double[] amperes = {5641.9, 7522.5, 8462.8};
        for (int on = 1; on <= 3; on++) {
            check(amperes[on - 1], 6357.1, backToBack(13.8e3, 60.0, 1800e3, 50.0, on));
        }
        // the fifth of five 600 kvar steps with 15 µH each: C_eq of 480 kvar, L_eq 18.75 µH, 6728.35 A (first
        // principles)
        ClosedForm fifth = backToBack(12.47e3, 60.0, 600e3, 30.0, 4);
        assertEquals(6728.35, fifth.peakAmperes(), 1e-4 * 6728.35);
        assertEquals(18.75e-6, fifth.henries(), 1e-12);
    }

    /** Stages that share {@code microhenries} between two of them: half in each. */
    private static ClosedForm backToBack(double volts, double hertz, double vars, double microhenries, int on) {
        TestBank bank = new TestBank(volts, hertz).source(250e6).stage("s0", wye(vars, microhenries / 2.0));
        String[] onto = new String[on];
        for (int i = 1; i <= on; i++) {
            bank.stage("s" + i, wye(vars, microhenries / 2.0));
            onto[i - 1] = "s" + i;
        }
        return only(bank.build(), "s0", onto).formula().orElseThrow();
    }

    /** The constants of the usual short formula, 1330 at 60 Hz and 1457 at 50 Hz: {@code Î = k·√(Q1·Q2/((Q1+Q2)·L))}, kvar, µH, all of it in kV (first principles). */
    @Test
    void theConstantsOfTheShortFormula() {
        for (double[] pair : new double[][] {{60.0, 1329.81}, {50.0, 1456.73}}) {
            ClosedForm formula = backToBack(12.47e3, pair[0], 600e3, 15.0, 1);
            double root = Math.sqrt(300.0 / (15.0 * 1.0));
            assertEquals(pair[1], formula.peakAmperes() / root, 1e-3 * pair[1]);
        }
    }

    /** 600 kvar steps at 15 µH: 151.4 times the rated peak (first principles). */
    @Test
    void timesTheRatedPeak() {
        ClosedForm formula = backToBack(12.47e3, 60.0, 600e3, 15.0, 1);
        double ratedPeak = Math.sqrt(2.0) * 600e3 / (Math.sqrt(3.0) * 12.47e3);
        assertEquals(151.376, formula.peakAmperes() / ratedPeak, 0.02);
    }

    /** {@code Î·f = V0/(2πL)}: at 13.8 kV 89.7 µH hold the 2e7 A·Hz of a general-purpose breaker (ANSI C37.06-2000). */
    @Test
    void outrushOfAGeneralPurposeBreaker() {
        Bank bank = new TestBank(13.8e3, 60.0)
                .source(250e6)
                .stage("s", wye(3000e3, 89.665))
                .build();
        Inrush inrush = Inrush.of(bank, InrushRequest.EVERYTHING);
        assertEquals(
                InrushChecks.GENERAL_PURPOSE, inrush.outrush().orElseThrow().product(), 2e3);
    }

    /** Closing on full charge of opposite sign: inrush doubled, voltage to 3.0 (first principles; undamped, source stiff at power frequency). */
    @Test
    void trappedCharge() {
        Bank bank = new TestBank(13.8e3, 60.0)
                .source(1000e6)
                .stage("s", TestBank.Plan.of(Connection.WYE_GROUNDED, 100e3))
                .build();
        Closing plain = closing(bank, Map.of());
        Closing trapped = closing(bank, Map.of("A", -1.0, "B", 0.0, "C", 0.0));
        assertEquals(2.0 * plain.peakAmperes(), trapped.peakAmperes(), 0.01 * trapped.peakAmperes());
        assertEquals(3.0, trapped.legPerPeak(), 0.02);
        assertEquals(2.0, plain.legPerPeak(), 0.01);
    }

    private static Closing closing(Bank bank, Map<String, Double> trapped) {
        return Inrush.of(
                        bank,
                        new InrushRequest(
                                Optional.of("s"),
                                Optional.of(List.of()),
                                trapped,
                                Optional.of(List.of(90.0, 90.0, 90.0)),
                                false,
                                Map.of()))
                .cases()
                .getFirst()
                .main()
                .orElseThrow();
    }

    /**
     * In time the peak is that of the formula, and on top of it at most what the source sends into both stages, halved, as they are equal; both from first
     * principles, by different ways.
     */
    @Test
    void theTimeDomainMeetsTheFormula() {
        Bank bank = new TestBank(13.8e3, 60.0)
                .source(50e6)
                .stage("s1", wye(300e3, 40.0))
                .stage("s2", wye(300e3, 40.0))
                .build();
        InrushCase found = only(bank, "s1", "s2");
        ClosedForm formula = found.formula().orElseThrow();
        double fromSource = isolated(13.8e3, 600e3, 50e6).peakAmperes() / 2.0;
        Closing closing = found.main().orElseThrow();
        assertTrue(closing.peakAmperes() > formula.peakAmperes(), closing.toString());
        assertTrue(closing.peakAmperes() < formula.peakAmperes() + fromSource, closing.toString());
        assertEquals(formula.hertz(), closing.hertz(), 1e-3 * formula.hertz());
    }

    /** {@code ∫i²dt = Î²·L/(2R)} when all has died away; {@code Î²·T/2} without resistance (first principles). */
    @Test
    void integralOfTheSquare() {
        ClosedForm damped = ClosedForm.isolated(13.8e3, 20e-6, 100e-6, 0.05, List.of());
        double all = damped.peakAmperes() * damped.peakAmperes() * 100e-6 / (2.0 * 0.05);
        assertEquals(all, damped.ampereSquaredSeconds(1.0), 1e-3 * all);
        ClosedForm free = ClosedForm.isolated(13.8e3, 20e-6, 100e-6, 0.0, List.of());
        double periods = 10.0 / free.hertz();
        assertEquals(
                free.peakAmperes() * free.peakAmperes() * periods / 2.0,
                free.ampereSquaredSeconds(periods),
                1e-6 * free.peakAmperes() * free.peakAmperes() * periods);
    }

    /** 10 m of bus: 6.5 to 10 µH (0.65 to 1 µH/m: common practice, no source); by formula the lower end is worse. */
    @Test
    void bothEndsOfTheBus() {
        TestBank.Plan plan = wye(1800e3, 0.0).wiring(OptionalDouble.of(10.0), OptionalDouble.of(1e-6));
        Bank bank = new TestBank(12.47e3, 60.0)
                .source(200e6)
                .stage("s1", plan)
                .stage("s2", plan)
                .build();
        InrushCase found = only(bank, "s1", "s2");
        assertEquals(15.0e-6, found.formula().orElseThrow().henries(), 1e-12);
        assertEquals(22.0e-6, found.otherEnd().orElseThrow().henries(), 1e-12);
        assertTrue(found.formula().orElseThrow().peakAmperes()
                > found.otherEnd().orElseThrow().peakAmperes());
    }
}
