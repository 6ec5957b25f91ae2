package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.varwright.bank.Bank;
import org.varwright.bank.Control;
import org.varwright.bank.Device;
import org.varwright.bank.DischargePath;
import org.varwright.bank.FuseType;
import org.varwright.bank.Harmonic;
import org.varwright.bank.Load;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.SwitchType;
import org.varwright.bank.TransformerRatio;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/** Switch types, harmonics, load, thresholds, line fuses, wiring and discharge paths: what is read, and what is said of faults in them. */
class OptionalDataTest {
    private static final String TYPES = """
              - {name: F400, kind: current-limiting, rating: 400 A, voltage: 15.5 kV, interrupting: 40 kA,
                 melting-i2t: 250000 A²s, clearing-i2t: 900000 A²s}
            switch-types:
              - {name: V15, voltage: 15.5 kV, current: 200 A, inrush-peak: 20 kA, inrush-frequency: 4.2 kHz,
                 outrush-product: 20 kA·kHz, capacitive-current: 160 A}
            """;
    private static final String STAGE = """
            units: 3, unit: U300, fuse: F65, line-fuse: F400, bus-length: 1.5 m, stray-inductance: 3 uH,
                 discharge-path: {kind: transformer, between: lines, resistance: 2.1 kΩ, inductance: 900 H},
                 reactor: {inductance: 45 uH, position: line, resistance: 2 mΩ, current: 200 A, peak-current: 8 kA}}
            """;

    /** The good example with everything that a file may leave out. */
    static final String RICH = rich();

    private static String rich() {
        String text = BadFileTest.GOOD;
        for (List<String> change : List.of(
                List.of(
                        "  grounding: solid",
                        "  harmonics: [{order: 7, current: 14 A}, {order: 5, voltage: 3 %, current: 9 A}]\n  grounding: solid"),
                List.of("\nstages:\n", "\n" + TYPES + "stages:\n"),
                List.of(
                        "units: 3, unit: U300, fuse: F65, reactor: {inductance: 45 uH, position: line}}",
                        STAGE.strip()),
                List.of(
                        "  senses: power-factor",
                        "  ratio: \"7200:120\"\n  current-ratio: \"400:5\"\n  on: 0.92\n  off: 0.99\n  senses: power-factor"),
                List.of(
                        "\nisolation:\n",
                        "\nload: {power: 6 MW, reactive: 3 Mvar, light-power: 1.5 MW, light-reactive: 0.4 Mvar, wanted-power-factor: 0.97}\nisolation:\n"),
                List.of(
                        "kind: stage-switch, between: [bus, stage 4]",
                        "kind: stage-switch, type: V15, between: [bus, stage 4]"))) {
            assertTrue(text.contains(change.get(0)), change.get(0));
            text = text.replace(change.get(0), change.get(1));
        }
        return text;
    }

