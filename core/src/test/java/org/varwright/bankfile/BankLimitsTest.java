package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.varwright.bankfile.LimitBank.FARADS;
import static org.varwright.bankfile.LimitBank.number;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Every limit of the check at its value and a step beyond it: a limit that moves, or that is looked at from the wrong side, lets a wrong bank through. Numbers by
 * hand from units of 10 A at 10 kV, 3.1831 µF.
 */
class BankLimitsTest {
    private static final String GOOD = "";

    private static void said(String due, LimitBank bank) {
        assertEquals(due.isEmpty() ? List.of() : List.of(due.split("; ", -1)), bank.said());
    }

    /** 110 % of the rating continuously: IEEE Std 18, IEC 60871-1. Half a percent is rounding of a nameplate. */
    @Test
    void voltageOfAUnit() {
        String at = " stages[0].unit";
        for (List<String> row : List.of(
                List.of("7.49 kV", "UNIT_FAR_BELOW_RATED" + at),
                List.of("7.5 kV", GOOD),
                List.of("10 kV", GOOD),
                List.of("10.05 kV", GOOD),
                List.of("10.06 kV", "UNIT_ABOVE_RATED" + at),
                List.of("11 kV", "UNIT_ABOVE_RATED" + at),
                List.of("11.01 kV", "UNIT_OVERVOLTAGE" + at))) {
            said(
                    row.get(1),
                    new LimitBank()
                            .system(
                                    "voltage: 10 kV, maximum-voltage: 11 kV",
                                    "voltage: " + row.get(0) + ", maximum-voltage: 11.01 kV")
                            .system(
                                    "maximum-voltage: 11.01 kV",
                                    row.get(0).startsWith("7")
                                            ? "maximum-voltage: 8 kV"
                                            : "maximum-voltage: 11.01 kV"));
        }
    }

    @Test
    void theSystemsHighestVoltageAndFrequency() {
        String at = " system.maximum-voltage";
        said("MAXIMUM_BELOW_NOMINAL" + at, new LimitBank().system("11 kV", "9.99 kV"));
        said(GOOD, new LimitBank().system("11 kV", "10 kV"));
        said(GOOD, new LimitBank().system("11 kV", "13 kV"));
        said("MAXIMUM_FAR_ABOVE_NOMINAL" + at, new LimitBank().system("11 kV", "13.01 kV"));
        said(
                "UNUSUAL_FREQUENCY system.frequency",
                new LimitBank().system("50 Hz", "49 Hz").unit("50 Hz", "49 Hz"));
        said(GOOD, new LimitBank().system("50 Hz", "60 Hz").unit("50 Hz", "60 Hz"));
        said("FREQUENCY_MISMATCH stages[0].unit", new LimitBank().unit("50 Hz", "60 Hz"));
        said("FREQUENCY_MISMATCH stages[0].unit", new LimitBank().system("50 Hz", "60 Hz"));
    }

    /** 300 kvar in three legs: five times that is 1.5 MVA. */
    @Test
    void aSystemThatIsWeakBesideTheBank() {
        said(GOOD, new LimitBank().system("100 MVA", "1.5 MVA"));
        said("WEAK_SYSTEM system.short-circuit", new LimitBank().system("100 MVA", "1.499 MVA"));
    }

    /** A unit takes 10 A: a fuse carries its rating, a link of type K or T half as much again (common practice); 1.35 times is usual. */
    @Test
    void whatAFuseCarries() {
        String at = " stages[0].fuse";
        for (List<String> row : List.of(
                List.of("rating: 9.99 A", "FUSE_BELOW_UNIT" + at),
                List.of("rating: 10 A", "FUSE_NEAR_UNIT" + at),
                List.of("rating: 13.4 A", "FUSE_NEAR_UNIT" + at),
                List.of("rating: 13.5 A", GOOD),
                List.of("link: 6K", "FUSE_BELOW_UNIT" + at),
                List.of("link: 8 T", "FUSE_NEAR_UNIT" + at),
                List.of("link: 9k", GOOD),
                List.of("link: 9N, rating: 9 A", "FUSE_BELOW_UNIT" + at))) {
            said(row.get(1), fused(row.get(0), "10 kV"));
        }
        said("FUSE_VOLTAGE" + at, fused("rating: 20 A", "9.99 kV"));
        said(GOOD, fused("rating: 20 A", "10 kV"));
    }

    private static LimitBank fused(String rating, String volts) {
        return new LimitBank()
                .types("fuse-types:\n  - {name: F, kind: expulsion, maximum-parallel-energy: 15 kJ, " + rating
                        + ", voltage: " + volts + "}\n")
                .stage("connection: delta, groups: 1, units: 1, fuse: F");
    }

