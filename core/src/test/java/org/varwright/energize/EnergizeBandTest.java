package org.varwright.energize;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Verdict;
import org.varwright.network.Banks;
import org.varwright.resonance.BankText;

/** Bands and limits by hand: what each uncertainty does alone, a sensor against its settings, the bus against the system's highest voltage. */
class EnergizeBandTest {
    private static final Source NONE = Source.commonPractice("the test's own");

    private static Map<UnitPosition, Double> asRated(Bank bank) {
        Map<UnitPosition, Double> farads = new HashMap<>();
        bank.positions().forEach(p -> farads.put(p, bank.unitTypes().getFirst().capacitanceFarads()));
        return farads;
    }

    private static Bank grounded() {
        return Banks.plan(Connection.WYE_GROUNDED, 1, 1, 4)
                .rated(200e3, 13800.0 / Math.sqrt(3.0))
                .bank();
    }

    /**
     * Grounded wye: V_A follows from AB and CA with weights (first principles). Around equal voltages a line voltage moved by u moves
     * its own two phase voltages by 2u/3 and the third by −u/3; so each phase moves by u·√((2/3)² + (2/3)² + (1/3)²) = u.
     */
    @Test
    void busVoltageAlone() {
        Bank bank = grounded();
        Energize energize = Energize.of(
                bank, asRated(bank), BusVolts.balanced(13800.0), new Uncertainty(0.01, 0.0, 0.0, 0.0, NONE), List.of());
        for (ExpectedCurrent current : energize.currents()) {
            Band band = current.amperes();
            assertEquals(1.01, band.high() / band.expected(), 2e-4, current.name());
            assertEquals(0.99, band.low() / band.expected(), 2e-4, current.name());
        }
    }

    /** ENG-2: limits of error of the meter in the place of the usual 1 %, where they are larger; four units in parallel: 3 %/√4. */
    @Test
    void aWorseMeterMakesTheBandWider() {
        Bank bank = grounded();
        Uncertainty meter = new Uncertainty(0.0, 0.0, 0.01, 0.0, NONE).withMeter(0.03);
        Energize.of(bank, asRated(bank), BusVolts.balanced(13800.0), meter, List.of())
                .currents()
                .forEach(c ->
                        assertEquals(1.015, c.amperes().high() / c.amperes().expected(), 1e-6, c.name()));
        assertEquals(Uncertainty.USUAL, Uncertainty.USUAL.withMeter(0.003), "a better one narrows nothing");
    }

    /** Four units in parallel, each known to 1 %: a leg is known to 1 %/√4. */
    @Test
    void capacitanceMeterAlone() {
        Bank bank = grounded();
        Energize energize = Energize.of(
                bank, asRated(bank), BusVolts.balanced(13800.0), new Uncertainty(0.0, 0.0, 0.01, 0.0, NONE), List.of());
        Band band = energize.currents().getFirst().amperes();
        assertEquals(1.005, band.high() / band.expected(), 1e-6);
        assertEquals(0.995, band.low() / band.expected(), 1e-6);
    }

    /** Nobody measured: the whole leg by its nameplate, 0 to +10 % all together, and nothing below. */
    @Test
    void nameplateAlone() {
        Bank bank = grounded();
        Energize energize = Energize.of(
                bank, Map.of(), BusVolts.balanced(13800.0), new Uncertainty(0.0, 0.0, 0.01, 0.0, NONE), List.of());
        Band band = energize.currents().getFirst().amperes();
        assertEquals(1.10, band.high() / band.expected(), 1e-6);
        assertEquals(1.0, band.low() / band.expected(), 1e-6);
    }

    /** Unequal voltages: mean, highest, and one of the three alone. */
    @Test
    void threeVoltages() {
        BusVolts bus = BusVolts.of(13800.0, 13700.0, 13900.0);
        assertEquals(13800.0, bus.mean(), 1e-9);
        assertEquals(13900.0, bus.highest());
        assertEquals(new BusVolts(13938.0, 13700.0, 13900.0), bus.scaled(0, 1.01));
        assertEquals(new BusVolts(13800.0, 13837.0, 13900.0), bus.scaled(1, 1.01));
        assertEquals(new BusVolts(13800.0, 13700.0, 14039.0), bus.scaled(2, 1.01));
    }