    @Test
    void everythingIsRead() {
        BankReading reading = BadFileTest.read(RICH);
        assertEquals(List.of(), reading.errors().stream().map(Problem::print).toList());
        assertEquals(List.of(), reading.warnings().stream().map(Problem::print).toList());
        Bank bank = reading.requireBank();
        assertEquals(
                List.of(
                        new Harmonic(5, OptionalDouble.of(0.03), OptionalDouble.of(9.0)),
                        new Harmonic(7, OptionalDouble.empty(), OptionalDouble.of(14.0))),
                bank.system().harmonics());
        SwitchType type = bank.switchTypes().getFirst();
        assertEquals(OptionalDouble.of(20e3), type.inrushPeakAmperes());
        assertEquals(OptionalDouble.of(4200.0), type.inrushHertz());
        assertEquals(OptionalDouble.of(2e7), type.outrushAmpereHertz());
        assertEquals(OptionalDouble.of(160.0), type.capacitiveAmperes());
        Stage stage = bank.stage("stage 4").orElseThrow();
        Device device = bank.switchOf(stage).orElseThrow();
        assertEquals("24-4", device.name());
        assertEquals(type, device.type().orElseThrow());
        FuseType fuse = stage.lineFuse().orElseThrow();
        assertEquals("F400", fuse.name());
        assertEquals(OptionalDouble.of(40e3), fuse.interruptingAmperes());
        assertEquals(OptionalDouble.of(250e3), fuse.meltingAmpereSquaredSeconds());
        assertEquals(OptionalDouble.of(900e3), fuse.clearingAmpereSquaredSeconds());
        assertEquals(OptionalDouble.of(1.5), stage.busMetres());
        assertEquals(3e-6, stage.strayHenries().orElseThrow(), 1e-18);
        assertEquals(
                new DischargePath(
                        DischargePath.Kind.TRANSFORMER, DischargePath.Between.LINES, 2100.0, OptionalDouble.of(900.0)),
                stage.dischargePath().orElseThrow());
        Reactor reactor = stage.reactor().orElseThrow();
        assertEquals(OptionalDouble.of(0.002), reactor.resistanceOhms());
        assertEquals(OptionalDouble.of(200.0), reactor.ratedAmperes());
        assertEquals(OptionalDouble.of(8000.0), reactor.peakAmperes());
        Control control = bank.control().orElseThrow();
        assertEquals(new TransformerRatio(7200.0, 120.0), control.ratio().orElseThrow());
        assertEquals(new TransformerRatio(400.0, 5.0), control.currentRatio().orElseThrow());
        assertEquals(OptionalDouble.of(0.92), control.on());
        assertEquals(OptionalDouble.of(0.99), control.off());
        assertEquals(
                new Load(6e6, 3e6, OptionalDouble.of(1.5e6), OptionalDouble.of(0.4e6), OptionalDouble.of(0.97)),
                bank.load().orElseThrow());
        assertEquals(bank, BadFileTest.read(BankFile.write(bank)).requireBank());
    }

    /** Replaces {@code from} by {@code to}; then {@code code} is said at {@code path} and {@code words} stand in it. */
    private record Case(String from, String to, Message code, String path, String words) {}

