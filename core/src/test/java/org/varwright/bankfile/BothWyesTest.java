package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/**
 * The second wye of a double wye may be made up otherwise than the first; what is checked of units, fuses and sensors is checked of both.
 *
 * <pre>
 *   line ──┬── 2 groups of 7.2 kV ──┬── n
 *          └── 1 group  of 7.2 kV ──┘          12 kV: 6.93 kV a phase, 3.46 kV a unit of the first wye, 6.93 kV of the second
 * </pre>
 */
class BothWyesTest {
    private static final String BANK = """
            format: varwright/1
            name: two unlike wyes
            standard: IEEE
            system: {voltage: 12 kV, maximum-voltage: 12.5 kV, frequency: 60 Hz, short-circuit: 400 MVA, x-over-r: 9, grounding: solid}
            unit-types:
              - {name: U, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %], sections: 4, elements: 10, element-fuses: none, discharge-resistance: 4.2 MΩ}
            fuse-types:
              - {name: F, kind: expulsion, link: 65T, voltage: VOLTS, maximum-parallel-energy: 30 kJ}
            stages:
              - {name: S, connection: double-wye-ungrounded, groups: 2, units: UNITS, second: {groups: 1, units: SECOND}, unit: U, FUSE}
            protection:
              - {stage: S, senses: SENSES, ratio: "60:1", alarm: 1 SI, trip: 3 SI}
            """;

    private static BankReading read(String volts, String units, String second, String fuse, String senses) {
        String text = BANK.replace("VOLTS", volts)
                .replace("UNITS", units)
                .replace("SECOND", second)
                .replace("FUSE", fuse)
                .replace("SENSES", senses)
                .replace("SI", senses.equals("neutral-current") ? "A" : "V");
        return BankFile.read("t.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> said(BankReading reading, Predicate<Message> which) {
        return Stream.concat(reading.errors().stream(), reading.warnings().stream())
                .filter(p -> which.test(p.message()))
                .map(p -> p.message() + " " + p.place().path())
                .toList();
    }

    private static List<String> said(BankReading reading, Message message) {
        return said(reading, m -> m == message);
    }

    /** 5.5 kV is enough for 3.46 kV, not for 6.93 kV. */
    @Test
    void aFuseHasToStandTheHigherVoltageOfBoth() {
        assertEquals(
                List.of("FUSE_VOLTAGE stages[0].fuse"),
                said(read("5.5 kV", "2", "2", "fuse: F", "neutral-current"), Message.FUSE_VOLTAGE));
        assertEquals(List.of(), said(read("8.3 kV", "2", "2", "fuse: F", "neutral-current"), Message.FUSE_VOLTAGE));
    }

    @Test
    void unitsSideBySideWithoutAnyFuseAreSaidOfEitherWye() {
        for (List<String> units : List.of(List.of("1", "3"), List.of("3", "1"))) {
            BankReading reading = read("8.3 kV", units.get(0), units.get(1), "bus-length: 2 m", "neutral-current");
            assertEquals(List.of("NO_FUSE_AT_ALL stages[0].units"), said(reading, Message.NO_FUSE_AT_ALL));
            assertEquals(
                    "3",
                    reading.warnings().stream()
                            .filter(p -> p.message() == Message.NO_FUSE_AT_ALL)
                            .map(Problem::text)
                            .findFirst()
                            .orElseThrow()
                            .substring(0, 1));
        }
        assertEquals(
                List.of(),
                said(read("8.3 kV", "1", "1", "bus-length: 2 m", "neutral-current"), Message.NO_FUSE_AT_ALL));
    }

    /** A tap behind the only group is the neutral: it would read nothing, whatever fails there. */
    @Test
    void aTapNeedsTwoGroupsInBoth() {
        assertEquals(
                List.of("SENSOR_DOES_NOT_FIT protection[0].senses"),
                said(read("8.3 kV", "2", "2", "fuse: F", "phase-voltage"), Message.SENSOR_DOES_NOT_FIT));
    }

    /** 12 kV/√3 over one group is 96 % of 7.2 kV; over two groups 48 %, which is said of the first wye. */
    @Test
    void theVoltageOfBothIsHeldAgainstTheRating() {
        assertEquals(
                List.of("UNIT_FAR_BELOW_RATED stages[0].unit"),
                said(
                        read("8.3 kV", "2", "2", "fuse: F", "neutral-current"),
                        m -> m.name().startsWith("UNIT_")));
        BankReading high = BankFile.read(
                "t.yaml",
                BANK.replace("VOLTS", "15 kV")
                        .replace("UNITS", "2")
                        .replace("SECOND", "2")
                        .replace("FUSE", "fuse: F")
                        .replace("SENSES", "neutral-current")
                        .replace("SI", "A")
                        .replace("12 kV", "14 kV")
                        .replace("12.5 kV", "15 kV")
                        .getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of("UNIT_OVERVOLTAGE stages[0].unit"), said(high, Message.UNIT_OVERVOLTAGE));
    }
}