    /** A grounded wye with 1 % more in phase A: its neutral carries 1 % of a phase current (first principles), whatever stands beside it. */
    @ParameterizedTest
    @CsvSource({"1.02, PASS", "1.0000001, WARN", "0.99, FAIL"})
    void aSensorAgainstItsSetting(double settingOverExpected, Verdict verdict) {
        Bank bank = sensed(OptionalDouble.empty());
        Map<UnitPosition, Double> farads = asRated(bank);
        farads.replaceAll((p, c) -> p.leg().equals("A") ? 1.01 * c : c);
        Uncertainty sensor = new Uncertainty(0.0, 0.0, 0.0, 0.01, NONE);
        Energize plain = Energize.of(bank, farads, BusVolts.balanced(13800.0), sensor, List.of());
        double phase = plain.currents().get(1).amperes().expected();
        double expected = plain.sensors().getFirst().primary().expected();
        assertEquals(0.01 * phase, expected, 1e-9 * phase);
        assertEquals(
                0.1 * expected,
                plain.sensors().getFirst().secondary().orElseThrow().expected(),
                1e-9 * expected,
                "50:5");
        assertEquals(1.01 * expected, plain.sensors().getFirst().primary().high(), 1e-9 * phase);
        Bank set = sensed(OptionalDouble.of(0.1 * expected * settingOverExpected));
        Check check = Energize.of(set, farads, BusVolts.balanced(13800.0), sensor, List.of()).checks().stream()
                .filter(c -> c.basis().id().equals("ENG-7"))
                .findFirst()
                .orElseThrow();
        assertEquals(verdict, check.verdict());
        assertEquals(0.1 * expected, check.value(), 1e-9 * expected);
    }

    private static Bank sensed(OptionalDouble alarm) {
        return Banks.plan(Connection.WYE_GROUNDED, 1, 1, 4)
                .rated(200e3, 13800.0 / Math.sqrt(3.0))
                .sensing(new Protection(
                        Banks.STAGE,
                        Protection.Senses.NEUTRAL_CURRENT,
                        Optional.of(new TransformerRatio(50.0, 5.0)),
                        alarm,
                        OptionalDouble.empty(),
                        false,
                        OptionalDouble.empty(),
                        Optional.empty()))
                .bank();
    }

    /** The highest of the three line voltages against the highest sustained voltage of the file: a warning, the bank is not its cause. */
    @ParameterizedTest
    @CsvSource({"14400, PASS", "14500, PASS", "14501, WARN"})
    void theBusAgainstTheSystemsHighestVoltage(double highest, Verdict verdict) {
        Bank bank = BankText.bank(
                "standard: IEEE\nsystem: {voltage: 13.8 kV, maximum-voltage: 14.5 kV, frequency: 60 Hz, grounding: solid}",
                """
                unit-types: [{name: U, rating: 200 kvar, voltage: 7.96 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}]
                stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 2, unit: U}]
                """);
        Check check = Energize.of(bank, Map.of(), BusVolts.of(highest, 14300.0, 14300.0), Uncertainty.USUAL, List.of())
                .checks()
                .stream()
                .filter(c -> c.basis().id().equals("ENG-5") && c.subject().startsWith("bus voltage"))
                .findFirst()
                .orElseThrow();
        assertEquals(verdict, check.verdict());
        assertEquals(highest, check.value());
        assertEquals(14500.0, check.limit());
    }

    @Test
    void howFarAMeasuredValueIsOffIsSaid() {
        Band band = new Band(100.0, 97.0, 104.0);
        assertEquals("as expected", new Comparison("F/A", 104.0, band, "A", Verdict.PASS).words());
        assertEquals("18 % below what is expected", new Comparison("F/A", 82.0, band, "A", Verdict.FAIL).words());
        assertEquals("25 % above what is expected", new Comparison("F/A", 125.0, band, "A", Verdict.FAIL).words());
        assertEquals("above what is expected", new Comparison("F/A", 1200.0, band, "A", Verdict.FAIL).words());
        assertEquals(
                "above what is expected",
                new Comparison("F/A", 1.0, new Band(0.0, 0.0, 0.5), "A", Verdict.FAIL).words());
        assertEquals(4.0, band.reach(101.0));
        assertEquals(3.0, band.reach(99.0));
        assertEquals(new Band(50.0, 48.5, 52.0), band.times(0.5));
        assertTrue(band.holds(97.0) && band.holds(104.0) && !band.holds(96.99) && !band.holds(104.01));
    }
}
