package org.varwright.energize;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
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
import org.varwright.basis.Verdict;
import org.varwright.json.Json;
import org.varwright.network.Banks;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;

class EnergizeTest {
    private static Bank bank(double trip) {
        return Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 3)
                .sensing(new Protection(
                        Banks.STAGE,
                        Protection.Senses.NEUTRAL_VOLTAGE,
                        Optional.of(new TransformerRatio(8400, 120)),
                        OptionalDouble.of(0.4 * trip),
                        OptionalDouble.of(trip),
                        false,
                        OptionalDouble.of(0.5),
                        Optional.empty()))
                .bank();
    }

    private static Energize healthy(Bank bank) {
        return Energize.of(bank, Map.of(), BusVolts.balanced(13800), Uncertainty.USUAL, List.of());
    }

    @Test
    void readsWhatIsTyped() {
        assertEquals(new MeasuredValue("stage 2/A", 12.5, Dimension.CURRENT), MeasuredValue.parse("stage 2/A=12.5 A"));
        assertEquals(
                new MeasuredValue("stage 4 neutral-voltage", 0.25, Dimension.VOLTAGE),
                MeasuredValue.parse(" stage 4 neutral-voltage = 250 mV "));
    }

    @ParameterizedTest
    @CsvSource({
        "stage 2/A 12.5 A, MEASURED_SYNTAX",
        "stage 2/A=12.5, NO_UNIT",
        "stage 2/A=12.5 kvar, WRONG_UNIT",
        "stage 2/A=twelve A, NOT_A_QUANTITY",
        "stage 2/A=NaN A, NOT_A_QUANTITY",
        "stage 2/A=-3 A, MEASURED_NEGATIVE"
    })
    void saysWhatIsWrongWithWhatIsTyped(String typed, Message message) {
        VarwrightException e = assertThrows(VarwrightException.class, () -> MeasuredValue.parse(typed));
        assertEquals(message, e.problems().getFirst().message());
    }

    @ParameterizedTest
    @CsvSource({"F/D=3 A, MEASURED_UNKNOWN", "F/A=3 V, MEASURED_DIMENSION", "F neutral-voltage=3 A, MEASURED_DIMENSION"
    })
    void saysWhatCannotBeMeasured(String typed, Message message) {
        List<MeasuredValue> measured = List.of(MeasuredValue.parse(typed));
        VarwrightException e = assertThrows(
                VarwrightException.class,
                () -> Energize.of(bank(15), Map.of(), BusVolts.balanced(13800), Uncertainty.USUAL, measured));
        assertEquals(message, e.problems().getFirst().message());
    }

    @Test
    void oneValueAPlace() {
        List<MeasuredValue> twice = List.of(MeasuredValue.parse("F/A=70 A"), MeasuredValue.parse("f/a=71 A"));
        VarwrightException e = assertThrows(
                VarwrightException.class,
                () -> Energize.of(bank(15), Map.of(), BusVolts.balanced(13800), Uncertainty.USUAL, twice));
        assertEquals(Message.MEASURED_TWICE, e.problems().getFirst().message());
    }

    @ParameterizedTest
    @CsvSource({"0, 13800, 13800, BUS_VOLTS", "13800, -1, 13800, BUS_VOLTS", "13800, 13800, 30000, SUPPLY_TRIANGLE"})
    void refusesImpossibleVoltages(double ab, double bc, double ca, Message message) {
        VarwrightException e = assertThrows(VarwrightException.class, () -> BusVolts.of(ab, bc, ca));
        assertEquals(message, e.problems().getFirst().message());
    }

    /** All phases high alike is the meter or the voltage, not the bank. */
    @Test
    void aCommonFactorIsNotAFailure() {
        Bank bank = bank(15);
        double expected = healthy(bank).currents().getFirst().amperes().expected();
        Map<UnitPosition, Double> readings = new HashMap<>();
        bank.positions()
                .forEach(p -> readings.put(p, bank.unitTypes().getFirst().capacitanceFarads()));
        List<MeasuredValue> measured = List.of("A", "B", "C").stream()
                .map(p -> new MeasuredValue("F/" + p, 1.2 * expected, Dimension.CURRENT))
                .toList();
        Energize energize = Energize.of(bank, readings, BusVolts.balanced(13800), Uncertainty.USUAL, measured);
        assertEquals(List.of(), energize.explanations().getFirst().best());
        assertTrue(energize.explanations().getFirst().sentence().contains("20 % high"));
        assertFalse(energize.isGood());
    }

    /** Values that no single failure gives are not blamed on one. */
    @Test
    void whatNoFailureGivesIsSaidToBeUnexplained() {
        Bank bank = bank(15);
        Map<UnitPosition, Double> readings = new HashMap<>();
        bank.positions()
                .forEach(p -> readings.put(p, bank.unitTypes().getFirst().capacitanceFarads()));
        double expected = healthy(bank).currents().getFirst().amperes().expected();
        Energize energize = Energize.of(
                bank,
                readings,
                BusVolts.balanced(13800),
                Uncertainty.USUAL,
                List.of(
                        new MeasuredValue("F/A", 0.2 * expected, Dimension.CURRENT),
                        new MeasuredValue("F/B", 1.9 * expected, Dimension.CURRENT),
                        new MeasuredValue("F/C", expected, Dimension.CURRENT)));
        assertEquals(List.of(), energize.explanations().getFirst().best());
        assertTrue(energize.explanations().getFirst().sentence().startsWith("No single failure"));
    }

    /** A healthy bank whose readings alone reach the trip is said so before the switch is closed. */
    @Test
    void inherentUnbalanceAgainstTheSettings() {
        Bank bank = bank(1.0);
        Map<UnitPosition, Double> readings = new HashMap<>();
        double rated = bank.unitTypes().getFirst().capacitanceFarads();
        bank.positions().forEach(p -> readings.put(p, p.leg().equals("A") ? 1.06 * rated : rated));
        Energize energize = Energize.of(bank, readings, BusVolts.balanced(13800), Uncertainty.USUAL, List.of());
        Check trip = energize.checks().stream()
                .filter(c -> c.subject().contains("below its trip"))
                .findFirst()
                .orElseThrow();
        // V_N = (k − 1)/(k + 2)·V_LN with k = 1.06, × 120/8400.
        assertEquals(0.06 / 3.06 * 13800.0 / Math.sqrt(3.0) * 120.0 / 8400.0, trip.value(), 1e-9);
        assertEquals(Verdict.FAIL, trip.verdict());
    }

    @Test
    void jsonHasTheFieldsOfTheContract() {
        Json.Obj json = (Json.Obj) EnergizeJson.of(Energize.of(
                bank(15),
                Map.of(),
                BusVolts.balanced(13800),
                Uncertainty.USUAL,
                List.of(MeasuredValue.parse("F/A=10 A"))));
        for (String field : List.of("bus", "legs", "sensors", "comparison", "checks", "explanations")) {
            assertTrue(json.members().containsKey(field), field);
        }
        Json.Obj leg = (Json.Obj) ((Json.Arr) json.get("legs")).items().getFirst();
        for (String field : List.of("leg", "expectedAmperes", "low", "high", "basis")) {
            assertTrue(leg.members().containsKey(field), field);
        }
        assertEquals(json.print(), Json.parse(json.print()).print());
    }

    @Test
    void textFitsThePageAndSaysWhatToLookAt() {
        for (Banks.Plan plan : Banks.everyKind()) {
            String text = EnergizeText.of(healthy(plan.bank()));
            text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
            assertTrue(text.contains("AFTER 15 MINUTES") && text.contains("AFTER 8 HOURS"));
            assertTrue(text.contains("F/A"));
        }
    }
}
