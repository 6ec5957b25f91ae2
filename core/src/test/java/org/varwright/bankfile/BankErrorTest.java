package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.varwright.bankfile.BadFileTest.GOOD;
import static org.varwright.bankfile.BadFileTest.changed;
import static org.varwright.bankfile.BadFileTest.read;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.function.Executable;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/** One change of the good example at a time, and what is said of it. */
class BankErrorTest {
    /** Replaces {@code from} by {@code to}; then {@code code} is said at {@code path} and {@code words} stand in it. */
    private record Case(String from, String to, Message code, String path, String words) {}

    private static final List<Case> ERRORS = new ArrayList<>();
    private static final List<Case> WARNINGS = new ArrayList<>();

    private static void error(String from, String to, Message code, String path, String words) {
        ERRORS.add(new Case(from, to, code, path, words));
    }

    private static void warning(String from, String to, Message code, String path, String words) {
        WARNINGS.add(new Case(from, to, code, path, words));
    }

    static {
        // shapes and words
        error(
                "rating: 300 kvar",
                "rating: 300",
                Message.NO_UNIT,
                "unit-types[0].rating",
                "write it with one, such as \"300 kvar\"");
        error("rating: 300 kvar", "rating: 300 kV", Message.WRONG_UNIT, "unit-types[0].rating", "unit \"kV\"");
        error("voltage: 13.8 kV", "voltage: 13,8 kV", Message.DECIMAL_COMMA, "system.voltage", "write \"13.8 kV\"");
        error("voltage: 13.8 kV", "voltage: NaN kV", Message.NOT_A_QUANTITY, "system.voltage", "NaN");
        error("voltage: 13.8 kV", "voltage: .inf", Message.NOT_A_QUANTITY, "system.voltage", ".inf");
        error("voltage: 13.8 kV", "voltage: -13.8 kV", Message.OUT_OF_RANGE, "system.voltage", "100 V");
        error("voltage: 13.8 kV", "voltage: 1e999 kV", Message.NOT_A_QUANTITY, "system.voltage", "1e999");
        error("x-over-r: 11", "x-over-r: many", Message.NOT_A_NUMBER, "system.x-over-r", "many");
        error("x-over-r: 11", "x-over-r: NaN", Message.NOT_A_NUMBER, "system.x-over-r", "NaN");
        error("x-over-r: 11", "x-over-r: 1,1", Message.DECIMAL_COMMA, "system.x-over-r", "1.1");
        error("bushings: 2", "bushings: 2.5", Message.NOT_A_COUNT, "unit-types[0].bushings", "allowed are 1 to 4");
        error("bushings: 2", "bushings: 0", Message.NOT_A_COUNT, "unit-types[0].bushings", "\"0\"");
        error("    rating: 300", "    ratting: 300", Message.UNKNOWN_KEY, "unit-types[0].ratting", "maybe \"rating\"");
        error("    rating: 300 kvar\n", "", Message.MISSING_KEY, "unit-types[0].rating", "rating: 300 kvar");
        error("site: Tamarack Flats pumping station", "site:", Message.NO_VALUE, "site", "leave the key out");
        error("standard: IEEE ", "standard: IEEEE ", Message.NOT_A_CHOICE, "standard", "maybe \"IEEE\"");
        error(
                "connection: wye-ungrounded\n",
                "connection: wye-ungroundet\n",
                Message.NOT_A_CHOICE,
                "stages[0].connection",
                "maybe \"wye-ungrounded\"");
        error(
                "withdrawable: true",
                "withdrawable: yes",
                Message.NOT_A_CHOICE,
                "isolation.devices[0].withdrawable",
                "true, false");
        error("system:\n", "system: off\nsystems:\n", Message.EXPECTED_MAPPING, "system", "\"off\"");
        error("protection:\n  - ", "protection: none\n#  - ", Message.EXPECTED_LIST, "protection", "none");
        error("name: Tamarack Flats bank 2", "name: [a, b]", Message.EXPECTED_TEXT, "name", "a list");
        error(
                "tolerance: [0 %, +10 %]",
                "tolerance: 10 %", Message.EXPECTED_PAIR, "unit-types[0].tolerance", "[0 %, +10 %]");
        error(
                "tolerance: [0 %, +10 %]",
                "tolerance: [10 %, 0 %]", Message.TOLERANCE_ORDER, "unit-types[0].tolerance", "lower limit first");
        error(
                "positions: [off, manual, auto]",
                "positions: [auto]",
                Message.EMPTY_LIST,
                "isolation.devices[7].positions",
                "2 entries");
        error("name: Tamarack Flats bank 2", "name: " + "x".repeat(121), Message.NAME_TOO_LONG, "name", "121");
        error("name: Tamarack Flats bank 2", "name: a/b", Message.NAME_CHARACTER, "name", "a slash");
        error("in: [TF-3]", "in: [TF-3, TF-3]", Message.REPEATED_ENTRY, "isolation.exchanges[0].in[1]", "TF-3");
        error("name: stage 2,", "name: stage 1,", Message.DUPLICATE_NAME, "stages[1].name", "first in line");
        error(
                "    discharge-resistance: 4.1 MΩ ",
                "    discharge: {to: 50 V, within: 5 min}\n    discharge-resistance: 4.1 MΩ ",
                Message.EITHER_KEY,
                "unit-types[0].discharge",
                "keep one");
        error("key: TF-4}", "holds: closed}", Message.ONE_OF_KEYS, "isolation.locks[6]", "key: K-1");
        error("    kind: expulsion", "    kin: expulsion", Message.UNKNOWN_KEY, "fuse-types[0].kin", "maybe \"kind\"");
        // 65 A of a T link carry 97 A already: written as the rating they would count one and a half times once more
        error(
                "    link: 65T  ",
                "    link: 65T\n    rating: 97 A ",
                Message.LINK_AGAINST_RATING,
                "fuse-types[0].rating",
                "97 A");
        error("    link: 65T  ", "    note: none", Message.ONE_OF_KEYS, "fuse-types[0].name", "rating");
        error("    elements: 12 ", "    note: x ", Message.KEYS_TOGETHER, "unit-types[0].sections", "elements");
        error("bushings: 2", "phases: 3", Message.KEYS_TOGETHER, "unit-types[0].phases", "internal");
        error("bushings: 2", "internal: delta", Message.KEY_DOES_NOT_FIT, "unit-types[0].internal", "phases: 3");
        error("ratio: \"8400:120\"", "ratio: \"8400/120\"", Message.NOT_A_RATIO, "protection[0].ratio", "8400:120");
        error("format: varwright/1", "format: varwright/2", Message.NOT_A_CHOICE, "format", "varwright/1");
        error(
                "unit: U300, capacitance",
                "unit: U30, capacitance",
                Message.UNKNOWN_NAME,
                "spares[0].unit",
                "maybe \"U300\"");
        error("groups: 1     ", "groups: 1000\n    strings: 1000", Message.TOO_MANY_UNITS, "stages", "20000");

        // units and fuses against system and connection
        error("    frequency: 60 Hz", "    frequency: 50 Hz", Message.FREQUENCY_MISMATCH, "stages[0].unit", "50 Hz");
        error("    voltage: 7.96 kV", "    voltage: 7.2 kV", Message.UNIT_OVERVOLTAGE, "stages[0].unit", "111 %");
        error(
                "connection: wye-ungrounded\n",
                "connection: delta\n",
                Message.UNIT_OVERVOLTAGE,
                "stages[0].unit",
                "173 %");
        error(
                "capacitance: 12.71 uF",
                "capacitance: 12.71 nF",
                Message.CAPACITANCE_IMPOSSIBLE,
                "positions[0].capacitance",
                "easily mistaken");
        error(
                "capacitance: 12.69 uF",
                "capacitance: 126.9 uF",
                Message.CAPACITANCE_IMPOSSIBLE,
                "spares[0].capacitance",
                "decimal point");
        error("link: 65T  ", "link: 20T", Message.FUSE_BELOW_UNIT, "stages[0].fuse", "30 A");
        error("voltage: 8.3 kV", "voltage: 5.5 kV", Message.FUSE_VOLTAGE, "stages[0].fuse", "5.5 kV");
        error(
                "bushings: 2",
                "phases: 3\n    internal: delta",
                Message.THREE_PHASE_CONNECTION,
                "stages[0].connection",
                "\"delta\"");
        error(
                "maximum-voltage: 14.5 kV",
                "maximum-voltage: 13 kV",
                Message.MAXIMUM_BELOW_NOMINAL,
                "system.maximum-voltage",
                "13.8 kV");
        error(
                "{inductance: 45 uH, position: line}   #",
                "{inductance: 450 mH, position: line}   #",
                Message.REACTOR_TOO_LARGE,
                "stages[0].reactor.inductance",
                "unit");
        error(
                "groups: 1     ",
                "second: {units: 2}\n    groups: 1 ",
                Message.SECOND_WITHOUT_DOUBLE_WYE,
                "stages[0].second",
                "wye-ungrounded");

        // sensors
        error(
                "senses: neutral-voltage",
                "senses: bridge-current",
                Message.WRONG_UNIT,
                "protection[0].alarm",
                "\"6 V\"");
        error(
                "senses: neutral-voltage, ratio: \"8400:120\", alarm: 6 V, trip: 15 V",
                "senses: bridge-current, ratio: \"8400:120\", alarm: 6 A, trip: 15 A",
                Message.SENSOR_DOES_NOT_FIT,
                "protection[0].senses",
                "allowed are neutral-voltage");
        error(
                "senses: neutral-voltage",
                "senses: phase-voltage",
                Message.SENSOR_DOES_NOT_FIT,
                "protection[0].senses",
                "two groups");
        error("alarm: 6 V", "alarm: 16 V", Message.ALARM_ABOVE_TRIP, "protection[0].alarm", "16 V");
        error("ratio: \"8400:120\", ", "", Message.SETTING_WITHOUT_RATIO, "protection[0].alarm", "primary: true");
        error(
                "{stage: stage 4, senses",
                "{stage: stage 5, senses",
                Message.UNKNOWN_NAME,
                "protection[0].stage",
                "known are \"stage 1\"");

        // conductors and devices
        error(
                "between: [bus, stage 1]",
                "between: [bus, stag 1]",
                Message.STAGE_NOT_A_CONDUCTOR,
                "stages[0].name",
                "stage 1");
        error("switch: 24-1 ", "switch: 24-2 ", Message.SWITCH_ELSEWHERE, "stages[0].switch", "\"stage 2\"");
        error("switch: 24-1 ", "switch: 24-9 ", Message.UNKNOWN_NAME, "stages[0].switch", "known are");
        error("switch: 24-1 ", "switch: 89-2 ", Message.SWITCH_KIND, "stages[0].switch", "disconnector");
        error("    switch: 24-1 ", "    # ", Message.STAGE_SWITCH_UNUSED, "isolation.devices[3].name", "switch: 24-1");
        error(
                "kind: disconnector, between: [cable, bus]",
                "kind: disconnector",
                Message.DEVICE_NEEDS_BETWEEN,
                "isolation.devices[1].kind",
                "between");
        error(
                "kind: disconnector, between: [cable, bus]",
                "kind: disconnector, between: [bus, bus]",
                Message.BETWEEN_SAME,
                "isolation.devices[1].between",
                "different");
        error(
                "between: [bus, ground]",
                "between: [bus, cable]",
                Message.GROUNDING_SIDE,
                "isolation.devices[2].between",
                "[bus, ground]");
        error(
                "kind: disconnector, between: [cable, bus]",
                "kind: disconnector, between: [bus, earth]",
                Message.GROUNDING_SIDE,
                "isolation.devices[1].between",
                "grounding-switch");
        error(
                "kind: disconnector, between",
                "kind: disconnector, positions: [in, out], between",
                Message.POSITIONS_FIXED,
                "isolation.devices[1].positions",
                "closed, open");
        error(
                "kind: disconnector, between",
                "kind: disconnector, withdrawable: true, between",
                Message.KEY_DOES_NOT_FIT,
                "isolation.devices[1].withdrawable",
                "breaker");
        error(
                "exposes: [cable, bus]",
                "exposes: [cable, buss]",
                Message.UNKNOWN_NAME,
                "isolation.compartments[1].exposes[1]",
                "maybe \"bus\"");
        error(
                "exposes: [cable, bus]",
                "exposes: [cable, earth]",
                Message.EXPOSES_GROUND,
                "isolation.compartments[1].exposes",
                "leave it out");
        error("at: line}", "at: lime}", Message.UNKNOWN_NAME, "isolation.sources[0].at", "maybe \"line\"");
        error("at: line}", "at: ground}", Message.SOURCE_AT_GROUND, "isolation.sources[0].at", "conductor");
        error(
                "  sources:\n    - {name: utility feeder 7, at: line}\n    - {name: station service, at: control supply, voltage: 120 V}\n",
                "",
                Message.UNKNOWN_NAME,
                "isolation.compartments[0].exposes[0]",
                "control supply");

        // locks and keys
        error(
                "{device: 43-2, key: TF-1, holds: off}",
                "{device: 43-3, key: TF-1, holds: off}",
                Message.UNKNOWN_NAME,
                "isolation.locks[0].device",
                "maybe \"43-2\"");
        error(
                "{device: 43-2, key: TF-1, holds: off}",
                "{device: 43-2, key: TF-1, holds: of}",
                Message.UNKNOWN_NAME,
                "isolation.locks[0].holds",
                "maybe \"off\"");
        error(
                "{door: bay 1, key: TF-4}",
                "{door: bay 7, key: TF-4}",
                Message.UNKNOWN_NAME,
                "isolation.locks[6].door",
                "known are");
        error(
                "{door: bay 1, key: TF-4}",
                "{door: bay 1, key: TF-4, holds: open}",
                Message.DOOR_HOLDS,
                "isolation.locks[6].holds",
                "closed");
        error("out: [TF-4,", "out: [TF-44,", Message.KEY_WITHOUT_LOCK, "isolation.exchanges[0].out", "maybe \"TF-4\"");
        error(
                "{name: TF-9, copies: 1}",
                "{name: TF-99, copies: 1}",
                Message.KEY_WITHOUT_LOCK,
                "isolation.keys[0].name",
                "TF-99");
        error(
                "{device: 89-2, key: TF-1, holds: closed}",
                "{device: 89-2, key: TF-1, holds: open}",
                Message.TOO_FEW_COPIES,
                "isolation.locks[0].key",
                "2 places");
        error("in: [TF-3]", "in: [TF-3, TF-4]", Message.KEY_ON_BOTH_SIDES, "isolation.exchanges[0].out", "TF-4");
        error(
                "{lock: {device: 43-2, key: TF-1}, after",
                "{lock: {device: 43-2, key: TF-2}, after",
                Message.LOCK_UNKNOWN,
                "isolation.delays[0].lock.key",
                "maybe \"TF-1\"");
        error("open: [24-1, 24-2", "open: [43-2, 24-2", Message.DELAY_NO_OPEN, "isolation.delays[0].open[0]", "43-2");
        error(
                "{device: 24-1, to: closed,",
                "{device: 24-1, to: shut,",
                Message.UNKNOWN_NAME,
                "isolation.interlocks[0].to",
                "\"closed\"");
        error(
                "{43-2: [manual, auto]}}\n    - {device: 24-2",
                "{43-2: [manual, automatic]}}\n    - {device: 24-2",
                Message.UNKNOWN_NAME,
                "isolation.interlocks[0].requires.43-2[1]",
                "position of");

        // units in place
        error(
                "at: stage 2/A/u1",
                "at: stage 2/A/u3",
                Message.UNKNOWN_POSITION,
                "positions[0].at",
                "run from \"stage 2/A/u1\" to \"stage 2/C/u2\"");
        error("at: stage 2/A/u1", "at: stage 9/A", Message.UNKNOWN_POSITION, "positions[0].at", "stages are");
        error(
                "spares:",
                "  - {at: stage 2/ a / u1}\nspares:",
                Message.POSITION_TWICE,
                "positions[1].at",
                "first in line");
        error(
                "serial: \"TF21-0098\"",
                "serial: \"TF21-0007\"",
                Message.SERIAL_TWICE,
                "spares[0].serial",
                "first in line");

        warning("    voltage: 7.96 kV", "    voltage: 7.62 kV", Message.UNIT_ABOVE_RATED, "stages[0].unit", "105 %");
        warning(
                "    voltage: 7.96 kV",
                "    voltage: 13.28 kV",
                Message.UNIT_FAR_BELOW_RATED,
                "stages[0].unit",
                "36 %");
        warning(
                "capacitance: 12.71 uF",
                "capacitance: 16.5 uF",
                Message.CAPACITANCE_OUT_OF_TOLERANCE,
                "positions[0].capacitance",
                "+31.4 %");
        warning("link: 65T  ", "link: 30T", Message.FUSE_NEAR_UNIT, "stages[0].fuse", "1.19");
        warning(
                "element-fuses: none ",
                "element-fuses: internal ",
                Message.FUSE_ON_INTERNALLY_FUSED,
                "stages[0].fuse",
                "U300");
        warning(
                "units: 2, unit: U300, fuse: F65, reactor: {inductance: 45 uH, position: line}}\n  - {name: stage 3",
                "units: 2, unit: U300, reactor: {inductance: 45 uH, position: line}}\n  - {name: stage 3",
                Message.NO_FUSE_AT_ALL,
                "stages[1].units",
                "2 units");
        // IEEE Std 18-1992: 0 to +15 %; a unit to IEC 60871-1 may be at -5 %
        warning(
                "tolerance: [0 %, +10 %]",
                "tolerance: [-5 %, +10 %]", Message.TOLERANCE_WIDE, "unit-types[0].tolerance", "0 % to 15 %");
        warning(
                "tolerance: [0 %, +10 %]",
                "tolerance: [0 %, +16 %]", Message.TOLERANCE_WIDE, "unit-types[0].tolerance", "IEEE Std 18-1992");
        warning("alarm: 6 V", "alarm: 15 V", Message.ALARM_AT_TRIP, "protection[0].alarm", "15 V");
        warning("alarm: 6 V, trip: 15 V, ", "", Message.NO_SETTINGS, "protection[0]", "neither");
        warning(
                "maximum-voltage: 14.5 kV",
                "maximum-voltage: 25 kV",
                Message.MAXIMUM_FAR_ABOVE_NOMINAL,
                "system.maximum-voltage",
                "181 %");
        warning(
                "short-circuit: 280 MVA",
                "short-circuit: 30 MVA",
                Message.WEAK_SYSTEM,
                "system.short-circuit",
                "4.2 times");
        warning(
                "{inductance: 45 uH, position: line}   #",
                "{inductance: 45 mH, position: line}   #",
                Message.REACTOR_SHARE,
                "stages[0].reactor.inductance",
                "inrush");
        warning("4.1 MΩ", "8 MΩ", Message.DISCHARGE_SLOW, "unit-types[0].discharge-resistance", "IEEE Std 18");
        warning(
                "discharge-resistance: 4.1 MΩ",
                "discharge: {to: 75 V, within: 10 min}",
                Message.DISCHARGE_SLOW,
                "unit-types[0].discharge",
                "10 min");
        warning("4.1 MΩ", "4.1 kΩ", Message.DISCHARGE_LOSS, "unit-types[0].discharge-resistance", "MΩ");
        warning(
                "fuse-types:\n",
                "fuse-types:\n  - {name: F1, kind: expulsion, rating: 1 A, voltage: 8.3 kV, maximum-parallel-energy: 1 kJ}\n",
                Message.UNUSED_TYPE,
                "fuse-types[0].name",
                "F1");
        warning("  short-circuit: 280 MVA", "  #", Message.NOT_GIVEN, "system.short-circuit", "inrush");
        warning("  x-over-r: 11", "  #", Message.NOT_GIVEN, "system.x-over-r", "damping");
        warning("  maximum-voltage: 14.5 kV", "  #", Message.NOT_GIVEN, "system.maximum-voltage", "nominal");
        warning(
                "    discharge-resistance: 4.1 MΩ",
                "    #",
                Message.NOT_GIVEN,
                "unit-types[0].discharge-resistance",
                "none is promised");
        warning(
                "    sections: 4                    # element groups in series inside the can\n    elements: 12                   # elements in parallel in each section\n    element-fuses: none            # none | internal\n",
                "",
                Message.NOT_GIVEN,
                "unit-types[0].sections",
                "shorted");
        warning("    mass: 58 kg", "    #", Message.NOT_GIVEN, "unit-types[0].mass", "weight");
        warning("name: bay 2,", "name: Bay1,", Message.NAMES_ALIKE, "isolation.compartments[3].name", "bay 1");
        warning(
                "    - {door: bay 4, key: TF-7}\n",
                "    - {device: 57-2, key: TF-7, holds: open}\n",
                Message.DOOR_WITHOUT_LOCK,
                "isolation.compartments[5].name",
                "stage 4");
        warning(
                "exposes: [cable, bus]",
                "exposes: []",
                Message.COMPARTMENT_EMPTY,
                "isolation.compartments[1].exposes",
                "nothing");
        warning(
                "{device: 52-7, key: TF-9, holds: withdrawn}",
                "{device: 52-7, key: TF-10, holds: withdrawn}",
                Message.KEY_ALONE,
                "isolation.locks[5].key",
                "TF-10");
        warning(
                "after: 5 min, open",
                "after: 3 min, open",
                Message.DELAY_SHORT,
                "isolation.delays[0].after",
                "IEEE Std 18");
        warning(
                "{43-2: [manual, auto]}}\n    - {device: 24-2",
                "{43-2: [manual, auto, off]}}\n    - {device: 24-2",
                Message.ALWAYS_SATISFIED,
                "isolation.interlocks[0].requires.43-2",
                "blocks nothing");
        warning(
                "kind: breaker, withdrawable: true, between: [line, cable]",
                "kind: breaker, withdrawable: true, between: [line, other]",
                Message.STAGE_NEVER_FED,
                "stages[0].name",
                "stage 1");
    }

