package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.Spare;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;
import org.varwright.network.Banks;

/** Values from outside. */
class FitReferenceTest {
    private static final double[] AS_FOUND = {4.18, 4.30, 4.36, 4.40, 4.21, 4.25};

    private static Bank sixPositions() {
        return Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 1, 1)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 10.0, 1.0))
                .bank();
    }

    private static List<Fitted> units(Bank bank) {
        List<Fitted> units = new ArrayList<>();
        for (int i = 0; i < AS_FOUND.length; i++) {
            units.add(FitBanks.fitted(bank.positions().get(i), AS_FOUND[i] * 1e-6, Fitted.Role.KEPT));
        }
        return units;
    }

    /*
     *   A1 4.18   B1 4.30   C1 4.36        A2 4.40   B2 4.21   C2 4.25 µF
     *        \      |      /                    \      |      /
     *             n1 ──────────── CT ──────────── n2
     */
    /** Case UNB-014: 13.8 kV, 60 Hz, six units; source: first principles, an independent calculation; tolerance 2 %. */
    @Test
    void sixPositionDoubleWye() {
        Bank bank = sixPositions();
        FitOptions least = new FitOptions(List.of(), List.of(), List.of(), FitOptions.Aim.LEAST_UNBALANCE, 6);
        FitResult result = Fit.plan(FitBanks.input(bank, units(bank), List.of(), least));
        assertEquals(0.48127, result.before().sensors().getFirst().primary().magnitude(), 0.02 * 0.48127);
        assertEquals(0.0251232, result.after().sensors().getFirst().primary().magnitude(), 0.02 * 0.0251232);
        assertTrue(result.provenBest(), result.proof());
        // the case's own arrangement, up to exchanging the wyes and turning the phases: both leave the same neutral
        // current
        Bank again = sixPositions();
        double[] published = {4.30, 4.21, 4.40, 4.25, 4.18, 4.36};
        List<Fitted> units = new ArrayList<>();
        for (int i = 0; i < published.length; i++) {
            units.add(FitBanks.fitted(again.positions().get(i), published[i] * 1e-6, Fitted.Role.KEPT));
        }
        FitResult asPublished = Fit.plan(FitBanks.input(again, units, List.of(), FitOptions.USUAL));
        assertEquals(
                asPublished.before().sensors().getFirst().primary().magnitude(),
                result.after().sensors().getFirst().primary().magnitude(),
                1e-9);
        assertEquals(List.of(), asPublished.moves());
    }

    /**
     * Case KV-008: 200 kvar 7.2 kV 60 Hz units on an 11 kV 50 Hz bank give 129.672 kvar, 10.2337 µF against 15.784 µF; source: first principles, an
     * independent calculation.
     */
    @Test
    void spareForAnotherSystem() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2)
                .at(11000.0, 50.0)
                .rated(200e3, 11000.0 / Math.sqrt(3.0))
                .bank();
        UnitType type = type(200e3, 7200.0, 60.0);
        assertEquals(10.2337e-6, type.capacitanceFarads(), 1e-10);
        assertEquals(15.784e-6, bank.stages().getFirst().unit().capacitanceFarads(), 1e-9);
        String reason =
                Compatibility.typeReason(bank, bank.stages().getFirst(), type).orElseThrow();
        assertTrue(reason.startsWith("rated for 60 Hz, not 50 Hz"), reason);
        assertTrue(reason.contains("give 129.7 kvar"), reason);
    }

    static UnitType type(double vars, double volts, double hertz) {
        return new UnitType(
                "other",
                vars,
                volts,
                hertz,
                new Tolerance(0.0, 0.1),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.of(2),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /**
     * Ungrounded wye, one group of four, one unit out: the rest bear 1.0909 of healthy; two out in a group of four: 1.2000. Table of unbalance values, first
     * principles; the limit is 110 % of rated (IEEE Std 18).
     */
    @Test
    void runOnWithOneUnitMissing() {
        Bank bank = FitBanks.withAlarm(
                Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 4).bank(), 1e6);
        assertEquals(1.0909, run(bank, 1).getFirst().highestUnitVoltagePerRated(), 5e-5);
        RunOn.Option two = run(bank, 2).stream()
                .filter(o -> o.title().equals("nothing else taken out"))
                .findFirst()
                .orElseThrow();
        assertEquals(1.2000, two.highestUnitVoltagePerRated(), 5e-5);
        assertTrue(!two.limitsKept(), "120 % is not allowed");
    }

    private static List<RunOn.Option> run(Bank bank, int missing) {
        List<Fitted> known = new ArrayList<>();
        Map<Boolean, List<UnitPosition>> ofA = bank.positions().stream()
                .collect(java.util.stream.Collectors.partitioningBy(p -> p.leg().equals("A")));
        for (UnitPosition p : ofA.getOrDefault(true, List.of()).subList(0, missing)) {
            known.add(FitBanks.fitted(p, 1e-5, Fitted.Role.CONDEMNED));
        }
        FitResult result = Fit.plan(FitInput.of(bank, known, FitOptions.USUAL));
        assertEquals(FitResult.Outcome.SPARES_MISSING, result.outcome());
        return result.runOn().getFirst().options();
    }

    /** A spare that measures a third more than its nameplate has a shorted section of four (× 4/3; first principles) and is refused. */
    @Test
    void spareWithShortedSection() {
        Bank bank = sixPositions();
        UnitType type = bank.stages().getFirst().unit();
        Spare bad = FitBanks.spare("S", type, type.capacitanceFarads() * 4.0 / 3.0);
        String reason =
                Compatibility.reason(bank, bank.stages().getFirst(), bad).orElseThrow();
        assertTrue(reason.contains("+33.3 %"), reason);
    }
}
