package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.resonance.BankText;

/** FIT-7 and FIT-8 at their limits, at the highest voltage of the system. First principles. */
class FitLimitsTest {
    /*
     *   A  u1 u2     B  u1 u2     C  u1 u2       ungrounded wye, 13.8 kV, transformer at the neutral 60:1
     */
    private static Bank bank(String highest, String unitKilovolts, String protection) {
        return BankText.bank(BankText.system("13.8", "280", highest), """
                unit-types:
                  - {name: U, rating: 300 kvar, voltage: RATED kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
                stages:
                  - {name: S, connection: wye-ungrounded, groups: 1, units: 2, unit: U}
                """.replace("RATED", unitKilovolts) + protection);
    }

    /** Units of phase A {@code more} above all others: the neutral stands at more/(3 + more) of the voltage to neutral. */
    private static FitResult plan(Bank bank, double more) {
        double farads = bank.stages().getFirst().unit().capacitanceFarads();
        List<Fitted> units = bank.positions().stream()
                .map(p -> new Fitted(
                        p,
                        Optional.of("N-" + p.name()),
                        farads * (p.leg().equals("A") ? 1.0 + more : 1.0),
                        Fitted.From.MEASURED,
                        Fitted.Role.IMMOVABLE,
                        ""))
                .toList();
        return Fit.plan(FitBanks.input(bank, units, List.of(), FitOptions.USUAL));
    }

    private static Check check(FitResult result, String id) {
        return result.checks().stream()
                .filter(c -> c.basis().id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    /** 3 % more in A: 0.03/3.03 of 7967 V is 78.9 V at nominal voltage, 82.8 V at 14.49 kV; the relay behind 60:1 sees a sixtieth. */
    @Test
    void theAlarmAtTheHighestVoltage() {
        double seen = 0.03 / 3.03 * 13800.0 / Math.sqrt(3.0);
        assertEquals(78.885, seen, 1e-3);
        record Row(String highest, double alarm, Verdict verdict) {}
        for (Row row : List.of(
                new Row("", 80.0, Verdict.PASS),
                new Row("", 78.0, Verdict.FAIL),
                new Row(", maximum-voltage: 14.49 kV", 80.0, Verdict.FAIL),
                new Row(", maximum-voltage: 14.49 kV", 83.0, Verdict.PASS))) {
            FitResult result = plan(
                    bank(
                            row.highest(),
                            "7.9674337",
                            "protection: [{stage: S, senses: neutral-voltage, ratio: \"60:1\", alarm: "
                                    + row.alarm() / 60.0 + " V}]\n"),
                    0.03);
            Check alarm = check(result, "FIT-8");
            assertEquals(row.alarm(), alarm.limit(), 1e-9, row.toString());
            assertEquals(seen * (row.highest().isEmpty() ? 1.0 : 1.05), alarm.value(), 1e-3, row.toString());
            assertEquals(row.verdict(), alarm.verdict(), row.toString());
            assertEquals(
                    row.verdict() == Verdict.PASS ? FitResult.Outcome.COMPLETE : FitResult.Outcome.LIMIT_BROKEN,
                    result.outcome(),
                    row.toString());
        }
    }

    /** All alike, a unit bears its share of the highest voltage: 7.9674 kV·1.05 over 7.62 kV are 1.0979, over 7.6 kV 1.1007. */
    @Test
    void theVoltageAtTheHighestVoltage() {
        String high = ", maximum-voltage: 14.49 kV";
        assertEquals(1.09788, check(plan(bank(high, "7.62", ""), 0.0), "FIT-7").value(), 1e-5);
        assertEquals(
                Verdict.PASS, check(plan(bank(high, "7.62", ""), 0.0), "FIT-7").verdict());
        assertEquals(
                Verdict.FAIL, check(plan(bank(high, "7.6", ""), 0.0), "FIT-7").verdict());
        assertEquals(
                Verdict.PASS, check(plan(bank("", "7.6", ""), 0.0), "FIT-7").verdict());
        // Within the limit when alike, beyond it where the lighter phases bear more than their share.
        FitResult apart = plan(bank(high, "7.62", ""), 0.03);
        assertEquals(Verdict.FAIL, check(apart, "FIT-7").verdict());
        assertEquals(FitResult.Outcome.LIMIT_BROKEN, apart.outcome());
        assertTrue(
                check(apart, "FIT-7").subject().matches(".*at S/[BC]/u[12]"),
                check(apart, "FIT-7").subject());
    }

    /** A leg's deviation is from the mean of all legs: +2 %, −1 %, −1 % for 3 % more in one of three. */
    @Test
    void legsAgainstTheirMean() {
        List<Balance.LegReading> legs =
                plan(bank("", "7.9674337", ""), 0.03).before().legs();
        assertEquals(
                List.of("A", "B", "C"),
                legs.stream().map(Balance.LegReading::leg).toList());
        assertEquals(1.03 / 1.01 - 1.0, legs.get(0).deviation(), 1e-9);
        assertEquals(1.0 / 1.01 - 1.0, legs.get(1).deviation(), 1e-9);
        // 300 kvar at 7.967 kV are 37.65 A: two units with 3 % more at the voltage of a phase whose neutral stands at 1
        // % of it, away from A.
        double unit = 300e3 / 7967.4337;
        assertEquals(2.0 * 1.03 * unit * (1.0 - 0.03 / 3.03), legs.get(0).amperes(), 1e-3);
    }
}
