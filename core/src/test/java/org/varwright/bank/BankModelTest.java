package org.varwright.bank;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** The rules of the model that others lean on: what is low voltage, how a device stands in service, what floats, what a unit and a place are. */
class BankModelTest {
    private static final Tolerance EXACT = new Tolerance(0.0, 0.0);

    private static UnitType unit(Optional<InternalConnection> threePhase) {
        return BankSketch.type("u", 100e3, 7_200.0, 60.0, EXACT, 0, 0, false, Optional.empty(), threePhase);
    }

    private static EnergySource source(OptionalDouble volts) {
        return new EnergySource("s", "at", volts, Optional.empty());
    }

    /** Low voltage is below 1 kV (1910.269 and IEC 61936 draw it at 1 kV); a source whose voltage nobody gave has the system's, so it is not. */
    @Test
    void aSourceIsLowVoltageOnlyWhereTheFileSaysSo() {
        assertTrue(source(OptionalDouble.of(999.9)).isLowVoltage());
        assertFalse(source(OptionalDouble.of(1_000.0)).isLowVoltage());
        assertFalse(source(OptionalDouble.empty()).isLowVoltage());
    }

    @Test
    void inServiceEverythingIsClosedButGroundingSwitchesAndSelectorsStandLast() {
        Map<Device.Kind, String> stands = Map.of(
                Device.Kind.BREAKER, "closed",
                Device.Kind.DISCONNECTOR, "closed",
                Device.Kind.LOAD_BREAK_SWITCH, "closed",
                Device.Kind.STAGE_SWITCH, "closed",
                Device.Kind.GROUNDING_SWITCH, "open",
                Device.Kind.SELECTOR, "auto");
        for (Device.Kind kind : Device.Kind.values()) {
            List<String> positions = kind == Device.Kind.SELECTOR
                    ? List.of("off", "manual", "auto")
                    : Device.positionsOf(kind, kind == Device.Kind.BREAKER);
            Device device = new Device(
                    "d",
                    kind,
                    positions,
                    Optional.empty(),
                    false,
                    false,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty());
            assertEquals(stands.get(kind), device.inServicePosition(), kind.code());
        }
        assertEquals(List.of("closed", "open", "withdrawn"), Device.positionsOf(Device.Kind.BREAKER, true));
        assertEquals(List.of("closed", "open"), Device.positionsOf(Device.Kind.BREAKER, false));
        assertEquals(List.of("closed", "open"), Device.positionsOf(Device.Kind.GROUNDING_SWITCH, true));
    }

    /** Grounded, floating, or no neutral at all: never two of them. Legs as they are written in the file. */
    @Test
    void everyConnectionHasItsNeutralAndItsLegs() {
        Set<Connection> grounded =
                Set.of(Connection.WYE_GROUNDED, Connection.DOUBLE_WYE_GROUNDED, Connection.BRIDGE_GROUNDED);
        Set<Connection> floating =
                Set.of(Connection.WYE_UNGROUNDED, Connection.DOUBLE_WYE_UNGROUNDED, Connection.BRIDGE_UNGROUNDED);
        for (Connection connection : Connection.values()) {
            assertEquals(grounded.contains(connection), connection.isGrounded(), connection.code());
            assertEquals(floating.contains(connection), connection.hasFloatingNeutral(), connection.code());
            assertEquals(connection.code().startsWith("double"), connection.isDoubleWye(), connection.code());
            assertEquals(connection.code().startsWith("bridge"), connection.isBridge(), connection.code());
            int legs = connection.isBridge() ? 12 : connection.isDoubleWye() ? 6 : 3;
            assertEquals(legs, Set.copyOf(connection.legs()).size(), connection.code());
        }
        assertEquals("C-lr", Connection.BRIDGE_GROUNDED.legs().getLast());
        assertEquals(List.of("AB", "BC", "CA"), Connection.DELTA.legs());
        assertEquals("A2", Connection.DOUBLE_WYE_UNGROUNDED.legs().get(3));
    }