    private static Problem find(Case c, List<Problem> problems) {
        return problems.stream()
                .filter(p -> p.message() == c.code()
                        && p.place().path().equals(c.path())
                        && p.text().contains(c.words()))
                .findFirst()
                .orElseThrow(() -> new AssertionError(c + " gives only\n"
                        + String.join(
                                "\n", problems.stream().map(Problem::print).toList())));
    }

    @Test
    void everyFaultIsSaidWithItsPlaceAndWhatIsAllowed() {
        List<Executable> checks = new ArrayList<>();
        for (Case c : ERRORS) {
            checks.add(() -> {
                BankReading reading = read(changed(c.from(), c.to()));
                Problem problem = find(c, reading.errors());
                assertTrue(problem.place().line() > 0 && problem.place().column() > 0, problem.print());
                assertEquals("t.yaml", problem.place().file());
                assertTrue(reading.bank().isEmpty(), c.toString());
            });
        }
        assertAll(checks);
    }

    @Test
    void whatIsOnlyUnusualIsAWarning() {
        List<Executable> checks = new ArrayList<>();
        for (Case c : WARNINGS) {
            checks.add(() -> {
                Problem problem = find(c, read(changed(c.from(), c.to())).warnings());
                assertTrue(problem.place().line() > 0, problem.print());
            });
        }
        assertAll(checks);
    }

