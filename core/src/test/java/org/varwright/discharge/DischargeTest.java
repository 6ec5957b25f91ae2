package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Standard;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;
import org.varwright.basis.Verdict;
import org.varwright.json.Json;

class DischargeTest {
    private static final LegLayout TWO = new LegLayout(1, 1, 2);
    private static final Tolerance PLUS_TEN = new Tolerance(0.0, 0.10);

    private static UnitType unit(Optional<DischargeDevice> discharge) {
        return BankSketch.type("U300", 300e3, 7960, 60, PLUS_TEN, 4, 12, false, discharge);
    }

    private static UnitType unit() {
        return unit(Optional.of(new DischargeDevice.Resistor(4.1e6)));
    }

    private static BankSketch ungrounded(UnitType type) {
        return new BankSketch()
                .stage("stage 2", Connection.WYE_UNGROUNDED, TWO, type, Optional.of(BankSketch.fuse("F")));
    }

    private static StageDischarge first(Bank bank) {
        return Discharge.of(bank, Optional.empty()).stages().getFirst();
    }

    /** Worked by hand: C = 300e3/(2π·60·7960²)·1.1 = 13.8153 µF, R = 4.51 MΩ, v0 = 1.366025·√2·1.1·13800/√3 = 16930.9 V. */
    @Test
    void theWaitIsTheLongestOfStandardFloorAndDecay() {
        StageDischarge stage = first(ungrounded(unit()).build());
        assertEquals(13.8153e-6, stage.capacitanceFarads(), 1e-9);
        assertEquals(16930.9, stage.opening().initialVolts(), 1.0);
        double decay =
                4.51e6 * stage.capacitanceFarads() * Math.log(stage.opening().initialVolts() / 50.0);
        assertEquals(decay, stage.chosenSeconds().orElseThrow(), 1e-6);
        assertEquals(Math.ceil(decay), stage.waitSeconds());
        assertTrue(stage.waitSeconds() > 300.0);
        assertTrue(stage.endVolts() <= 50.0);
        assertEquals(decay * 4.0 / 3.0, stage.shortedSectionSeconds().orElseThrow(), 1e-6);
    }

    @Test
    void aQuickResistorStillWaitsTheStandardsTime() {
        UnitType quick = unit(Optional.of(new DischargeDevice.Resistor(0.5e6)));
        assertEquals(300.0, first(ungrounded(quick).build()).waitSeconds());
        assertEquals(
                600.0, first(ungrounded(quick).standard(Standard.IEC).build()).waitSeconds());
    }

    /** Units rated 600 V or less in series on a higher voltage: 5 min all the same. */
    @Test
    void theFloorLooksAtTheSystemAsWell() {
        UnitType small = BankSketch.type(
                "small", 10e3, 480, 60, PLUS_TEN, 0, 0, false, Optional.of(new DischargeDevice.Resistor(1e5)));
        Bank high = new BankSketch()
                .system(2400, 60, SystemGrounding.SOLID)
                .stage("s", Connection.WYE_GROUNDED, new LegLayout(1, 3, 1), small)
                .build();
        Bank low = new BankSketch()
                .system(480, 60, SystemGrounding.SOLID)
                .stage("s", Connection.DELTA, new LegLayout(1, 1, 1), small)
                .build();
        assertEquals(300.0, first(high).waitSeconds());
        assertEquals(60.0, first(low).waitSeconds(), 30.0);
        assertTrue(first(low).waitSeconds() >= 60.0);
    }

    @Test
    void withoutAResistorNoTimeIsPromised() {
        Bank bank = ungrounded(unit(Optional.empty())).build();
        StageDischarge stage = first(bank);
        assertInstanceOf(Resistance.NotKnown.class, stage.resistance());
        assertTrue(stage.chosenSeconds().isEmpty());
        assertTrue(stage.recloseSeconds().isEmpty());
        assertEquals(stage.opening().initialVolts(), stage.endVolts());
        assertEquals(stage.unitPeakJoules(), stage.unitEndJoules());
        Wait wait = Discharge.waitOf(bank, "stage 2");
        assertFalse(wait.decayKnown());
        assertEquals(300.0, wait.seconds());
        assertTrue(wait.notes().getFirst().contains("not known: treat as charged; discharge by stick"));
        String text = DischargeText.of(Discharge.of(bank, Optional.empty()));
        assertTrue(text.contains("NOT KNOWN: TREAT AS CHARGED; DISCHARGE BY STICK"));
        Json.Obj json = (Json.Obj) DischargeJson.of(Discharge.of(bank, Optional.empty()));
        Json.Obj entry = (Json.Obj) ((Json.Arr) json.get("units")).items().getFirst();
        assertEquals(Json.none(), entry.get("secondsToSafe"));
        assertEquals(Json.none(), entry.get("resistanceOhms"));
    }