    private static final List<Case> ERRORS = List.of(
            new Case("type: V15", "type: V16", Message.UNKNOWN_NAME, "isolation.devices[6].type", "maybe \"V15\""),
            new Case(
                    "kind: selector,",
                    "kind: selector, type: V15,",
                    Message.KEY_DOES_NOT_FIT,
                    "isolation.devices[7].type",
                    "carries no current"),
            new Case(
                    "inrush-peak: 20 kA, ",
                    "",
                    Message.KEYS_TOGETHER,
                    "switch-types[0].inrush-frequency",
                    "\"inrush-peak\""),
            new Case(
                    ", inrush-frequency: 4.2 kHz",
                    "",
                    Message.KEYS_TOGETHER,
                    "switch-types[0].inrush-peak",
                    "\"inrush-frequency\""),
            new Case("20 kA·kHz", "20 kA", Message.WRONG_UNIT, "switch-types[0].outrush-product", "kA·kHz"),
            new Case("250000 A²s", "250 kA²s", Message.WRONG_UNIT, "fuse-types[1].melting-i2t", "as in \"4200 A²s\""),
            new Case(
                    "melting-i2t: 250000",
                    "melting-i2t: 950000",
                    Message.MELTING_ABOVE_CLEARING,
                    "fuse-types[1].melting-i2t",
                    "900000 A²s"),
            new Case(
                    "name: V15, voltage: 15.5 kV",
                    "name: V15, voltage: 12 kV",
                    Message.SWITCH_VOLTAGE,
                    "isolation.devices[6].type",
                    "the system has 13.8 kV"),
            new Case(
                    "rating: 400 A, voltage: 15.5 kV",
                    "rating: 400 A, voltage: 8.3 kV",
                    Message.LINE_FUSE_VOLTAGE,
                    "stages[3].line-fuse",
                    "against 13.8 kV"),
            new Case(
                    "rating: 400 A",
                    "rating: 100 A",
                    Message.LINE_FUSE_BELOW_STAGE,
                    "stages[3].line-fuse",
                    "draws 113.2 A"),
            new Case(
                    "peak-current: 8 kA",
                    "peak-current: 280 A",
                    Message.REACTOR_PEAK,
                    "stages[3].reactor.peak-current",
                    "282.8 A"),
            new Case("order: 7", "order: 5", Message.HARMONIC_TWICE, "system.harmonics[1].order", "first in line 11"),
            new Case("order: 7", "order: 1", Message.NOT_A_COUNT, "system.harmonics[0].order", "2 to 100"),
            new Case(
                    "order: 7, current: 14 A",
                    "order: 7",
                    Message.ONE_OF_KEYS,
                    "system.harmonics[0].order",
                    "voltage: 3 %"),
            new Case(
                    "wanted-power-factor: 0.97",
                    "wanted-power-factor: 97",
                    Message.OUT_OF_RANGE,
                    "load.wanted-power-factor",
                    "0.5 to 1"),
            new Case(
                    "light-power: 1.5 MW",
                    "light-power: 15 MW",
                    Message.LIGHT_ABOVE_FULL,
                    "load.light-power",
                    "above the 6 MW"),
            new Case(
                    "light-reactive: 0.4 Mvar",
                    "light-reactive: 4 Mvar",
                    Message.LIGHT_ABOVE_FULL,
                    "load.light-reactive",
                    "above the 3 Mvar"),
            new Case(", light-reactive: 0.4 Mvar", "", Message.KEYS_TOGETHER, "load.light-power", "\"light-reactive\""),
            new Case("  on: 0.92", "  on: 0.99", Message.THRESHOLDS_EQUAL, "control.off", "0.99"),
            new Case("  on: 0.92", "  on: 0.995", Message.THRESHOLDS_ORDER, "control.on", "below \"off\""),
            new Case(
                    "  on: 0.92\n  off: 0.99\n  senses: power-factor",
                    "  on: 100 kvar\n  off: 600 kvar\n  senses: kvar",
                    Message.THRESHOLDS_ORDER,
                    "control.on",
                    "above \"off\""),
            new Case(
                    "  ratio: \"7200:120\"\n  current-ratio: \"400:5\"\n  on: 0.92\n  off: 0.99\n  senses: power-factor",
                    "  on: 120.5 V\n  off: 125 V\n  senses: voltage",
                    Message.THRESHOLD_WITHOUT_RATIO,
                    "control.on",
                    "\"ratio\" such as \"7200:120\""),
            new Case(
                    "  current-ratio: \"400:5\"\n  on: 0.92\n  off: 0.99\n  senses: power-factor",
                    "  on: 3 A\n  off: 2 A\n  senses: current",
                    Message.THRESHOLD_WITHOUT_RATIO,
                    "control.off",
                    "\"current-ratio\""),
            new Case("  senses: power-factor", "  senses: time", Message.KEY_DOES_NOT_FIT, "control.on", "by time"),
            new Case("  senses: power-factor", "  #", Message.KEYS_TOGETHER, "control.on", "\"senses\""));

    private static final List<Case> WARNINGS = List.of(
            new Case(
                    "name: V15, voltage: 15.5 kV",
                    "name: V15, voltage: 14 kV",
                    Message.SWITCH_BELOW_MAXIMUM,
                    "isolation.devices[6].type",
                    "highest voltage 14.5 kV"),
            new Case(
                    "rating: 400 A",
                    "rating: 140 A",
                    Message.LINE_FUSE_NEAR_STAGE,
                    "stages[3].line-fuse",
                    "1.24 times"),
            new Case(
                    "stray-inductance: 3 uH",
                    "stray-inductance: 3 mH",
                    Message.STRAY_UNUSUAL,
                    "stages[3].stray-inductance",
                    "3 mH"),
            new Case(
                    "stray-inductance: 3 uH",
                    "stray-inductance: 3 nH",
                    Message.STRAY_UNUSUAL,
                    "stages[3].stray-inductance",
                    "100 nH"),
            new Case("bus-length: 1.5 m", "bus-length: 1500 m", Message.BUS_UNUSUAL, "stages[3].bus-length", "1500 m"),
            new Case("bus-length: 1.5 m", "bus-length: 1.5 mm", Message.BUS_UNUSUAL, "stages[3].bus-length", "0.2 m"),
            new Case(
                    ", inductance: 900 H",
                    "",
                    Message.NOT_GIVEN,
                    "stages[3].discharge-path",
                    "swings through the transformer"),
            new Case(", type: V15", "", Message.UNUSED_SWITCH_TYPE, "switch-types[0].name", "\"type: V15\""),
            new Case(
                    "name: V15, voltage: 15.5 kV,",
                    "name: V15,",
                    Message.NOT_GIVEN,
                    "switch-types[0].voltage",
                    "system's voltage"),
            new Case("current: 200 A, inrush", "inrush", Message.NOT_GIVEN, "switch-types[0].current", "carries"),
            new Case(
                    "inrush-peak: 20 kA, inrush-frequency: 4.2 kHz,",
                    "",
                    Message.NOT_GIVEN,
                    "switch-types[0].inrush-peak",
                    "inrush"),
            new Case(
                    "outrush-product: 20 kA·kHz, ",
                    "",
                    Message.NOT_GIVEN,
                    "switch-types[0].outrush-product",
                    "outrush"),
            new Case(", interrupting: 40 kA", "", Message.NOT_GIVEN, "fuse-types[1].interrupting", "fault current"));