    @Test
    void aWarningNeverStopsWork() {
        BankReading reading = read(changed("4.1 MΩ", "8 MΩ"));
        assertTrue(reading.bank().isPresent());
        assertEquals(
                Set.of(Message.DISCHARGE_SLOW, Message.DELAY_SHORT),
                reading.warnings().stream().map(Problem::message).collect(Collectors.toSet()));
    }

    @Test
    void everythingIsFoundInOneRun() {
        String text = GOOD;
        for (Case c : List.of(
                new Case("rating: 300 kvar", "rating: 300", Message.NO_UNIT, "unit-types[0].rating", ""),
                new Case("x-over-r: 11", "x-over-r: many", Message.NOT_A_NUMBER, "system.x-over-r", ""),
                new Case(
                        "{door: bay 1, key: TF-4}",
                        "{door: bay 7, key: TF-4}",
                        Message.UNKNOWN_NAME,
                        "isolation.locks[6].door",
                        ""),
                new Case("serial: \"TF21-0098\"", "serial: \"TF21-0007\"", Message.SERIAL_TWICE, "", ""),
                new Case("alarm: 6 V", "alarm: 16 V", Message.ALARM_ABOVE_TRIP, "protection[0].alarm", ""))) {
            assertTrue(text.contains(c.from()));
            text = text.replace(c.from(), c.to());
        }
        List<String> paths =
                read(text).errors().stream().map(p -> p.place().path()).toList();
        // the spare's type is broken, so the spare can't be read; that is no fault of its own
        assertEquals(
                List.of("system.x-over-r", "unit-types[0].rating", "protection[0].alarm", "isolation.locks[6].door"),
                paths);
    }

