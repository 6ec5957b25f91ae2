package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.basis.Unanswered;
import org.varwright.resonance.BankText;
import org.varwright.resonance.Spectrum;

/** What is asked for when data are missing: each datum taken away alone is named, and nothing is asked for that is there. */
class DutyMissingTest {
    private static final String CONTROL = "control: {senses: voltage, ratio: \"7200:120\", on: 118 V, off: 122 V}\n";
    private static final String LOAD = "load: {power: 2000 kW, reactive: 1500 kvar, light-power: 400 kW,"
            + " light-reactive: 200 kvar, wanted-power-factor: 0.95}\n";
    private static final String SYSTEM = "voltage: 12.47 kV, frequency: 60 Hz, grounding: solid";

    private static Bank bank(String system, String reactor, String type, String rest) {
        return BankText.bank("standard: IEEE\nsystem: {" + system + "}", """
                unit-types:
                  - {name: U, rating: 100 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
                switch-types: [{name: T, current: 100 A}]
                stages:
                  - {name: S, connection: wye-ungrounded, switch: Q, groups: 1, units: 1, unit: U,
                     reactor: {inductance: 50 uH, position: line, purpose: inrush""" + reactor + """
                }}
                isolation:
                  sources: [{name: feeder, at: line}]
                  devices: [{name: Q, kind: stage-switch""" + type + """
                , between: [line, S]}]
                  compartments: [{name: bay, exposes: [line, S]}]
                """ + rest);
    }

    private static Set<String> missing(Bank bank, DutyQuestion question) {
        return new TreeSet<>(Duty.of(bank, question).unanswered().stream()
                .map(Unanswered::missing)
                .toList());
    }

    private static Set<String> missing(Bank bank) {
        return missing(bank, DutyQuestion.PLAIN);
    }

    private static final String HIGHEST = ", maximum-voltage: 13.1 kV";
    private static final String SHORT_CIRCUIT = ", short-circuit: 200 MVA";
    private static final String HARMONICS = ", harmonics: [{order: 5, voltage: 2 %}]";
    private static final String ALL = SYSTEM + HIGHEST + SHORT_CIRCUIT + HARMONICS;

    @Test
    void oneByOne() {
        String amperes = ", current: 90 A";
        String type = ", type: T";
        String rest = CONTROL + LOAD;
        assertEquals(Set.of(), missing(bank(ALL, amperes, type, rest)));
        assertEquals(
                Set.of("system.maximum-voltage"),
                missing(bank(SYSTEM + SHORT_CIRCUIT + HARMONICS, amperes, type, rest)));
        assertEquals(Set.of("system.harmonics"), missing(bank(SYSTEM + HIGHEST + SHORT_CIRCUIT, amperes, type, rest)));
        assertEquals(Set.of("system.short-circuit"), missing(bank(SYSTEM + HIGHEST + HARMONICS, amperes, type, rest)));
        assertEquals(Set.of("load"), missing(bank(ALL, amperes, type, CONTROL)));
        assertEquals(Set.of("control"), missing(bank(ALL, amperes, type, LOAD)));
        assertEquals(Set.of("reactor.current of S"), missing(bank(ALL, "", type, rest)));
        assertEquals(Set.of("type of the switch of S"), missing(bank(ALL, amperes, "", rest)));
        assertEquals(
                Set.of("load.wanted-power-factor"),
                missing(bank(ALL, amperes, type, rest.replace(", wanted-power-factor: 0.95", ""))));
        assertEquals(
                Set.of("load.light-power"),
                missing(bank(ALL, amperes, type, rest.replace(", light-power: 400 kW, light-reactive: 200 kvar", ""))));
    }

    /** What is asked with the question need not be in the file. */
    @Test
    void whatTheQuestionGivesIsNotAskedFor() {
        Bank bank = bank(SYSTEM + SHORT_CIRCUIT, ", current: 90 A", ", type: T", CONTROL + LOAD);
        assertEquals(Set.of("system.maximum-voltage", "system.harmonics"), missing(bank));
        DutyQuestion plain = DutyQuestion.PLAIN;
        assertEquals(
                Set.of("system.harmonics"),
                missing(
                        bank,
                        new DutyQuestion(
                                OptionalDouble.of(13e3),
                                plain.harmonics(),
                                List.of(),
                                plain.overvoltage(),
                                plain.elsewhere(),
                                List.of(),
                                plain.entered())));
        assertEquals(
                Set.of("system.maximum-voltage"),
                missing(
                        bank,
                        new DutyQuestion(
                                OptionalDouble.empty(),
                                plain.harmonics(),
                                Spectrum.parse("", List.of("5: 2 %")),
                                plain.overvoltage(),
                                plain.elsewhere(),
                                List.of(),
                                plain.entered())));
    }

    /** A control of which something is not known is not judged, and what is not known is named. */
    @Test
    void controls() {
        record Row(String control, Set<String> missing) {}
        for (Row row : List.of(
                new Row("{}", Set.of("control.senses")),
                new Row("{senses: time}", Set.of()),
                new Row("{senses: voltage}", Set.of("control.ratio", "control.on", "control.off")),
                new Row("{senses: voltage, ratio: \"7200:120\", off: 122 V}", Set.of("control.on")),
                new Row("{senses: voltage, ratio: \"7200:120\", on: 118 V}", Set.of("control.off")),
                new Row("{senses: kvar, off: 45 kvar, current-ratio: \"500:5\"}", Set.of("control.on")),
                new Row("{senses: kvar, on: 500 kvar, current-ratio: \"500:5\"}", Set.of("control.off")),
                new Row("{senses: power-factor, off: 0.98}", Set.of("control.on")),
                new Row("{senses: power-factor, on: 0.9}", Set.of("control.off")),
                new Row("{senses: current, on: 4 A, current-ratio: \"100:5\"}", Set.of("control.off")),
                new Row("{senses: current}", Set.of("control.on", "control.off", "control.current-ratio")))) {
            Duty duty = Duty.of(
                    bank(ALL, ", current: 90 A", ", type: T", "control: " + row.control() + "\n" + LOAD),
                    DutyQuestion.PLAIN);
            assertEquals(
                    row.missing(),
                    new TreeSet<>(
                            duty.unanswered().stream().map(Unanswered::missing).toList()),
                    row.control());
            assertTrue(duty.control().checks().isEmpty(), row.control());
        }
        // The steps are known, only what a wrong ratio does is not.
        Duty noRatio = Duty.of(
                bank(
                        ALL,
                        ", current: 90 A",
                        ", type: T",
                        "control: {senses: kvar, on: 500 kvar, off: 45 kvar}\n" + LOAD),
                DutyQuestion.PLAIN);
        assertEquals(1, noRatio.control().checks().size());
        assertEquals("control.current-ratio", noRatio.unanswered().getFirst().missing());
        // A current control depends on the load.
        assertEquals(
                Set.of("load"),
                missing(bank(
                        ALL,
                        ", current: 90 A",
                        ", type: T",
                        "control: {senses: current, on: 4 A, off: 2.5 A, current-ratio: \"100:5\"}\n")));
    }

    /** Without the short-circuit level no step is known: the control is not judged, and that is said once. */
    @Test
    void aControlBehindAnUnknownSource() {
        Duty duty = Duty.of(
                bank(SYSTEM + HIGHEST + HARMONICS, ", current: 90 A", ", type: T", CONTROL + LOAD), DutyQuestion.PLAIN);
        assertEquals(ControlAnswer.EMPTY, duty.control());
        assertEquals(1, duty.unanswered().size());
    }
}