    @Test
    void theNeutralAndTheGroundingOfTheSystemDecideTheInitialVoltage() {
        double leg = 1.1 * 13800 / Math.sqrt(3.0);
        UnitType small = BankSketch.type("U", 300e3, 5000, 60, PLUS_TEN, 0, 0, false, Optional.empty());
        for (Connection connection : Connection.values()) {
            double volts = connection == Connection.DELTA ? 1.1 * 13800 : leg;
            int series = connection.isBridge() ? 2 : 1;
            double factor = connection.isGrounded() ? 1.0 : 1.3660254;
            Bank solid = new BankSketch()
                    .stage("s", connection, new LegLayout(1, 1, 1), small)
                    .build();
            double expected = Math.sqrt(2.0) * Math.max(5000.0, factor * volts / series);
            assertEquals(expected, first(solid).opening().initialVolts(), 1e-3, connection.code());
            Bank isolated = new BankSketch()
                    .system(13800, 60, SystemGrounding.ISOLATED)
                    .stage("s", connection, new LegLayout(1, 1, 1), small)
                    .build();
            double floating = connection.isGrounded() ? Math.sqrt(3.0) : 1.3660254;
            assertEquals(
                    Math.sqrt(2.0) * Math.max(5000.0, floating * volts / series),
                    first(isolated).opening().initialVolts(),
                    1e-3,
                    connection.code());
        }
    }

