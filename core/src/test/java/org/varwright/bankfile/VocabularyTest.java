package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Device;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Standard;
import org.varwright.bank.UnitPosition;
import org.varwright.problem.Problem;

/** Both vocabularies give the same bank, and every connection its legs and positions. */
class VocabularyTest {
    @Test
    void iecWordsAndIeeeWordsGiveTheSameBank() {
        String iec = new String(BankFileTest.example("demo/hallin-moor-2.bank.yaml"), StandardCharsets.UTF_8);
        String ieee = iec.replace("steps:", "stages:")
                .replace("{step: ", "{stage: ")
                .replace("bridge-unearthed", "bridge-ungrounded")
                .replace("kind: earthing-switch", "kind: grounding-switch")
                .replace(", earth]", ", ground]")
                .replace("earthing: resistance", "grounding: resistance");
        assertEquals(BadFileTest.read(iec).requireBank(), BadFileTest.read(ieee).requireBank());
    }

    @Test
    void everyConnectionIsReadInEitherVocabularyAndMixed() {
        for (Connection connection : Connection.values()) {
            String ieee = connection.code();
            String iec = new Spelling(Standard.IEC).word(ieee);
            for (String word : List.of(ieee, iec, ieee.replace("wye", "star"), iec.replace("star", "wye"))) {
                assertEquals(Optional.of(connection), Words.find(Words.CONNECTIONS, word), word);
            }
        }
        assertEquals(Optional.of(Device.Kind.STAGE_SWITCH), Words.find(Words.DEVICE_KINDS, "step-switch"));
        assertEquals(Optional.of(Device.Kind.GROUNDING_SWITCH), Words.find(Words.DEVICE_KINDS, "earthing-switch"));
        assertEquals("star-unearthed", new Spelling(Standard.IEC).word("wye-ungrounded"));
    }

    private static Bank bank(String connection, String layout) {
        String text = """
                format: varwright/1
                name: b
                standard: IEC
                system: {voltage: 11 kV, frequency: 50 Hz, earthing: isolated}
                unit-types: [{name: u, rating: 100 kvar, voltage: 11.5 kV, frequency: 50 Hz, tolerance: [-5 %, +10 %]}]
                steps: [{name: F, connection: CONNECTION, LAYOUT, unit: u}]
                """.replace("CONNECTION", connection).replace("LAYOUT", layout);
        BankReading reading = BadFileTest.read(text);
        assertEquals(List.of(), reading.errors().stream().map(Problem::print).toList());
        return reading.requireBank();
    }

    private static List<String> positions(String connection, String layout) {
        return bank(connection, layout).positions().stream()
                .map(UnitPosition::name)
                .toList();
    }

    @Test
    void positionsHaveTheNamesOfTheContract() {
        assertEquals(List.of("F/A", "F/B", "F/C"), positions("star-earthed", "groups: 1, units: 1"));
        assertEquals(
                List.of("F/AB/u1", "F/AB/u2", "F/BC/u1", "F/BC/u2", "F/CA/u1", "F/CA/u2"),
                positions("delta", "groups: 1, units: 2"));
        assertEquals(
                "F/C/s3g7",
                positions("wye-grounded", "strings: 3, groups: 7, units: 1").getLast());
        assertEquals(
                "F/A-ul/g1u1",
                positions("bridge-earthed", "groups: 2, units: 3").getFirst());
        List<String> unequal = positions("double-star-unearthed", "groups: 2, units: 1, second: {units: 2}");
        assertEquals("F/A1/g1", unequal.getFirst());
        assertEquals("F/C2/g2u2", unequal.getLast());
        assertEquals(3 * 2 + 3 * 4, unequal.size());
        assertEquals(
                Optional.of(new LegLayout(1, 2, 2)),
                bank("double-star-unearthed", "groups: 2, units: 1, second: {units: 2}")
                        .stages()
                        .getFirst()
                        .second());
    }
}