    @Test
    void aReferenceToSomethingBrokenIsNoSecondError() {
        assertEquals(
                List.of(Message.NO_UNIT),
                read(changed("rating: 300 kvar", "rating: 300")).errors().stream()
                        .map(Problem::message)
                        .toList());
    }

    @Test
    void thePlaceIsThatOfTheValue() {
        assertEquals(
                "t.yaml:14:13 unit-types[0].rating: \"300\" has no unit; write it with one, such as \"300 kvar\"",
                read(changed("rating: 300 kvar", "rating: 300"))
                        .errors()
                        .getFirst()
                        .print());
    }

    @Test
    void aBankWithoutProtectionOrIsolationIsReadWithAWarning() {
        String text =
                GOOD.substring(0, GOOD.indexOf("isolation:")).replaceAll("(?s)protection:.*?control:", "control:");
        BankReading reading = read(text);
        assertTrue(reading.bank().isPresent());
        assertEquals(
                Set.of("protection", "isolation"),
                Set.copyOf(
                        reading.warnings().stream().map(p -> p.place().path()).toList()));
        assertEquals(
                "24-1", reading.requireBank().stages().getFirst().switchName().orElseThrow());
    }

    @Test
    void anIsolationThatNothingFeedsIsAnError() {
        String text = GOOD.replaceAll("(?s)  sources:.*?  devices:", "  devices:")
                .replace("    - {name: controls, exposes: [control supply]}\n", "");
        assertEquals(
                List.of(Message.NO_SOURCE),
                read(text).errors().stream().map(Problem::message).toList());
    }