    @Test
    void groupsInSeriesShareAndHide() {
        UnitType small = BankSketch.type(
                "U", 100e3, 3000, 60, PLUS_TEN, 0, 0, false, Optional.of(new DischargeDevice.Rated(50.0, 300.0)));
        StageDischarge stage = first(new BankSketch()
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 3, 4), small)
                .build());
        double initial = Math.sqrt(2.0) * 1.3660254 * 1.1 * 13800 / Math.sqrt(3.0) / 3.0;
        assertEquals(initial, stage.opening().initialVolts(), 1e-3);
        assertEquals(initial * 2.0 / 3.0, stage.hiddenVolts().orElseThrow(), 1e-3);
        // phases at −1.366 and +1.0 of three groups each
        assertEquals(3.0 * stage.endVolts() * 2.3660254 / 1.3660254, stage.betweenConductorsVolts(), 1e-3);
    }

    /** A can of three legs in wye: legs get V/√3; the can holds three times a leg. */
    @Test
    void threePhaseUnitsAreReckonedByLeg() {
        UnitType can = BankSketch.type(
                "can",
                400e3,
                6600,
                50,
                new Tolerance(0.0, 0.0),
                0,
                0,
                false,
                Optional.of(new DischargeDevice.Rated(75.0, 600.0)),
                Optional.of(InternalConnection.WYE_UNGROUNDED));
        StageDischarge stage = first(new BankSketch()
                .standard(Standard.IEC)
                .system(6000, 50, SystemGrounding.ISOLATED)
                .stage("s", Connection.WYE_UNGROUNDED, TWO, can)
                .build());
        assertEquals(29.2296e-6, stage.capacitanceFarads(), 1e-9);
        assertEquals(
                Math.sqrt(2.0) * 1.3660254 * 6600 / Math.sqrt(3.0),
                stage.opening().initialVolts(),
                1e-2);
        assertEquals(
                3.0 * 0.5 * stage.capacitanceFarads() * Math.pow(stage.opening().initialVolts(), 2),
                stage.unitPeakJoules(),
                1e-6);
        assertEquals(
                600.0 * 1.1 / Math.log(Math.sqrt(2.0) * 6600 / 75.0),
                stage.timeConstantSeconds().orElseThrow(),
                1e-9);
    }

    @Test
    void measuredCapacitanceCountsOnceAllAreMeasured() {
        BankSketch sketch = ungrounded(unit());
        sketch.known("stage 2/A/u1", "1", 12.7e-6);
        assertEquals("upper tolerance of the nameplate", first(sketch.build()).capacitanceFrom());
        for (String at : List.of("A/u2", "B/u1", "B/u2", "C/u1")) {
            sketch.known("stage 2/" + at, "", 12.6e-6);
        }
        sketch.known("stage 2/C/u2", "", 16.8e-6);
        assertEquals(16.8e-6, first(sketch.build()).capacitanceFarads());
        assertEquals("largest measured", first(sketch.build()).capacitanceFrom());
    }

    @Test
    void reclosingDelayIsCheckedAgainstTrappedCharge() {
        Bank good = ungrounded(unit()).reclose(300.0).build();
        Bank bad = ungrounded(unit()).reclose(60.0).build();
        assertEquals(Verdict.PASS, verdict(good, "reclosing delay"));
        assertEquals(Verdict.FAIL, verdict(bad, "reclosing delay"));
        StageDischarge stage = first(bad);
        double tau = stage.timeConstantSeconds().orElseThrow();
        assertEquals(tau * Math.log(13.660254), stage.recloseSeconds().orElseThrow(), 1e-3);
        assertEquals(136.60254 * Math.exp(-60.0 / tau), stage.residualPercent().orElseThrow(), 1e-3);
        assertEquals(
                2.0 + stage.residualPercent().orElseThrow() / 100.0,
                stage.reclosePerPeak().orElseThrow(),
                1e-12);
    }

    @Test
    void aStickIsHeldAgainstTheEnergyOfALeg() {
        Bank bank = ungrounded(unit()).build();
        StageDischarge stage = first(bank);
        double leg = 2.0 * stage.unitPeakJoules();
        Stick weak = new Stick(1000.0, OptionalDouble.of(leg * 0.99));
        Stick strong = new Stick(1000.0, OptionalDouble.of(leg * 1.01));
        assertEquals(Verdict.FAIL, verdict(bank, "energy in the stick", Optional.of(weak)));
        assertEquals(Verdict.PASS, verdict(bank, "energy in the stick", Optional.of(strong)));
        Stick.Use use = strong.on(10e-6, 10e3, 50.0);
        assertEquals(10.0, use.peakAmperes(), 1e-9);
        assertEquals(0.01, use.timeConstantSeconds(), 1e-12);
        assertEquals(500.0, use.resistorJoules(), 1e-9);
        assertEquals(0.01 * Math.log(200.0), use.secondsToSafe(), 1e-9);
    }

    @Test
    void theSlowestStageRules() {
        UnitType slow = BankSketch.type(
                "slow", 300e3, 7960, 60, PLUS_TEN, 0, 0, false, Optional.of(new DischargeDevice.Rated(75.0, 600.0)));
        Discharge discharge = Discharge.of(
                ungrounded(unit())
                        .stage("stage 3", Connection.WYE_UNGROUNDED, TWO, slow)
                        .build(),
                Optional.empty());
        assertEquals(discharge.stages().get(1).waitSeconds(), discharge.longestWaitSeconds());
        assertTrue(discharge.stages().get(1).waitSeconds()
                > discharge.stages().get(0).waitSeconds());
        assertTrue(discharge.cautions().stream().anyMatch(c -> c.contains("slowest rules")));
        // a 75 V/10 min unit does not meet 50 V in 5 min
        assertTrue(discharge.checks().stream()
                .anyMatch(c -> c.subject().contains("stage 3: unit type slow by IEEE") && c.verdict() == Verdict.FAIL));
    }

    @Test
    void aNameplateThatSaysTheStandardMeetsIt() {
        Bank bank = ungrounded(unit(Optional.of(new DischargeDevice.Rated(50.0, 300.0))))
                .build();
        assertEquals(Verdict.PASS, verdict(bank, "by IEEE"));
        assertEquals(Verdict.PASS, verdict(bank, "by IEC"));
    }

    @Test
    void theTextKeepsToThePageAndNeverSaysSafeToTouch() {
        Discharge discharge = Discharge.of(
                ungrounded(unit()).reclose(300.0).build(), Optional.of(new Stick(1000.0, OptionalDouble.of(5000.0))));
        String text = DischargeText.of(discharge);
        text.lines().forEach(line -> assertTrue(line.length() <= 100, line));
        assertTrue(text.contains("inimum wait over: now prove dead"));
        assertFalse(text.toLowerCase(Locale.ROOT).matches("(?s).*\\b(is|are|now) safe\\b.*"));
        assertTrue(text.contains("after minutes"));
        assertTrue(text.contains("ungrounded wye"));
        String iec = DischargeText.of(
                Discharge.of(ungrounded(unit()).standard(Standard.IEC).build(), Optional.empty()));
        assertTrue(iec.contains("unearthed star"));
        assertTrue(iec.contains("earthing switch"));
    }

    @Test
    void theJsonHasTheFieldsThatOthersRelyOn() {
        Json.Obj json =
                (Json.Obj) DischargeJson.of(Discharge.of(ungrounded(unit()).build(), Optional.empty()));
        Json.Obj entry = (Json.Obj) ((Json.Arr) json.get("units")).items().getFirst();
        for (String field : List.of(
                "type",
                "capacitanceFarads",
                "resistanceOhms",
                "initialVolts",
                "secondsToSafe",
                "safeVolts",
                "waitSeconds",
                "energyJoules")) {
            assertTrue(entry.members().containsKey(field), field);
        }
        assertEquals(Json.parse(json.print()), json);
    }

    private static Verdict verdict(Bank bank, String subject) {
        return verdict(bank, subject, Optional.empty());
    }

    private static Verdict verdict(Bank bank, String subject, Optional<Stick> stick) {
        return Discharge.of(bank, stick).checks().stream()
                .filter(check -> check.subject().contains(subject))
                .findFirst()
                .orElseThrow()
                .verdict();
    }

    /** Found by the law over every command: 2.32e-18 and its neighbours ran into one another. */
    @Test
    void voltagesThatAreNoneStayInTheirColumns() {
        UnitType quick = unit(Optional.of(new DischargeDevice.Resistor(2e5)));
        String line = DischargeText.of(Discharge.of(ungrounded(quick).build(), Optional.empty()))
                .lines()
                .filter(l -> l.contains("volts on a unit"))
                .findFirst()
                .orElseThrow();
        assertTrue(line.endsWith("    <0.1    <0.1    <0.1"), line);
        assertEquals(10, line.replace("volts on a unit", "").strip().split(" +").length, line);
    }
}
