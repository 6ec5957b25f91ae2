package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.LegLayout;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.resonance.BankText;

/** Verdicts of the discharge at their limits, and what may stand between the units and their discharge path. */
class CourseChecksTest {
    private static Check check(Discharge discharge, String subject) {
        return discharge.checks().stream()
                .filter(c -> c.subject().contains(subject))
                .findFirst()
                .orElseThrow(() -> new AssertionError(subject + " is not among " + discharge.checks()));
    }

    private static final String DEVICES = """
            isolation:
              sources: [{name: feeder, at: line}]
              compartments: [{name: bay, exposes: [bus]}]
              devices:
                - {name: 52, kind: breaker, between: [line, bus]}
                - {name: 24, kind: stage-switch, between: [bus, S]}
                - {name: 57, kind: grounding-switch, between: [S, ground]}
            """;

    private static Bank withPath(String unit, String stage, String devices) {
        return BankText.bank(BankText.system("12.47", "210", ""), """
                unit-types: [{name: U, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %%, 0 %%]%s}]
                fuse-types: [{name: F, kind: expulsion, link: 40K, voltage: 8.3 kV}, {name: L, kind: current-limiting, rating: 100 A, voltage: 15.5 kV}]
                stages:
                  - {name: S, connection: wye-ungrounded, switch: "24", groups: 1, units: 2, unit: U%s, discharge-path: {kind: coil, between: lines, resistance: 2 kΩ, inductance: 900 H}}
                %s
                """.formatted(unit, stage, devices));
    }

    /**
     * Source of the rule: GB 50053-2013 §5.2, no switch or fuse between a bank and its discharge device.
     *
     * <pre>
     *   bus ──24── S ──(line fuse)──(unit fuses)── units      the stage's own switch and its grounding switch don't count;
     *              └──(89)── where the path may hang          a second switch at S does: which side is the path on?
     * </pre>
     */
    @Test
    void whatStandsBetweenUnitsAndPathIsCounted() {
        String resistor = ", discharge-resistance: 4 MΩ";
        String second = DEVICES.strip() + "\n    - {name: 89, kind: disconnector, between: [S, coil]}\n";
        String reversed = DEVICES.strip() + "\n    - {name: 89, kind: disconnector, between: [coil, S]}\n";
        record Row(String unit, String stage, String devices, int count, Verdict verdict) {}
        for (Row row : List.of(
                new Row(resistor, "", DEVICES, 0, Verdict.PASS),
                new Row("", "", DEVICES, 0, Verdict.PASS),
                new Row(resistor, ", fuse: F", DEVICES, 1, Verdict.WARN),
                new Row("", ", fuse: F", DEVICES, 1, Verdict.FAIL),
                new Row(resistor, ", line-fuse: L", DEVICES, 1, Verdict.WARN),
                new Row("", ", line-fuse: L", DEVICES, 1, Verdict.FAIL),
                new Row(resistor, "", second, 1, Verdict.WARN),
                new Row("", "", second, 1, Verdict.FAIL),
                new Row("", "", reversed, 1, Verdict.FAIL),
                new Row("", ", fuse: F", second, 2, Verdict.FAIL))) {
            Check check = check(
                    Discharge.of(withPath(row.unit, row.stage, row.devices), Optional.empty()),
                    "may stand between the units and their discharge coil");
            assertEquals(row.count, check.value(), row.toString());
            assertEquals(row.verdict, check.verdict(), row.toString());
            assertEquals(row.count > 0, !check.basis().terms().isEmpty(), row.toString());
        }
    }

    private static Bank bank(double ohms, OptionalDouble reclose) {
        UnitType type = BankSketch.type(
                "U",
                200e3,
                7200,
                60,
                new Tolerance(0.0, 0.0),
                0,
                0,
                false,
                Optional.of(new DischargeDevice.Resistor(ohms)));
        BankSketch sketch = new BankSketch()
                .system(12.47e3, 60, SystemGrounding.SOLID)
                .stage("s", Connection.WYE_GROUNDED, new LegLayout(1, 1, 1), type);
        reclose.ifPresent(sketch::reclose);
        return sketch.build();
    }

    /**
     * Worked by hand: C = 200e3/(2π·60·7200²) = 10.2337 µF, v0 = √2·1.1·12470/√3 = 11 199.9 V (above √2·7200), R·C = 1.1·R·C.
     * To 10 % of the peak in service ln(10) = 2.302585 time constants, to 10 % of rated voltage (720 V) ln(11 199.9/720) = 2.744453.
     */
    @Test
    void reclosingJustBeforeAndAfter() {
        double tau = 1.1 * 4e6 * 200e3 / (2.0 * Math.PI * 60.0 * 7200.0 * 7200.0);
        record Row(double seconds, Verdict peak, Verdict rated) {}
        for (Row row : List.of(
                new Row(2.3025 * tau, Verdict.FAIL, Verdict.WARN),
                new Row(2.3027 * tau, Verdict.PASS, Verdict.WARN),
                new Row(2.7444 * tau, Verdict.PASS, Verdict.WARN),
                new Row(2.7446 * tau, Verdict.PASS, Verdict.PASS))) {
            Discharge discharge = Discharge.of(bank(4e6, OptionalDouble.of(row.seconds)), Optional.empty());
            assertEquals(row.peak, check(discharge, "down to 10 % of peak").verdict(), row.toString());
            assertEquals(row.rated, check(discharge, "down to 10 % of rated").verdict(), row.toString());
        }
        assertEquals(
                OptionalDouble.empty(),
                Discharge.of(bank(4e6, OptionalDouble.empty()), Optional.empty())
                        .courses()
                        .getFirst()
                        .reclosing()
                        .orElseThrow()
                        .delaySeconds());
    }

