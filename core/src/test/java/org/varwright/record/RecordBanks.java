package org.varwright.record;

import java.nio.charset.StandardCharsets;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;

/** Banks for records, invented. */
final class RecordBanks {
    private RecordBanks() {}

    static final String HEAD = """
            format: varwright/1
            name: test bank
            standard: IEEE
            system: {voltage: %s, maximum-voltage: %s, frequency: 60 Hz, short-circuit: %s, x-over-r: 9, grounding: solid}
            unit-types:
              - {name: U, rating: 200 kvar, voltage: %s, frequency: 60 Hz, tolerance: [0 %%, +10 %%], sections: 4, elements: 10, element-fuses: none, discharge-resistance: 4.2 MΩ}
            stages:
            """;

    /** Four groups of five units in series a leg, neutral floating, watched by a voltage transformer. */
    static Bank fourGroups() {
        return read(HEAD.formatted("47.5 kV", "48.3 kV", "400 MVA", "7.2 kV") + """
                  - {name: F, connection: wye-ungrounded, groups: 4, units: 5, unit: U, reactor: {inductance: 1 mH, position: line, purpose: inrush, resistance: 0.1 Ω}, bus-length: 2 m, stray-inductance: 5 uH}
                protection:
                  - {stage: F, senses: neutral-voltage, ratio: "14400:120", alarm: 1 V, trip: 3 V, delay: 0.1 s}
                """);
    }

    /** Two stages of one unit a leg on one bus, neutrals floating. */
    static Bank twoStages(String shortCircuit) {
        return read(HEAD.formatted("12.47 kV", "12.47 kV", shortCircuit, "7.2 kV") + """
                  - {name: stage 1, connection: wye-ungrounded, groups: 1, units: 1, unit: U, reactor: {inductance: 1.5 mH, position: line, purpose: inrush, resistance: 0.15 Ω}, bus-length: 1 m, stray-inductance: 2.5 uH}
                  - {name: stage 2, connection: wye-ungrounded, groups: 1, units: 2, unit: U, reactor: {inductance: 1.5 mH, position: line, purpose: inrush, resistance: 0.15 Ω}, bus-length: 1 m, stray-inductance: 2.5 uH}
                protection:
                  - {stage: stage 1, senses: neutral-voltage, ratio: "7200:120", alarm: 7 V, trip: 20 V, delay: 0.1 s}
                  - {stage: stage 2, senses: neutral-voltage, ratio: "7200:120", alarm: 7 V, trip: 20 V, delay: 0.1 s}
                """);
    }

    /** A double wye with a current transformer between the neutrals. */
    static Bank doubleWye() {
        return read(HEAD.formatted("24.9 kV", "25.5 kV", "400 MVA", "7.2 kV") + """
                  - {name: D, connection: double-wye-ungrounded, groups: 2, units: 4, unit: U, reactor: {inductance: 1 mH, position: line, purpose: inrush, resistance: 0.1 Ω}, bus-length: 2 m, stray-inductance: 5 uH}
                protection:
                  - {stage: D, senses: neutral-current, ratio: "30:5", alarm: 0.2 A, trip: 0.5 A, delay: 0.1 s}
                """);
    }

    /** A grounded wye without reactors of note. */
    static Bank grounded() {
        return read(HEAD.formatted("12.47 kV", "12.47 kV", "400 MVA", "7.2 kV") + """
                  - {name: G, connection: wye-grounded, groups: 1, units: 2, unit: U, reactor: {inductance: 1 mH, position: line, purpose: inrush, resistance: 0.1 Ω}, bus-length: 2 m, stray-inductance: 5 uH}
                protection:
                  - {stage: G, senses: neutral-current, ratio: "50:5", alarm: 0.5 A, trip: 1.5 A, delay: 0.1 s}
                """);
    }

    static Bank read(String yaml) {
        return BankFile.read("test.bank.yaml", yaml.getBytes(StandardCharsets.UTF_8))
                .requireBank();
    }
}