    /** {@code C = Q/(2πfV²)}: 100 kvar at 7.2 kV, 60 Hz: 100e3/(376.991·51.84e6) = 5.1169 µF; three-phase delta inside a third of that a leg. */
    @Test
    void aUnitsCapacitanceAndTheVoltageOfItsLegs() {
        assertEquals(5.1169e-6, unit(Optional.empty()).capacitanceFarads(), 1e-10);
        assertEquals(
                5.1169e-6, unit(Optional.of(InternalConnection.WYE_UNGROUNDED)).capacitanceFarads(), 1e-10);
        assertEquals(1.70563e-6, unit(Optional.of(InternalConnection.DELTA)).capacitanceFarads(), 1e-11);
        assertEquals(7_200.0, unit(Optional.empty()).legVolts());
        assertEquals(7_200.0, unit(Optional.of(InternalConnection.DELTA)).legVolts());
        assertEquals(
                4_156.9, unit(Optional.of(InternalConnection.WYE_UNGROUNDED)).legVolts(), 0.05);
    }

    @Test
    void theSupplysPhaseVoltageAngularFrequencyAndTheRatiosFactor() {
        SupplySystem system = new BankSketch().build().system();
        assertEquals(7_967.4, system.phaseVolts(), 0.05, "13.8 kV/√3");
        assertEquals(376.99, system.angularFrequency(), 0.005, "2π·60");
        assertEquals(0.016667, new TransformerRatio(60.0, 1.0).factor(), 1e-6);
        assertEquals(24, new LegLayout(2, 3, 4).count());
    }

    /** The second wye has its own layout: {@code A1 B1 C1} of 1·1·2, {@code A2 B2 C2} of 1·2·1. */
    private static Bank doubleWye() {
        Bank bank = new BankSketch()
                .stage("Rack", Connection.DOUBLE_WYE_UNGROUNDED, new LegLayout(1, 1, 2), unit(Optional.empty()))
                .build();
        Stage s = bank.stages().getFirst();
        Stage uneven = new Stage(
                s.name(),
                s.connection(),
                s.switchName(),
                s.layout(),
                Optional.of(new LegLayout(1, 2, 1)),
                s.unit(),
                s.fuse(),
                s.reactor(),
                s.label(),
                s.note());
        return new Bank(
                bank.name(),
                bank.site(),
                bank.standard(),
                bank.system(),
                bank.unitTypes(),
                bank.fuseTypes(),
                List.of(uneven),
                bank.protection(),
                bank.control(),
                bank.isolation(),
                bank.units(),
                bank.spares(),
                bank.label(),
                bank.note());
    }

    @Test
    void everyPlaceHasOneNameWithoutThePartsThatCanOnlyBeOne() {
        Bank bank = doubleWye();
        assertEquals(
                List.of(
                        "Rack/A1/u1",
                        "Rack/A1/u2",
                        "Rack/B1/u1",
                        "Rack/B1/u2",
                        "Rack/C1/u1",
                        "Rack/C1/u2",
                        "Rack/A2/g1",
                        "Rack/A2/g2",
                        "Rack/B2/g1",
                        "Rack/B2/g2",
                        "Rack/C2/g1",
                        "Rack/C2/g2"),
                bank.positions().stream().map(UnitPosition::name).toList());
        assertEquals(1_200e3, bank.stages().getFirst().ratedVars(), 1e-6);
        UnitPosition place = UnitPosition.of("s", "A", new LegLayout(2, 2, 2), 2, 1, 2);
        assertEquals("s/A/s2g1u2", place.name());
        assertEquals(
                "s", UnitPosition.of("s", "", new LegLayout(1, 1, 1), 1, 1, 1).name());
        assertEquals(
                List.of("can/u1", "can/u2"),
                new BankSketch()
                                .stage(
                                        "can",
                                        Connection.WYE_UNGROUNDED,
                                        new LegLayout(1, 1, 2),
                                        unit(Optional.of(InternalConnection.DELTA)))
                                .build()
                                .positions()
                                .stream()
                                .map(UnitPosition::name)
                                .toList(),
                "one place a can");
    }

