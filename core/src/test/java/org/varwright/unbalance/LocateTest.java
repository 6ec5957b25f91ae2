package org.varwright.unbalance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.FuseType;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitPosition;
import org.varwright.json.Json;
import org.varwright.network.Banks;
import org.varwright.network.Supply;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;

class LocateTest {
    private static final Supply SUPPLY = new Supply.Balanced(13800.0);

    /** Externally fused, every unit measured at its nameplate value, one sensor. */
    private static Bank fused(
            Connection connection, int units, Protection.Senses senses, double primary, double secondary) {
        Bank bank = Banks.plan(connection, 1, 1, units)
                .rated(100e3, 7960.0)
                .sensing(Banks.sensor(senses, primary, secondary))
                .bank();
        FuseType fuse = new FuseType(
                "F",
                FuseType.Kind.EXPULSION,
                Optional.empty(),
                OptionalDouble.of(25.0),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        Stage s = bank.stages().getFirst();
        Stage stage = new Stage(
                s.name(),
                s.connection(),
                s.switchName(),
                s.layout(),
                s.second(),
                s.unit(),
                Optional.of(fuse),
                s.reactor(),
                s.label(),
                s.note());
        return new Bank(
                bank.name(),
                bank.site(),
                bank.standard(),
                bank.system(),
                bank.unitTypes(),
                List.of(fuse),
                List.of(stage),
                bank.protection(),
                bank.control(),
                bank.isolation(),
                bank.units(),
                bank.spares(),
                bank.label(),
                bank.note());
    }

    private static Map<UnitPosition, Double> measured(Bank bank) {
        Map<UnitPosition, Double> readings = new HashMap<>();
        bank.positions()
                .forEach(p -> readings.put(p, bank.unitTypes().getFirst().capacitanceFarads()));
        return readings;
    }

    private static Locate locate(Bank bank, Sighting sighting) {
        return Locator.locate(bank, measured(bank), SUPPLY, Assumptions.USUAL, sighting);
    }

    private static double probability(Locate locate, String place, String kind, int count) {
        return locate.candidates().stream()
                .filter(c -> c.parts().size() == 1
                        && c.parts().getFirst().place().equals(place)
                        && c.parts().getFirst().kind().equals(kind)
                        && c.parts().getFirst().count() == count)
                .mapToDouble(Candidate::probability)
                .sum();
    }

    /**
     * UNB-008 backwards: 0.656 A at a 50:5 relay of a double wye, 4 × 100 kvar 7.96 kV (first principles). Magnitude alone: any of six legs alike.
     * With the angle: leg A1, or what looks the same from the other side.
     */
    @Test
    void doubleWyeByMagnitudeThenByAngle() {
        Bank bank = fused(Connection.DOUBLE_WYE_UNGROUNDED, 4, Protection.Senses.NEUTRAL_CURRENT, 50, 5);
        Locate blind = locate(bank, Sighting.of("F neutral-current", 0.656063));
        double one = probability(blind, "F/A1", "unit-out", 1);
        for (String leg : bank.stages().getFirst().legs()) {
            assertEquals(one, probability(blind, "F/" + leg, "unit-out", 1), 1e-9);
        }
        assertTrue(6.0 * one > 0.6, blind.candidates().toString());
        // Leg A1 lost a quarter of its current, so the neutral carries it the other way: I_A leads V_A by 90°, the
        // missing part is at −90°.
        Locate seen = locate(
                bank,
                new Sighting(
                        "F neutral-current",
                        0.656063,
                        false,
                        OptionalDouble.of(-90.0),
                        0.03,
                        Optional.of(Complex.ZERO),
                        Map.of()));
        assertEquals("F/A1", seen.candidates().getFirst().parts().getFirst().place());
        assertEquals("unit-out", seen.candidates().getFirst().parts().getFirst().kind());
        assertTrue(probability(seen, "F/A1", "unit-out", 1) > 0.6, LocateText.of(seen));
        assertTrue(seen.candidates().getFirst().distance() < 0.1);
    }

    /** UNB-008 (first principles): one unit out is 0.656 A behind 50:5; behind 100:5 the relay shows half of it, which no failure gives. */
    @Test
    void aWrongRatioGivesItselfAway() {
        Bank bank = fused(Connection.DOUBLE_WYE_UNGROUNDED, 4, Protection.Senses.NEUTRAL_CURRENT, 50, 5);
        Locate half = locate(bank, knownWell("F neutral-current", 0.5 * 0.656063, -90.0));
        assertFalse(half.isExplained());
        assertEquals(
                "If the transformer fitted has double the ratio of the bank file, the reading is that of a unit out (fuse operated) in F/A1:"
                        + " check transformer and relay.",
                half.notes().getFirst());
        Locate right = locate(bank, knownWell("F neutral-current", 0.656063, -90.0));
        assertTrue(
                right.notes().stream().noneMatch(n -> n.startsWith("If ")),
                right.notes().toString());
    }

    /** An ungrounded wye: with its polarity turned the neutral points between the other two phases, where no single unit puts it. */
    @Test
    void aTurnedPolarityGivesItselfAway() {
        Bank bank = fused(Connection.WYE_UNGROUNDED, 4, Protection.Senses.NEUTRAL_VOLTAGE, 8400, 120);
        Complex shown = Unbalance.of(bank, measured(bank), SUPPLY, Assumptions.USUAL).failures().stream()
                .filter(r -> r.leg().equals("A") && r.kind().equals("unit-out") && r.count() == 1)
                .findFirst()
                .flatMap(FailureRow::effect)
                .flatMap(e -> e.sensors().getFirst().secondary())
                .orElseThrow();
        Locate turned = locate(
                bank,
                knownWell(
                        "F neutral-voltage", shown.magnitude(), shown.negated().degrees()));
        assertEquals(
                "If its polarity is turned round, the reading is that of a unit out (fuse operated) in F/A: check transformer and relay.",
                turned.notes().getFirst());
    }

    /** To 1 %, with nothing to be seen when the bank was healthy. */
    private static Sighting knownWell(String sensor, double magnitude, double degrees) {
        return new Sighting(
                sensor, magnitude, false, OptionalDouble.of(degrees), 0.01, Optional.of(Complex.ZERO), Map.of());
    }

    /** A delta on one pole has every terminal at that phase's voltage; a grounded wye doesn't. */
    @Test
    void onePoleClosedIsSaidWhereItHoldsVoltage() {
        Bank delta = Banks.plan(Connection.DELTA, 1, 1, 3)
                .sensing(Banks.sensor(Protection.Senses.PHASE_VOLTAGE, 100, 5))
                .bank();
        Bank grounded = Banks.plan(Connection.WYE_GROUNDED, 1, 1, 3)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 100, 5))
                .bank();
        assertTrue(locate(delta, Sighting.of("F phase-voltage AB", 1.0)).notes().stream()
                .anyMatch(n -> n.contains("every terminal at phase voltage with almost no current")));
        assertTrue(locate(grounded, Sighting.of("F neutral-current", 1.0)).notes().stream()
                .noneMatch(n -> n.contains("one pole still closed")));
    }

    /** Line currents settle what the sensor leaves open: UNB-006 (90.91, 106.42, 106.42 A) says phase A. */
    @Test
    void lineCurrentsSettleIt() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 4)
                .rated(200e3, 7200.0)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 8400, 120))
                .bank();
        double relay = 654.5 * 120.0 / 8400.0;
        Supply supply = new Supply.Balanced(12470.0);
        Locate blind = Locator.locate(
                bank, measured(bank), supply, Assumptions.USUAL, Sighting.of("F neutral-voltage", relay));
        assertTrue(blind.candidates().size() >= 3);
        assertTrue(blind.nextMeasurements().stream().anyMatch(m -> m.contains("lines A, B and C")));
        Locate seen = Locator.locate(
                bank,
                measured(bank),
                supply,
                Assumptions.USUAL,
                new Sighting(
                        "F neutral-voltage",
                        relay,
                        false,
                        OptionalDouble.empty(),
                        0.03,
                        Optional.empty(),
                        Map.of("A", 90.91, "B", 106.42, "C", 106.42)));
        Candidate.Part part = seen.candidates().getFirst().parts().getFirst();
        assertEquals("F/A", part.place());
        assertEquals("unit-out", part.kind());
        assertEquals(1, part.count());
        assertTrue(seen.candidates().getFirst().probability() > 0.9, LocateText.of(seen));
    }

    /** UNB-010: half of phase voltage at the neutral and no current in one line: that phase is open (first principles). */
    @Test
    void blownBankFuse() {
        Bank bank = fused(Connection.WYE_UNGROUNDED, 3, Protection.Senses.NEUTRAL_VOLTAGE, 8400, 120);
        double normal = 3 * 100e3 / 7960.0 * (13800.0 / Math.sqrt(3.0) / 7960.0);
        Locate locate = locate(
                bank,
                new Sighting(
                        "F neutral-voltage",
                        0.5 * 13800.0 / Math.sqrt(3.0),
                        true,
                        OptionalDouble.empty(),
                        0.03,
                        Optional.empty(),
                        Map.of("A", 0.0, "B", 0.866 * normal, "C", 0.866 * normal)));
        assertTrue(probability(locate, "F phase A", "phase-open", 1) > 0.5, LocateText.of(locate));
    }

    /** One pole closed alone: neutral and every terminal at phase voltage, no current. */
    @Test
    void stuckPole() {
        Bank bank = fused(Connection.WYE_UNGROUNDED, 3, Protection.Senses.NEUTRAL_VOLTAGE, 8400, 120);
        Locate locate = locate(
                bank,
                new Sighting(
                        "F neutral-voltage",
                        13800.0 / Math.sqrt(3.0),
                        true,
                        OptionalDouble.of(-120.0),
                        0.03,
                        Optional.empty(),
                        Map.of("A", 0.0, "B", 0.0, "C", 0.0)));
        Candidate.Part part = locate.candidates().getFirst().parts().getFirst();
        assertEquals("phase-open", part.kind());
        assertEquals(2, part.count());
        assertEquals("F phases C and A", part.place());
        assertTrue(locate.notes().stream().anyMatch(n -> n.contains("at phase voltage with almost no current")));
    }

    /** A reading that a bank in good order gives is first of all that. */
    @Test
    void nothingFailed() {
        Bank bank = fused(Connection.DOUBLE_WYE_UNGROUNDED, 8, Protection.Senses.NEUTRAL_CURRENT, 50, 5);
        Locate locate = locate(bank, Sighting.of("F neutral-current", 0.0001));
        assertEquals(List.of(), locate.candidates().getFirst().parts());
    }

    /** What no failure gives is undecided, not the least unlikely failure. */
    @Test
    void undecided() {
        Bank bank = fused(Connection.WYE_UNGROUNDED, 4, Protection.Senses.NEUTRAL_VOLTAGE, 8400, 120);
        Locate locate = locate(
                bank,
                new Sighting(
                        "F neutral-voltage", 30000.0, true, OptionalDouble.empty(), 0.01, Optional.empty(), Map.of()));
        assertFalse(locate.isExplained());
        assertEquals(List.of(), locate.candidates());
        assertTrue(LocateText.of(locate).contains("UNDECIDED"));
    }

    @ParameterizedTest
    @CsvSource({"F neutral-voltage, SENSOR_UNKNOWN", "G neutral-current, SENSOR_UNKNOWN"})
    void namesTheSensors(String sensor, Message message) {
        Bank bank = fused(Connection.DOUBLE_WYE_UNGROUNDED, 4, Protection.Senses.NEUTRAL_CURRENT, 50, 5);
        VarwrightException e = assertThrows(VarwrightException.class, () -> locate(bank, Sighting.of(sensor, 1.0)));
        assertEquals(message, e.problems().getFirst().message());
        assertTrue(e.problems().getFirst().text().contains("F neutral-current"));
    }

    @Test
    void readsWhatIsTyped() {
        Bank bank = fused(Connection.DOUBLE_WYE_UNGROUNDED, 4, Protection.Senses.NEUTRAL_CURRENT, 50, 5);
        SightingReader reader = new SightingReader(bank);
        assertEquals(List.of("F neutral-current"), reader.names());
        Sighting sighting = reader.read(
                "550 mA",
                false,
                OptionalDouble.of(30.0),
                0.03,
                Optional.of("20 mA@-90"),
                List.of("A=326 A", "b = 320 A"));
        assertEquals("F neutral-current", sighting.sensor());
        assertEquals(0.55, sighting.magnitude(), 1e-12);
        assertEquals(-0.02, sighting.healthy().orElseThrow().im(), 1e-12);
        assertEquals(Map.of("A", 326.0, "B", 320.0), sighting.lineAmperes());
        assertEquals(
                sighting.sensor(),
                reader.read("f  Neutral-current=1 A", false, OptionalDouble.empty(), 0.03, Optional.empty(), List.of())
                        .sensor());
    }

    @ParameterizedTest
    @CsvSource({
        "0.55, , , NO_UNIT",
        "0.55 V, , , WRONG_UNIT",
        "G neutral-current=1 A, , , SENSOR_UNKNOWN",
        "0.55 A, 20 mA, , PHASOR_SYNTAX",
        "0.55 A, 20 mA@up, , PHASOR_SYNTAX",
        "0.55 A, 20 mA@NaN, , PHASOR_SYNTAX",
        "0.55 A, , 326 A, MEASURED_SYNTAX",
        "0.55 A, , D=326 A, SIGHTING_LINE",
        "-0.55 A, , , SIGHTING_VALUE"
    })
    void saysWhatIsWrongWithWhatIsTyped(
            String reading, @Nullable String healthy, @Nullable String line, Message message) {
        Bank bank = fused(Connection.DOUBLE_WYE_UNGROUNDED, 4, Protection.Senses.NEUTRAL_CURRENT, 50, 5);
        SightingReader reader = new SightingReader(bank);
        VarwrightException e = assertThrows(
                VarwrightException.class,
                () -> reader.read(
                        reading,
                        false,
                        OptionalDouble.empty(),
                        0.03,
                        Optional.ofNullable(healthy),
                        line == null ? List.of() : List.of(line)));
        assertEquals(message, e.problems().getFirst().message());
    }

    /** Three bridge sensors: the reading must say which. */
    @Test
    void severalSensorsMustBeNamed() {
        Bank bank = fused(Connection.BRIDGE_UNGROUNDED, 4, Protection.Senses.BRIDGE_CURRENT, 50, 5);
        SightingReader reader = new SightingReader(bank);
        VarwrightException e = assertThrows(
                VarwrightException.class,
                () -> reader.read("1 A", false, OptionalDouble.empty(), 0.03, Optional.empty(), List.of()));
        assertEquals(Message.SENSOR_NOT_NAMED, e.problems().getFirst().message());
    }

    @Test
    void refusesImpossibleReadings() {
        assertThrows(VarwrightException.class, () -> Sighting.of("F neutral-current", -1.0));
        assertThrows(VarwrightException.class, () -> Sighting.of("F neutral-current", Double.NaN));
        assertThrows(
                VarwrightException.class,
                () -> new Sighting("x", 1.0, true, OptionalDouble.empty(), 0.0, Optional.empty(), Map.of()));
        assertThrows(
                VarwrightException.class,
                () -> new Sighting("x", 1.0, true, OptionalDouble.empty(), 0.1, Optional.empty(), Map.of("D", 1.0)));
    }

    @Test
    void aSensorWithoutRatioReadsPrimaryOnly() {
        Bank bank = Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 1, 4)
                .sensing(new Protection(
                        Banks.STAGE,
                        Protection.Senses.NEUTRAL_CURRENT,
                        Optional.<TransformerRatio>empty(),
                        OptionalDouble.empty(),
                        OptionalDouble.empty(),
                        true,
                        OptionalDouble.empty(),
                        Optional.empty()))
                .bank();
        VarwrightException e =
                assertThrows(VarwrightException.class, () -> locate(bank, Sighting.of("F neutral-current", 1.0)));
        assertEquals(Message.SENSOR_RATIO, e.problems().getFirst().message());
    }

    @Test
    void printsOnThePageAndAsJson() {
        Bank bank = fused(Connection.DOUBLE_WYE_UNGROUNDED, 4, Protection.Senses.NEUTRAL_CURRENT, 50, 5);
        Locate locate = locate(bank, Sighting.of("F neutral-current", 0.656063));
        LocateText.of(locate).lines().forEach(line -> assertTrue(line.length() <= 100, line));
        Json.Obj json = (Json.Obj) LocateJson.of(locate);
        Json.Obj first = (Json.Obj) ((Json.Arr) json.get("candidates")).items().getFirst();
        assertTrue(first.members().keySet().containsAll(List.of("failures", "probability", "sensor")));
        assertTrue(json.get("nextMeasurements") instanceof Json.Arr);
        assertEquals(json.print(), Json.parse(json.print()).print());
    }
}