    @Test
    void sensorsAndThreePhaseUnitsAreHeldAgainstTheConnection() {
        String delta = GOOD.substring(0, GOOD.indexOf("isolation:"))
                .replace("bushings: 2", "phases: 3\n    internal: delta\n    bushings: 3")
                .replace("7.96 kV", "13.8 kV")
                .replace("8.3 kV", "15 kV")
                .replace("wye-ungrounded", "delta")
                .replaceAll("(?s)protection:.*?control:", "control:");
        BankReading good = read(delta);
        assertEquals(List.of(), good.errors().stream().map(Problem::print).toList());
        assertEquals(
                List.of("stage 1", "stage 2/u1", "stage 2/u2"),
                good.requireBank().positions().stream()
                        .map(p -> p.name())
                        .limit(3)
                        .toList());
        find(
                new Case("", "", Message.NO_NEUTRAL, "stages[0].reactor.position", "line"),
                read(delta.replace("position: line}   #", "position: neutral}   #"))
                        .errors());
        find(
                new Case("", "", Message.THREE_PHASE_SERIES, "stages[0].groups", "parallel"),
                read(delta.replace("groups: 1     ", "groups: 2     ")).errors());
    }

    @Test
    void aFrequencyThatNobodyUsesIsUnusual() {
        find(
                new Case("", "", Message.UNUSUAL_FREQUENCY, "system.frequency", "16.7 Hz"),
                read(GOOD.replace("frequency: 60 Hz", "frequency: 16.7 Hz")).warnings());
    }

