package org.varwright.unbalance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.network.Banks;
import org.varwright.network.Supply;
import org.varwright.quantity.Dimension;

/** UNB-4, UNB-5 worked out again from the rows of the failure table, in the plain words of docs/theory/unbalance.md. */
class SettingsOracleTest {
    /** Every kind of bank at a voltage where some failures may run on, and at one where no first failure may. */
    @ParameterizedTest
    @EnumSource(Connection.class)
    void everySettingFollowsFromTheRows(Connection connection) {
        int seen = 0;
        for (int units = 2; units <= 14; units += 4) {
            for (double volts : new double[] {9000.0, 13000.0, 14900.0}) {
                Bank bank = Banks.plan(connection, 1, 2, units).bank();
                Unbalance unbalance = Unbalance.of(bank, Map.of(), new Supply.Balanced(volts), Assumptions.USUAL);
                for (SettingStudy study : unbalance.settings()) {
                    String what = connection + ", " + units + " units, " + volts + " V, " + study.name();
                    List<FailureRow> own = unbalance.failures().stream()
                            .filter(r ->
                                    r.kind().equals(study.kind()) && r.effect().isPresent())
                            .toList();
                    double first = own.stream()
                            .filter(r -> r.count() == 1)
                            .mapToDouble(r -> signal(study.protection(), r))
                            .min()
                            .orElse(0.0);
                    OptionalDouble allowed = own.stream()
                            .filter(r -> r.verdict() != RunVerdict.TAKE_OUT)
                            .mapToDouble(r -> signal(study.protection(), r))
                            .max();
                    OptionalDouble forbidden = own.stream()
                            .filter(r -> r.verdict() == RunVerdict.TAKE_OUT)
                            .mapToDouble(r -> signal(study.protection(), r))
                            .min();
                    int count = own.stream()
                            .filter(r -> r.verdict() == RunVerdict.TAKE_OUT)
                            .mapToInt(FailureRow::count)
                            .min()
                            .orElse(0);
                    assertEquals(first, study.firstSignal(), what);
                    assertEquals(allowed, study.lastAllowed(), what);
                    assertEquals(forbidden, study.firstForbidden(), what);
                    assertEquals(count, study.forbiddenCount().orElse(0), what);
                    assertEquals(study.error().total() > first / 2.0, study.compensated(), what);
                    boolean alone = count != 1 && first > 0.0;
                    assertEquals(alone ? OptionalDouble.of(first / 2.0) : OptionalDouble.empty(), study.alarm(), what);
                    assertEquals(trip(first, count, allowed, forbidden), study.trip(), what);
                    seen++;
                }
            }
        }
        assertTrue(seen > 10, "studies: " + seen);
    }

    private static OptionalDouble trip(double first, int count, OptionalDouble allowed, OptionalDouble forbidden) {
        if (forbidden.isEmpty() || forbidden.getAsDouble() == 0.0 || (count == 1 && first == 0.0)) {
            return OptionalDouble.empty();
        }
        if (count == 1) {
            return OptionalDouble.of(first / 2.0);
        }
        double below = allowed.orElse(0.0);
        double above = forbidden.getAsDouble();
        return OptionalDouble.of(below < above ? (below + above) / 2.0 : 0.9 * above);
    }

    private static double signal(Protection protection, FailureRow row) {
        Effect effect = row.effect().orElseThrow();
        return IntStream.range(0, effect.sensors().size())
                .filter(s -> effect.sensors().get(s).senses() == protection.senses())
                .mapToDouble(s -> effect.changes().get(s).magnitude())
                .max()
                .orElse(0.0);
    }

    /**
     * One unit of six in parallel out, wye floating: neutral voltage V·1/(3·6 − 1) of phase voltage (first principles); what the relay shows, and that
     * what another ratio would show, is said.
     */
    @Test
    void aWrongRatioIsToldByItsReading() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 6)
                .rated(100e3, 7960.0)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 8400.0, 120.0))
                .bank();
        Unbalance unbalance = Unbalance.of(bank, Map.of(), new Supply.Balanced(13800.0), Assumptions.USUAL);
        SettingStudy study = unbalance.settings().getFirst();
        double unitOut = 13800.0 / Math.sqrt(3.0) / 17.0;
        assertEquals("sections-shorted", study.kind(), "units without fuses");
        FailureRow row = unbalance.failures().stream()
                .filter(r -> r.kind().equals("unit-out") && r.count() == 1)
                .findFirst()
                .orElseThrow();
        assertEquals(unitOut, signal(study.protection(), row), 0.01);
        double atRelay = study.firstSignal() * 120.0 / 8400.0;
        String said = study.remarks().stream()
                .filter(r -> r.startsWith("Wrong transformer ratio"))
                .findFirst()
                .orElseThrow();
        for (double seen : new double[] {atRelay, 2.0 * atRelay, 0.5 * atRelay}) {
            String volts = Dimension.VOLTAGE.format(seen);
            assertTrue(said.contains(volts), volts + " in: " + said);
        }
    }
}