    /** A delta of 300 kvar at 10 kV draws 300 kvar/(√3·10 kV) = 17.32 A; 1.35 times are 23.38 A. */
    @Test
    void whatALineFuseCarriesAndInterrupts() {
        String at = " stages[0].line-fuse";
        String delta = "connection: delta, groups: 1, units: 1";
        said("LINE_FUSE_BELOW_STAGE" + at, lineFused(delta, "rating: 17.3 A", "10 kV"));
        said("LINE_FUSE_NEAR_STAGE" + at, lineFused(delta, "rating: 17.33 A", "10 kV"));
        said("LINE_FUSE_NEAR_STAGE" + at, lineFused(delta, "rating: 23.3 A", "10 kV"));
        said(GOOD, lineFused(delta, "rating: 23.4 A", "10 kV"));
        said("LINE_FUSE_VOLTAGE" + at, lineFused(delta, "rating: 25 A", "9.99 kV"));
        // against ground only where both the system and the bank are grounded: 15 kV/√3 = 8.66 kV
        String grounded = "connection: wye-grounded, groups: 1, units: 1";
        String floating = "connection: wye-ungrounded, groups: 1, units: 1";
        for (List<String> row : List.of(
                List.of(grounded, "solid", "8.7 kV", GOOD),
                List.of(grounded, "solid", "8.6 kV", "LINE_FUSE_VOLTAGE" + at),
                List.of(grounded, "resistance", "8.7 kV", "LINE_FUSE_VOLTAGE" + at),
                List.of(floating, "solid", "8.7 kV", "LINE_FUSE_VOLTAGE" + at),
                List.of(floating, "solid", "15 kV", GOOD))) {
            said(
                    row.get(3),
                    lineFused(row.get(0), "rating: 25 A", row.get(2))
                            .system("voltage: 10 kV, maximum-voltage: 11 kV", "voltage: 15 kV, maximum-voltage: 16 kV")
                            .system("solid", row.get(1)));
        }
    }

    private static LimitBank lineFused(String stage, String rating, String volts) {
        return new LimitBank()
                .types("fuse-types:\n  - {name: L, kind: current-limiting, interrupting: 40 kA, " + rating
                        + ", voltage: " + volts + "}\n")
                .stage(stage + ", line-fuse: L");
    }

    /** {@code p = ω²·L·C}: up to 1 % against inrush, 0.5 % to 20 % for detuning and filters, never half. */
    @Test
    void theShareOfAReactor() {
        String at = " stages[0].reactor.inductance";
        for (List<String> row : List.of(
                List.of("inrush", "0.0099", GOOD),
                List.of("inrush", "0.0101", "REACTOR_SHARE" + at),
                List.of("detuning", "0.0049", "REACTOR_SHARE" + at),
                List.of("detuning", "0.0051", GOOD),
                List.of("detuning", "0.199", GOOD),
                List.of("filter", "0.0049", "REACTOR_SHARE" + at),
                List.of("filter", "0.0051", GOOD),
                List.of("filter", "0.201", "REACTOR_SHARE" + at),
                List.of("filter", "0.499", "REACTOR_SHARE" + at),
                List.of("inrush", "0.501", "REACTOR_TOO_LARGE" + at),
                List.of("filter", "0.501", "REACTOR_TOO_LARGE" + at))) {
            double share = Double.parseDouble(row.get(1));
            // the wye's voltage falls with the share so that the unit has its rating: 10 kV·√3·(1 − p), and half of it
            // beyond 50 %
            double volts = 10e3 * Math.sqrt(3.0) * (1.0 - Math.min(share, 0.5));
            double henries = share / (Math.pow(2.0 * Math.PI * 50.0, 2) * FARADS);
            said(
                    row.get(2),
                    new LimitBank()
                            .system(
                                    "voltage: 10 kV, maximum-voltage: 11 kV",
                                    "voltage: " + number(volts) + " V, maximum-voltage: " + number(1.1 * volts) + " V")
                            .stage("connection: wye-ungrounded, groups: 1, units: 1, reactor: {inductance: "
                                    + number(henries) + " H, position: line, purpose: " + row.get(0) + "}"));
        }
        said(
                "NO_NEUTRAL stages[0].reactor.position",
                new LimitBank()
                        .stage(
                                "connection: delta, groups: 1, units: 1, reactor: {inductance: 10 uH, position: neutral}"));
        // mechanically it stands at least the crest of its rated current: 10 A·√2 = 14.14 A
        said(
                "REACTOR_PEAK stages[0].reactor.peak-current",
                new LimitBank()
                        .stage(
                                "connection: delta, groups: 1, units: 1, reactor: {inductance: 10 uH, position: line, current: 10 A, peak-current: 14.1 A}"));
        said(
                GOOD,
                new LimitBank()
                        .stage(
                                "connection: delta, groups: 1, units: 1, reactor: {inductance: 10 uH, position: line, current: 10 A, peak-current: 14.2 A}"));
    }