    @Test
    void everyMessageOfTheBankFileHasATest() {
        Set<Message> tested = EnumSet.noneOf(Message.class);
        Stream.concat(ERRORS.stream(), WARNINGS.stream()).forEach(c -> tested.add(c.code()));
        // in BadFileTest or above
        tested.addAll(EnumSet.range(Message.FILE_TOO_LARGE, Message.DUPLICATE_KEY));
        tested.addAll(
                List.of(Message.NO_SOURCE, Message.NO_NEUTRAL, Message.THREE_PHASE_SERIES, Message.UNUSUAL_FREQUENCY));
        tested.addAll(OptionalDataTest.tested());
        Set<Message> untested = EnumSet.range(Message.FILE_TOO_LARGE, Message.UNKNOWN_POSITION);
        untested.removeAll(tested);
        assertEquals(Set.of(), untested);
    }

    /** Found by the law over every command: the check passed such a file, and then no command could use it. */
    @Test
    void noSensorReachesTheNeutralOfThreePhaseUnits() {
        List<String> errors =
                BadFileTest.errors(BadFileTest.changed("bushings: 2", "phases: 3\n    internal: wye-ungrounded"));
        assertTrue(
                errors.stream().anyMatch(e -> e.contains("protection[0].senses") && e.contains("neutral inside")),
                errors.toString());
    }
}