    private static Executable said(Case c, boolean error) {
        return () -> {
            assertTrue(RICH.contains(c.from()), c.from());
            BankReading reading = BadFileTest.read(RICH.replace(c.from(), c.to()));
            List<Problem> problems = error ? reading.errors() : reading.warnings();
            assertTrue(
                    problems.stream()
                            .anyMatch(p -> p.message() == c.code()
                                    && p.place().path().equals(c.path())
                                    && p.text().contains(c.words())),
                    () -> c + " gives only\n"
                            + problems.stream().map(Problem::print).collect(Collectors.joining("\n")));
            assertEquals(error, reading.bank().isEmpty(), c.toString());
        };
    }

    @Test
    void everyFaultIsSaidWithItsPlace() {
        assertAll(ERRORS.stream().map(c -> said(c, true)));
    }

    @Test
    void whatIsUnusualIsSaidAndStopsNothing() {
        assertAll(WARNINGS.stream().map(c -> said(c, false)));
    }

    @Test
    void aDischargePathIsHeldAgainstTheConnection() {
        String lines = "between: lines";
        String neutral = "between: line-to-neutral";
        for (String connection :
                List.of("wye-ungrounded", "wye-grounded", "double-wye-grounded", "bridge-ungrounded")) {
            boolean grounded = connection.endsWith("-grounded");
            assertEquals(grounded, pathMessages(connection, lines).contains(Message.PATH_LEAVES_COMMON), connection);
            assertFalse(pathMessages(connection, neutral).contains(Message.PATH_NO_NEUTRAL), connection);
        }
        assertTrue(pathMessages("delta", neutral).contains(Message.PATH_NO_NEUTRAL));
        assertFalse(pathMessages("delta", lines).contains(Message.PATH_NO_NEUTRAL));
    }

    private static List<Message> pathMessages(String connection, String between) {
        String text = RICH.replace(
                        "name: stage 4, connection: wye-ungrounded", "name: stage 4, connection: " + connection)
                .replace("between: lines", between);
        BankReading reading = BadFileTest.read(text);
        return Stream.of(reading.errors(), reading.warnings())
                .flatMap(List::stream)
                .map(Problem::message)
                .toList();
    }

    @Test
    void aLineFuseOnAGroundedBankInterruptsAgainstGround() {
        String text = RICH.replace(
                        "name: stage 4, connection: wye-ungrounded", "name: stage 4, connection: wye-grounded")
                .replace("rating: 400 A, voltage: 15.5 kV", "rating: 400 A, voltage: 8.3 kV")
                .replaceAll("(?s)protection:.*?control:", "control:");
        assertEquals(List.of(), BadFileTest.read(text).errors());
    }

    /** Codes that have a case here. */
    static Set<Message> tested() {
        return Stream.concat(
                        Stream.of(ERRORS, WARNINGS).flatMap(List::stream).map(Case::code),
                        Stream.of(Message.PATH_NO_NEUTRAL, Message.PATH_LEAVES_COMMON))
                .collect(Collectors.toSet());
    }
}