    /** IEEE Std 18-1992: 0 to +15 %. IEC 60871-1: −5 to +15 % for single units (from memory, unchecked, as the rule says). */
    @Test
    void theToleranceThatAStandardAllows() {
        String at = "TOLERANCE_WIDE unit-types[0].tolerance";
        for (List<String> row : List.of(
                List.of("IEEE", "[0 %, +15 %]", GOOD),
                List.of("IEEE", "[-0.1 %, +10 %]", at),
                List.of("IEEE", "[0 %, +15.1 %]", at),
                List.of("IEC", "[-5 %, +15 %]", GOOD),
                List.of("IEC", "[-5.1 %, +10 %]", at),
                List.of("IEC", "[-5 %, +15.1 %]", at))) {
            said(row.get(2), new LimitBank().standard(row.get(0)).unit("[0 %, +10 %]", row.get(1)));
        }
    }

    /** A reading from 0.8 to 1.4 of the nameplate is a unit, beyond it a slip of the pen; outside its tolerance it is said. */
    @Test
    void theCapacitanceOfAUnitInPlaceAndOfASpare() {
        for (List<String> row : List.of(
                List.of("0.799", "CAPACITANCE_IMPOSSIBLE"),
                List.of("0.801", "CAPACITANCE_OUT_OF_TOLERANCE"),
                List.of("0.999", "CAPACITANCE_OUT_OF_TOLERANCE"),
                List.of("1.001", GOOD),
                List.of("1.099", GOOD),
                List.of("1.101", "CAPACITANCE_OUT_OF_TOLERANCE"),
                List.of("1.399", "CAPACITANCE_OUT_OF_TOLERANCE"),
                List.of("1.401", "CAPACITANCE_IMPOSSIBLE"))) {
            String farads = number(Double.parseDouble(row.get(0)) * FARADS * 1e6) + " uF";
            String due = row.get(1);
            said(
                    due.isEmpty() ? GOOD : due + " positions[0].capacitance",
                    new LimitBank().more("positions:\n  - {at: S/AB, capacitance: " + farads + "}\n"));
            said(
                    due.isEmpty() ? GOOD : due + " spares[0].capacitance",
                    new LimitBank().more("spares:\n  - {serial: \"1\", unit: U, capacitance: " + farads + "}\n"));
        }
    }

    /** Switches: below the system's voltage an error, below its highest a warning; without a highest the nominal counts. */
    @Test
    void theVoltageOfASwitch() {
        for (List<String> row : List.of(
                List.of("9.99 kV", ", maximum-voltage: 11 kV", "SWITCH_VOLTAGE"),
                List.of("10 kV", ", maximum-voltage: 11 kV", "SWITCH_BELOW_MAXIMUM"),
                List.of("10.99 kV", ", maximum-voltage: 11 kV", "SWITCH_BELOW_MAXIMUM"),
                List.of("11 kV", ", maximum-voltage: 11 kV", GOOD),
                List.of("10 kV", "", GOOD))) {
            LimitBank bank = new LimitBank()
                    .system(", maximum-voltage: 11 kV", row.get(1))
                    .types(
                            "switch-types:\n  - {name: T, voltage: " + row.get(0)
                                    + ", current: 100 A, inrush-peak: 10 kA, inrush-frequency: 4 kHz, outrush-product: 20 kA·kHz}\n")
                    .stage("connection: delta, groups: 1, units: 1, switch: Q")
                    .more("""
                            isolation:
                              sources: [{name: net, at: bus}]
                              devices: [{name: Q, kind: stage-switch, type: T, between: [bus, S]}]
                              compartments: [{name: bay, exposes: [bus, S]}]
                              locks: [{device: Q, key: K, holds: open}, {door: bay, key: K}]
                            """);
            said(row.get(2).isEmpty() ? GOOD : row.get(2) + " isolation.devices[0].type", bank);
        }
    }

    /** 0.1 to 50 µH of wiring and 0.2 to 100 m of bus are plausible (common practice, no source). */
    @Test
    void busAndWiring() {
        for (List<String> row : List.of(
                List.of("stray-inductance: 0.099 uH", "STRAY_UNUSUAL stages[0].stray-inductance"),
                List.of("stray-inductance: 0.101 uH", GOOD),
                List.of("stray-inductance: 49.9 uH", GOOD),
                List.of("stray-inductance: 50.1 uH", "STRAY_UNUSUAL stages[0].stray-inductance"),
                List.of("bus-length: 0.19 m", "BUS_UNUSUAL stages[0].bus-length"),
                List.of("bus-length: 0.2 m", GOOD),
                List.of("bus-length: 100 m", GOOD),
                List.of("bus-length: 101 m", "BUS_UNUSUAL stages[0].bus-length"))) {
            said(row.get(1), new LimitBank().stage("connection: delta, groups: 1, units: 1, " + row.get(0)));
        }
    }
}