    /** The voltage at a moment and the wait are judged each by itself: a quick resistor is below 50 V long before the 5 min are over. */
    @Test
    void voltageAndWaitAreTwoThings() {
        double tau = 1.1 * 1e6 * 200e3 / (2.0 * Math.PI * 60.0 * 7200.0 * 7200.0);
        double v0 = Math.sqrt(2.0 / 3.0) * 1.1 * 12470.0;
        double reached = tau * Math.log(v0 / 50.0);
        record Row(double seconds, Verdict volts, Verdict waited) {}
        for (Row row : List.of(
                new Row(0.999 * reached, Verdict.FAIL, Verdict.FAIL),
                new Row(1.001 * reached, Verdict.PASS, Verdict.FAIL),
                new Row(299.9, Verdict.PASS, Verdict.FAIL),
                new Row(300.0, Verdict.PASS, Verdict.PASS),
                new Row(400.0, Verdict.PASS, Verdict.PASS))) {
            Discharge discharge =
                    Discharge.of(bank(1e6, OptionalDouble.empty()), Question.NOTHING_MORE.after(row.seconds));
            assertEquals(
                    row.volts, check(discharge, "s: voltage of a unit after").verdict(), row.toString());
            assertEquals(row.waited, check(discharge, "s: time waited").verdict(), row.toString());
            Residual left = discharge.courses().getFirst().after().orElseThrow();
            assertEquals(v0 * Math.exp(-row.seconds / tau), left.volts(), 1e-6 * v0);
            assertEquals(Math.max(0.0, 300.0 - row.seconds), left.missingSeconds(), 1e-9);
            double joules = 0.5 * 10.23374e-6 * left.volts() * left.volts();
            assertEquals(joules, left.joules(), 1e-4 * joules);
            // two phases of a grounded wye may stand at either sign
            assertEquals(2.0 * left.volts(), left.betweenConductorsVolts(), 1e-9 * v0);
        }
    }

    /** LBNL Electrical Safety Manual, table 2.2.13: a shock hazard from 100 V and 10 J on; below either of them none. */
    @Test
    void energyAtTheEndOfTheWait() {
        record Row(double volts, double joules, Verdict verdict) {}
        for (Row row : List.of(
                new Row(99.0, 500.0, Verdict.PASS),
                new Row(100.0, 9.9, Verdict.PASS),
                new Row(100.0, 10.0, Verdict.FAIL),
                new Row(400.0, 10.0, Verdict.FAIL),
                new Row(50.0, 1.0, Verdict.PASS))) {
            Bank bank = bank(4e6, OptionalDouble.empty());
            StageDischarge s = Discharge.of(bank, Optional.empty()).stages().getFirst();
            StageDischarge at = new StageDischarge(
                    s.stage(),
                    s.capacitanceFarads(),
                    s.capacitanceFrom(),
                    s.resistance(),
                    s.opening(),
                    s.chosen(),
                    s.other(),
                    s.chosenSeconds(),
                    s.otherSeconds(),
                    s.shortedSectionSeconds(),
                    s.waitSeconds(),
                    s.waitBasis(),
                    s.unitPeakJoules(),
                    row.joules,
                    s.stagePeakJoules(),
                    s.stageEndJoules(),
                    row.volts,
                    s.betweenConductorsVolts(),
                    s.absorptionVolts(),
                    s.openResistorVolts(),
                    s.hiddenVolts(),
                    s.residualPercent(),
                    s.recloseSeconds(),
                    s.stickNeeded());
            Check check = DischargeChecks.of(bank, at, Optional.empty()).stream()
                    .filter(c -> c.subject().contains("energy of a unit at the end"))
                    .findFirst()
                    .orElseThrow();
            assertEquals(row.verdict, check.verdict(), row.toString());
        }
    }

    /** With a grounded neutral windings between lines leave what all lines hold in common. */
    @Test
    void windingsBetweenLinesAreHeldAgainstTheSafeVoltage() {
        Bank grounded = BankText.bank(BankText.system("12.47", "210", ""), """
                unit-types: [{name: U, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, 0 %], discharge-resistance: 4 MΩ}]
                stages:
                  - {name: S, connection: bridge-grounded, groups: 1, units: 2, unit: U, discharge-path: {kind: transformer, between: lines, resistance: 2 kΩ}}
                """);
        Discharge discharge = Discharge.of(grounded, Optional.empty());
        Check check = check(discharge, "what windings between lines leave on every leg");
        // ΣQ/ΣC of three legs at 1, 1 and −1 of the peak: a third of it, on the whole phase of two quarters
        double peak = Math.sqrt(2.0 / 3.0) * 1.1 * 12470.0;
        assertEquals(peak / 3.0, check.value(), 1e-3 * peak);
        assertEquals(50.0, check.limit());
        assertEquals(Verdict.WARN, check.verdict());
        assertTrue(Discharge.of(bank(4e6, OptionalDouble.empty()), Optional.empty()).checks().stream()
                .noneMatch(c -> c.subject().contains("windings")));
    }
}
