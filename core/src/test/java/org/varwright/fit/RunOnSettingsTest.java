package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Banks;

/** FIT-6 by the closed forms of the table of unbalance values: what alarm and trip go with a bank that is short of units. First principles. */
class RunOnSettingsTest {
    /** Voltage to neutral of 13.8 kV. */
    private static final double PHASE = 13800.0 / Math.sqrt(3.0);

    private static RunOn.Settings settings(Bank bank, List<String> empty) {
        Map<UnitPosition, Content> contents = bank.positions().stream()
                .collect(Collectors.toMap(
                        p -> p,
                        p -> empty.contains(p.name())
                                ? new Content.Nothing()
                                : new Content.InPlace(FitBanks.fitted(
                                        p, bank.stages().getFirst().unit().capacitanceFarads(), Fitted.Role.KEPT))));
        return RunOnSettings.of(
                        bank,
                        bank.stages().getFirst(),
                        StageModel.of(bank, bank.stages().getFirst()),
                        new Arrangement(contents))
                .orElseThrow();
    }

    private static Bank wye(int units) {
        return Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, units).bank();
    }

    /** Neutral of an ungrounded wye with {@code a}, {@code b}, {@code c} units in its phases, over the voltage to neutral: {@code |a + b∠−120° + c∠120°|/(a + b + c)}. */
    private static double neutral(double a, double b, double c) {
        return Math.sqrt(a * a + b * b + c * c - a * b - b * c - c * a) / (a + b + c);
    }

    /*
     *   A  8 units   B  8 units   C  8 units     ungrounded wye, transformer at the neutral 100:5
     */
    /**
     * Whole: one out of 8 is 1/23 of the voltage to neutral; alarm half way from 0. The rest of phase A bear 1 + 1/23 = 1.0435, with two out 1 + 2/22 = 1.0909, with
     * three 1 + 3/21 = 1.1429: trip half way between 2/22 and 3/21. The relay sees 5/100 of it.
     */
    @Test
    void aWholeBank() {
        RunOn.Settings s = settings(wye(8), List.of());
        assertEquals(PHASE / 23.0 / 2.0, s.alarmPrimary().orElseThrow(), 1e-6);
        assertEquals(PHASE * (2.0 / 22.0 + 3.0 / 21.0) / 2.0, s.tripPrimary().orElseThrow(), 1e-6);
        assertEquals(0.05 * PHASE / 23.0 / 2.0, s.alarmSecondary().orElseThrow(), 1e-6);
        assertEquals(
                0.05 * PHASE * (2.0 / 22.0 + 3.0 / 21.0) / 2.0,
                s.tripSecondary().orElseThrow(),
                1e-6);
        assertEquals(List.of(), s.unseen());
        assertEquals(List.of(), s.untripped());
    }

    /**
     * One unit short in A: 1/23 stands. One more in A gives 2/22; one in B gives |8·e| of (7, 7, 8): 1/22 — more than 1/23, by little, and the alarm lies between.
     * An alarm below what stands would be up at once, and a trip below it would take the bank off.
     */
    @Test
    void aSettingIsAboveWhatStands() {
        RunOn.Settings s = settings(wye(8), List.of("F/A/u1"));
        assertEquals(1.0 / 22.0, neutral(7.0, 7.0, 8.0), 1e-12);
        assertEquals(PHASE * (1.0 / 23.0 + 1.0 / 22.0) / 2.0, s.alarmPrimary().orElseThrow(), 1e-6);
        assertTrue(s.alarmPrimary().orElseThrow() > PHASE / 23.0);
        assertTrue(s.tripPrimary().orElseThrow() > PHASE / 23.0);
        assertEquals(List.of(), s.unseen());
    }

    /**
     * With the system 5 % above nominal at times, 1.05/23 = 0.04565 stands then, more than the 1/22 = 0.04545 of one unit more in B or C at nominal voltage: that
     * unit can't be told from a high voltage. The least that can be is two more in B: |7, 6, 8| is √3/21 = 0.0825; one more in A is 2/22 = 0.0909.
     */
    @Test
    void whatStandsIsTakenAtTheHighestVoltage() {
        Bank bank = highest(wye(8), 1.05 * 13800.0);
        RunOn.Settings s = settings(bank, List.of("F/A/u1"));
        assertEquals(
                PHASE * (1.05 / 23.0 + Math.sqrt(3.0) / 21.0) / 2.0,
                s.alarmPrimary().orElseThrow(),
                1e-6);
        assertEquals(List.of("B", "C"), s.unseen());
    }

    private static Bank between(int groups, int units) {
        return Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, groups, units)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 100.0, 5.0))
                .bank();
    }

    /*
     *   A1 B1 C1  3 units each      A2 B2 C2  3 units each      between the neutrals a current transformer
     */
    /**
     * One short in A1 of an ungrounded double wye: one more in A2 brings the current back to nothing. No alarm sees that; which legs it doesn't see, and where it
     * lies, follows from the currents of a double wye with so many units a leg.
     */
    @Test
    void aFailureAcrossIsNamedAsUnseen() {
        Bank bank = between(1, 3);
        RunOn.Settings s = settings(bank, List.of("F/A1/u1"));
        assertTrue(s.unseen().contains("A2"), s.unseen().toString());
        assertFalse(s.unseen().contains("A1"), s.unseen().toString());
        double standing = currentBetween(new double[] {2, 3, 3, 3, 3, 3});
        double least = Double.POSITIVE_INFINITY;
        for (int leg = 0; leg < 6; leg++) {
            double[] units = {2, 3, 3, 3, 3, 3};
            units[leg]--;
            double seen = currentBetween(units);
            assertEquals(
                    seen <= standing * (1.0 + 1e-9),
                    s.unseen().contains(bank.stages().getFirst().legs().get(leg)),
                    "leg " + leg + ": " + seen + " of " + standing);
            least = seen > standing * (1.0 + 1e-9) ? Math.min(least, seen) : least;
        }
        double unit =
                2.0 * Math.PI * 60.0 * PHASE * bank.stages().getFirst().unit().capacitanceFarads();
        assertEquals((standing + least) / 2.0 * unit, s.alarmPrimary().orElseThrow(), 1e-6);
    }

    /** Current between the neutrals over that of one unit: both neutrals stand at {@code ΣC·e/ΣC}, the first wye's currents sum to what flows. */
    private static double currentBetween(double[] units) {
        double[] re = {1.0, -0.5, -0.5};
        double[] im = {0.0, -Math.sqrt(0.75), Math.sqrt(0.75)};
        double nRe = 0.0;
        double nIm = 0.0;
        double all = 0.0;
        for (int l = 0; l < 6; l++) {
            nRe += units[l] * re[l % 3];
            nIm += units[l] * im[l % 3];
            all += units[l];
        }
        double iRe = 0.0;
        double iIm = 0.0;
        for (int l = 0; l < 3; l++) {
            iRe += units[l] * (re[l] - nRe / all);
            iIm += units[l] * (im[l] - nIm / all);
        }
        return Math.hypot(iRe, iIm);
    }

    /**
     * Two groups of three a leg, two short in group 1 of A1. Losing units of A2 lowers the reading at first while the units that are left there bear more and more: the
     * limit is broken with no more reading than stands. That leg is named: no trip protects it.
     */
    @Test
    void whatNoTripSeesIsNamed() {
        Bank bank = between(2, 4);
        RunOn.Settings s = settings(bank, List.of("F/A1/g1u1", "F/A1/g1u2"));
        assertTrue(s.unseen().contains("A2") && s.untripped().contains("A2"), s.toString());
        assertFalse(s.untripped().contains("A1"), s.toString());
        assertTrue(s.alarmPrimary().orElseThrow() <= s.tripPrimary().orElseThrow(), s.toString());
    }

    /** The alarm that is set may stay where it lies between what stands and what the next unit makes of it. */
    @Test
    void thePresentAlarm() {
        double[] shares = {0.99 / 23.0, 1.01 / 23.0, 0.99 / 22.0, 1.01 / 22.0};
        boolean[] suits = {false, true, true, false};
        for (int i = 0; i < shares.length; i++) {
            Bank bank = FitBanks.withAlarm(wye(8), shares[i] * PHASE);
            assertEquals(suits[i], settings(bank, List.of("F/A/u1")).presentAlarmSuits(), "alarm " + shares[i]);
        }
    }

    /** Without a ratio nothing can be said at the relay; without a sensor there is nothing to set. */
    @Test
    void withoutRatioAndWithoutSensor() {
        Protection plain = new Protection(
                Banks.STAGE,
                Protection.Senses.NEUTRAL_VOLTAGE,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                false,
                OptionalDouble.empty(),
                Optional.empty());
        Banks.Plan plan = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 8);
        RunOn.Settings s = settings(plan.sensing(plain).bank(), List.of());
        assertTrue(s.alarmPrimary().isPresent()
                && s.alarmSecondary().isEmpty()
                && s.tripSecondary().isEmpty());
        Bank bare = plan.sensing().bank();
        assertEquals(
                Optional.empty(),
                RunOnSettings.of(
                        bare,
                        bare.stages().getFirst(),
                        StageModel.of(bare, bare.stages().getFirst()),
                        Arrangement.asFound(
                                FitInput.of(bare, List.of(), FitOptions.USUAL).units())));
    }

    private static Bank highest(Bank bank, double volts) {
        SupplySystem s = bank.system();
        SupplySystem higher = new SupplySystem(
                s.nominalVolts(),
                OptionalDouble.of(volts),
                s.frequencyHertz(),
                s.shortCircuitVoltAmperes(),
                s.xOverR(),
                s.grounding());
        return new Bank(
                bank.name(),
                bank.site(),
                bank.standard(),
                higher,
                bank.unitTypes(),
                bank.fuseTypes(),
                bank.stages(),
                bank.protection(),
                bank.control(),
                bank.isolation(),
                bank.units(),
                bank.spares(),
                bank.label(),
                bank.note());
    }
}
