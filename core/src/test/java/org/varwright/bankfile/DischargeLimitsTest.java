package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.varwright.bankfile.LimitBank.FARADS;
import static org.varwright.bankfile.LimitBank.number;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Standard;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/**
 * Times of discharge: what a standard asks, what a unit's resistor takes, and a lock's delay, which has to outlast both. {@code t = RC·ln(√2·V_r/V)}: at 10 kV to
 * 50 V {@code RC·5.645}.
 */
class DischargeLimitsTest {
    private static final String GOOD = "";

    /** IEEE Std 18: 50 V in 5 min above 600 V, in 1 min up to it. IEC 60871-1: 75 V in 10 min; IEC 60831-1, up to 1 kV: 75 V in 3 min. */
    @Test
    void theStandards() {
        for (Object[] row : new Object[][] {
            {Standard.IEEE, 600.0, 50.0, 60.0},
            {Standard.IEEE, 600.1, 50.0, 300.0},
            {Standard.IEEE, 14_400.0, 50.0, 300.0},
            {Standard.IEC, 1000.0, 75.0, 180.0},
            {Standard.IEC, 1000.1, 75.0, 600.0},
            {Standard.IEC, 14_400.0, 75.0, 600.0}
        }) {
            DischargeRule rule = DischargeRule.of((Standard) row[0], (Double) row[1]);
            assertEquals(row[2], rule.volts(), row[0] + " " + row[1]);
            assertEquals(row[3], rule.seconds(), row[0] + " " + row[1]);
        }
    }

    /** The resistance that takes a unit of 10 kV from its peak to some volts in a time [Ω]. */
    private static String ohms(double seconds, double volts) {
        return number(seconds / FARADS / Math.log(Math.sqrt(2.0) * 10e3 / volts)) + " Ω";
    }

    @Test
    void aResistorThatIsTooSlow() {
        String slow = "DISCHARGE_SLOW unit-types[0].discharge-resistance";
        for (Object[] row : new Object[][] {
            {"IEEE", 299.9, 50.0, GOOD},
            {"IEEE", 300.2, 50.0, GOOD},
            {"IEEE", 300.4, 50.0, slow},
            {"IEC", 599.9, 75.0, GOOD},
            {"IEC", 601.0, 75.0, slow}
        }) {
            said(
                    (String) row[3],
                    new LimitBank()
                            .standard((String) row[0])
                            .resistor("discharge-resistance: " + ohms((Double) row[1], (Double) row[2])));
        }
    }

    private static void said(String due, LimitBank bank) {
        assertEquals(due.isEmpty() ? List.of() : List.of(due), bank.said());
    }

    @Test
    void aNameplateThatGivesVoltsAndATime() {
        String slow = "DISCHARGE_SLOW unit-types[0].discharge";
        for (String[] row : new String[][] {
            {"IEEE", "{to: 50 V, within: 5 min}", GOOD},
            {"IEEE", "{to: 51 V, within: 5 min}", slow},
            {"IEEE", "{to: 50 V, within: 301 s}", slow},
            {"IEC", "{to: 75 V, within: 10 min}", GOOD},
            {"IEC", "{to: 75 V, within: 601 s}", slow}
        }) {
            said(row[2], new LimitBank().standard(row[0]).resistor("discharge: " + row[1]));
        }
    }

    /** 2 mW/var of 100 kvar are 200 W: (10 kV)²/200 W = 500 kΩ. */
    @Test
    void aResistorThatIsAHeater() {
        said(GOOD, new LimitBank().resistor("discharge-resistance: 501 kΩ"));
        said(
                "DISCHARGE_LOSS unit-types[0].discharge-resistance",
                new LimitBank().resistor("discharge-resistance: 499 kΩ"));
    }

    /**
     * A key comes free 5 min after the stage was opened. The standard's 5 min are enough; resistors of 20 MΩ take
     * {@code 20 MΩ·3.1831 µF·5.645 = 359 s}, 5.99 min, whatever the standard asks: the door would open on charged units.
     */
    @Test
    void aDelayOutlastsTheStandardAndTheUnitsOwnResistors() {
        assertEquals(List.of(), delays("IEEE", "15 MΩ", "5 min"));
        assertEquals(List.of("299 s; IEEE Std 18"), delays("IEEE", "15 MΩ", "299 s"));
        assertEquals(List.of("5 min; \"U\""), delays("IEEE", "20 MΩ", "5 min"));
        assertEquals(List.of("355 s; \"U\""), delays("IEEE", "20 MΩ", "355 s"));
        assertEquals(List.of(), delays("IEEE", "20 MΩ", "6 min"));
        assertEquals(List.of("5 min; IEC 60871-1"), delays("IEC", "15 MΩ", "5 min"));
        assertEquals(List.of(), delays("IEC", "15 MΩ", "10 min"));
        // of a nameplate: 50 V within 8 min; or 75 V within 5 min, to 50 V then 300 s·ln(14142/50)/ln(14142/75) = 323 s
        assertEquals(List.of("7 min; \"U\""), delays("IEEE", "{to: 50 V, within: 8 min}", "7 min"));
        assertEquals(List.of("320 s; \"U\""), delays("IEEE", "{to: 75 V, within: 5 min}", "320 s"));
        assertEquals(List.of(), delays("IEEE", "{to: 75 V, within: 5 min}", "324 s"));
    }

    /** What is said of a delay: how long it is, and by what it is too short. */
    private static List<String> delays(String standard, String discharge, String after) {
        List<Problem> warnings = new LimitBank()
                .standard(standard)
                .resistor((discharge.startsWith("{") ? "discharge: " : "discharge-resistance: ") + discharge)
                .stage("connection: delta, groups: 1, units: 1, switch: Q")
                .more("""
                        isolation:
                          sources: [{name: net, at: bus}]
                          devices: [{name: Q, kind: stage-switch, between: [bus, S]}]
                          compartments: [{name: bay, exposes: [bus, S]}]
                          locks: [{device: Q, key: K, holds: open}, {door: bay, key: K}]
                          delays: [{lock: {device: Q, key: K}, after: AFTER, open: [Q]}]
                        """.replace("AFTER", after))
                .read()
                .warnings();
        return warnings.stream()
                .filter(p -> p.message() == Message.DELAY_SHORT)
                .map(p -> after + "; "
                        + (p.text().contains("resistors of \"U\"")
                                ? "\"U\""
                                : p.text().contains("IEEE Std 18") ? "IEEE Std 18" : "IEC 60871-1"))
                .toList();
    }
}