    @Test
    void aPlaceIsFoundAsItIsWrittenByHandAndAWrongOneIsNamedWithThoseThereAre() {
        Bank bank = doubleWye();
        assertEquals("Rack/A2/g1", bank.position(" rack / a2/G1 ").orElseThrow().name());
        assertEquals(Optional.empty(), bank.position("Rack/A2/g3"));
        VarwrightException wrong =
                assertThrows(VarwrightException.class, () -> bank.requirePosition("Rack/A9", Place.NOWHERE));
        assertEquals(Message.POSITION_UNKNOWN, wrong.problems().getFirst().message());
        assertTrue(wrong.problems().getFirst().text().contains("\"Rack/A1/u1\" to \"Rack/C2/g2\""));
        assertEquals(
                "Rack/B1/u2", bank.requirePosition("rack/b1/u2", Place.NOWHERE).name());
    }

    /** Two stages whose names differ in capitals only: the unit meant is the one that is written. */
    @Test
    void thePlaceWrittenExactlyGoesBeforeOneThatIsForgiven() {
        Bank bank = new BankSketch()
                .stage("STAGE 1", Connection.WYE_GROUNDED, new LegLayout(1, 1, 1), unit(Optional.empty()))
                .stage("stage 1", Connection.WYE_GROUNDED, new LegLayout(1, 1, 1), unit(Optional.empty()))
                .build();
        assertEquals("stage 1/A", bank.position("stage 1/A").orElseThrow().name());
        assertEquals("STAGE 1/A", bank.position("STAGE 1/A").orElseThrow().name());
    }

    @Test
    void whatIsKnownOfAUnitIsThatOfItsPlace() {
        Bank bank = new BankSketch()
                .stage("s", Connection.WYE_GROUNDED, new LegLayout(1, 1, 1), unit(Optional.empty()))
                .known("s/B", "N-7", 5e-6)
                .build();
        assertEquals(
                Optional.of("N-7"),
                bank.unitAt(bank.position("s/B").orElseThrow()).flatMap(KnownUnit::serial));
        assertEquals(Optional.empty(), bank.unitAt(bank.position("s/A").orElseThrow()));
        assertEquals("s", bank.stage("s").orElseThrow().name());
        assertEquals(Optional.empty(), bank.stage("t"));
        assertEquals(Optional.empty(), bank.switchOf(bank.stages().getFirst()));
    }

    /** Ground is no conductor among others; what only a door or only a source names is one. */
    @Test
    void conductorsAndKeysAreAllThatAnythingNames() {
        Device device = new Device(
                "57",
                Device.Kind.GROUNDING_SWITCH,
                Device.positionsOf(Device.Kind.GROUNDING_SWITCH, false),
                Optional.of(new Device.Between("bus", Isolation.GROUND)),
                false,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        Isolation isolation = new Isolation(
                List.of(new EnergySource("feeder", "line", OptionalDouble.empty(), Optional.empty())),
                List.of(device),
                List.of(new Compartment("box", List.of("heater"), Optional.empty(), Optional.empty())),
                List.of(new Lock(new Lock.On.OfDevice("57"), List.of("K1"), "open", Optional.empty())),
                List.of(new KeyCopies("K4", 2, Optional.empty())),
                List.of(new KeyExchange("x", List.of("K2"), List.of("K3"), Optional.empty(), Optional.empty())),
                List.of(),
                List.of(),
                Map.of());
        assertEquals(List.of("line", "bus", "heater"), List.copyOf(isolation.conductors()));
        assertEquals(List.of("K1", "K2", "K3", "K4"), List.copyOf(isolation.keyNames()));
        assertEquals(Optional.of(device), isolation.device("57"));
        assertEquals(Optional.empty(), isolation.device("58"));
        assertEquals(
                List.of("heater"), isolation.compartment("box").orElseThrow().exposes());
        assertEquals(Optional.empty(), isolation.compartment("bay"));
    }
}
