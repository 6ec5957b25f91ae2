package org.varwright.network;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.quantity.Complex;

/**
 * Values from outside. "First principles" below means: worked out independently of this code, as a second method and not an authority. The closed forms
 * are those of IEEE Std C37.99 (from memory, unchecked), worked out again from Kirchhoff's laws in docs/theory/network.md.
 */
class NetworkReferenceTest {
    private static final double CLOSED_FORM = 1e-11;

    private static Solution.Solved solve(Bank bank, double lineVolts, Failure... failures) {
        Network network = Network.of(
                bank, bank.stages().getFirst(), Capacitances.nameplate(bank), new Supply.Balanced(lineVolts));
        return assertInstanceOf(Solution.Solved.class, network.solve(List.of(failures)));
    }

    private static List<Failure> out(Bank bank, String leg, int count) {
        List<Failure> failures = new ArrayList<>();
        for (UnitPosition p : bank.positions()) {
            if (p.leg().equals(leg) && p.string() == 1 && p.group() == 1 && p.unit() <= count) {
                failures.add(new Failure.UnitOut(p));
            }
        }
        assertEquals(count, failures.size());
        return failures;
    }

    private static Solution.Solved unitsOut(Connection connection, int groups, int units, int out) {
        Bank bank = Banks.plan(connection, 1, groups, units).bank();
        String leg = connection.isDoubleWye() ? "A1" : "A";
        return solve(bank, 13800.0, out(bank, leg, out).toArray(new Failure[0]));
    }

    private static double groupPerHealthy(Solution.Solved solved) {
        return solved.groups().getFirst().perHealthy();
    }

    /**
     * Closed forms over the grid S = 1…16, P = 2…16, n = 1…3 (NET-8).
     *
     * <pre>
     *   A ─┬─‖─┬─ … S groups of P ─┐
     *   B ─…                       ├─ neutral: grounded, floating, or joined to that of a second wye
     *   C ─…                       ┘
     * </pre>
     */
    @Test
    void closedForms() {
        int cases = 0;
        for (int s = 1; s <= 16; s++) {
            for (int p = 2; p <= 16; p++) {
                for (int n = 1; n <= 3 && n < p; n++) {
                    double big = s * (double) (p - n);
                    double k = big / (big + n);
                    double phase = 13800.0 / Math.sqrt(3.0);
                    Solution.Solved grounded = unitsOut(Connection.WYE_GROUNDED, s, p, n);
                    double legAmperes = grounded.leg(Banks.STAGE, "B")
                            .orElseThrow()
                            .amperes()
                            .magnitude();
                    assertEquals(s * p / (big + n), groupPerHealthy(grounded), CLOSED_FORM * p);
                    assertEquals(
                            (1 - k) * legAmperes,
                            sensor(grounded, Protection.Senses.NEUTRAL_CURRENT).magnitude(),
                            legAmperes * CLOSED_FORM);
                    Solution.Solved floating = unitsOut(Connection.WYE_UNGROUNDED, s, p, n);
                    assertEquals(3.0 * s * p / (3 * big + 2 * n), groupPerHealthy(floating), CLOSED_FORM * p);
                    assertEquals(
                            (1 - k) / (2 + k) * phase,
                            sensor(floating, Protection.Senses.NEUTRAL_VOLTAGE).magnitude(),
                            phase * CLOSED_FORM);
                    Solution.Solved twin = unitsOut(Connection.DOUBLE_WYE_UNGROUNDED, s, p, n);
                    assertEquals(6.0 * s * p / (6 * big + 5 * n), groupPerHealthy(twin), CLOSED_FORM * p);
                    assertEquals(
                            3 * (1 - k) / (5 + k) * legAmperes,
                            sensor(twin, Protection.Senses.NEUTRAL_CURRENT).magnitude(),
                            legAmperes * CLOSED_FORM);
                    cases++;
                }
            }
        }
        assertEquals(672, cases, "16 × (1 + 2 + 13 × 3) cases");
    }

    private static Complex sensor(Solution.Solved solved, Protection.Senses senses) {
        return solved.sensors().stream()
                .filter(v -> v.senses() == senses)
                .findFirst()
                .orElseThrow()
                .primary();
    }

    /** Group voltage as a multiple of healthy (first principles). */
    @ParameterizedTest
    @CsvSource({
        "WYE_UNGROUNDED, 1, 4, 1, 1.0909", "WYE_UNGROUNDED, 1, 4, 2, 1.2000",
        "WYE_UNGROUNDED, 1, 8, 1, 1.0435", "WYE_UNGROUNDED, 1, 8, 2, 1.0909",
        "WYE_UNGROUNDED, 1, 12, 1, 1.0286", "WYE_UNGROUNDED, 1, 12, 2, 1.0588",
        "WYE_UNGROUNDED, 3, 4, 1, 1.2414", "WYE_UNGROUNDED, 3, 4, 2, 1.6364",
        "WYE_UNGROUNDED, 3, 8, 1, 1.1077", "WYE_UNGROUNDED, 3, 8, 2, 1.2414",
        "WYE_UNGROUNDED, 3, 12, 1, 1.0693", "WYE_UNGROUNDED, 3, 12, 2, 1.1489",
        "WYE_GROUNDED, 3, 4, 1, 1.2000", "WYE_GROUNDED, 3, 4, 2, 1.5000",
        "WYE_GROUNDED, 3, 8, 1, 1.0909", "WYE_GROUNDED, 3, 8, 2, 1.2000",
        "WYE_GROUNDED, 3, 12, 1, 1.0588", "WYE_GROUNDED, 3, 12, 2, 1.1250",
        "WYE_GROUNDED, 5, 4, 1, 1.2500", "WYE_GROUNDED, 5, 4, 2, 1.6667",
        "WYE_GROUNDED, 5, 8, 1, 1.1111", "WYE_GROUNDED, 5, 8, 2, 1.2500",
        "WYE_GROUNDED, 5, 12, 1, 1.0714", "WYE_GROUNDED, 5, 12, 2, 1.1538",
        "DOUBLE_WYE_UNGROUNDED, 2, 4, 1, 1.1707", "DOUBLE_WYE_UNGROUNDED, 2, 4, 2, 1.4118",
        "DOUBLE_WYE_UNGROUNDED, 2, 8, 1, 1.0787", "DOUBLE_WYE_UNGROUNDED, 2, 8, 2, 1.1707"
    })
    void groupVoltages(Connection connection, int groups, int units, int out, double multiple) {
        assertEquals(multiple, groupPerHealthy(unitsOut(connection, groups, units, out)), 5e-5);
    }

    /** Double wye, S = 2: neutral current over unit current (first principles). */
    @ParameterizedTest
    @CsvSource({"4, 1, 0.2927", "4, 2, 0.7059", "8, 1, 0.2697", "8, 2, 0.5854"})
    void doubleWyeNeutralCurrent(int units, int out, double perUnit) {
        Solution.Solved solved = unitsOut(Connection.DOUBLE_WYE_UNGROUNDED, 2, units, out);
        Bank bank = Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 2, units).bank();
        double unitAmperes = solve(bank, 13800.0).units().getFirst().amperes().magnitude();
        assertEquals(perUnit, sensor(solved, Protection.Senses.NEUTRAL_CURRENT).magnitude() / unitAmperes, 5e-5);
    }

    /** Least P for one unit out to stay within 1.10 (first principles; a table of this shape is in IEEE Std 1036, unchecked). */
    @ParameterizedTest
    @CsvSource({
        "WYE_GROUNDED, 2, 6",
        "WYE_GROUNDED, 3, 8",
        "WYE_GROUNDED, 4, 9",
        "WYE_GROUNDED, 5, 9",
        "WYE_GROUNDED, 6, 10",
        "WYE_UNGROUNDED, 1, 4",
        "WYE_UNGROUNDED, 2, 8",
        "WYE_UNGROUNDED, 3, 9",
        "WYE_UNGROUNDED, 4, 10",
        "WYE_UNGROUNDED, 5, 10",
        "WYE_UNGROUNDED, 6, 10",
        "DOUBLE_WYE_UNGROUNDED, 1, 2",
        "DOUBLE_WYE_UNGROUNDED, 2, 7",
        "DOUBLE_WYE_UNGROUNDED, 3, 8",
        "DOUBLE_WYE_UNGROUNDED, 4, 9",
        "DOUBLE_WYE_UNGROUNDED, 5, 10",
        "DOUBLE_WYE_UNGROUNDED, 6, 10"
    })
    void leastUnitsInParallel(Connection connection, int groups, int least) {
        assertTrue(groupPerHealthy(unitsOut(connection, groups, least, 1)) <= 1.10 + 1e-9);
        if (least > 2) {
            assertTrue(groupPerHealthy(unitsOut(connection, groups, least - 1, 1)) > 1.10 + 1e-9);
        }
    }

    /** S = 11, P = 10, grounded: exactly 1.1000 (first principles). */
    @Test
    void exactlyAtTheLimit() {
        assertEquals(1.1, groupPerHealthy(unitsOut(Connection.WYE_GROUNDED, 11, 10, 1)), 1e-12);
    }

    /** UNB-001: 34.5 kV, 2 groups of 10, V_LN 20 000 V, units of 9.96 kV (first principles). */
    @ParameterizedTest
    @CsvSource({"1, 10714, 1.0757, 357.1, 1.07143, 0.0178571", "2, 11538, 1.1585, 769.2, 1.15385, 0.0384615"})
    void twoGroupsOfTen(
            int out, double groupVolts, double perRated, double neutral, double perHealthy, double perUnit) {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 2, 10)
                .at(20000.0 * Math.sqrt(3.0), 60.0)
                .rated(200e3, 9960.0)
                .bank();
        Solution.Solved solved =
                solve(bank, 20000.0 * Math.sqrt(3.0), out(bank, "A", out).toArray(new Failure[0]));
        Solution.GroupValue group = solved.groups().getFirst();
        assertEquals(groupVolts, group.volts().magnitude(), 0.5);
        assertEquals(perRated, group.perRated(), 1e-4);
        assertEquals(perHealthy, group.perHealthy(), 1e-5);
        assertEquals(neutral, solved.neutrals().getFirst().volts().magnitude(), 0.05);
        assertEquals(perUnit, solved.neutrals().getFirst().volts().magnitude() / 20000.0, 1e-7);
    }

    /** UNB-004: two units a phase, 7200 V, one out: survivor 1.2, neutral 1440 V (first principles). */
    @Test
    void twoUnitsAPhase() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2)
                .rated(200e3, 7200.0)
                .bank();
        Solution.Solved solved =
                solve(bank, 7200.0 * Math.sqrt(3.0), out(bank, "A", 1).toArray(new Failure[0]));
        assertEquals(1.2, solved.highestGroupPerHealthy(), 1e-9);
        assertEquals(1440.0, solved.neutrals().getFirst().volts().magnitude(), 1e-6);
    }

    /** UNB-006: one of four 200 kvar 7.2 kV units out at 12.47 kV, grounded and ungrounded (first principles). */
    @Test
    void oneOfFourOut() {
        Banks.Plan grounded = Banks.plan(Connection.WYE_GROUNDED, 1, 1, 4).rated(200e3, 7200.0);
        Bank g = grounded.bank();
        Solution.Solved sg = solve(g, 12470.0, out(g, "A", 1).toArray(new Failure[0]));
        assertLines(sg, 83.33, 111.11, 111.11);
        assertEquals(27.78, sensor(sg, Protection.Senses.NEUTRAL_CURRENT).magnitude(), 27.78e-3);
        Bank u = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 4)
                .rated(200e3, 7200.0)
                .bank();
        Solution.Solved su = solve(u, 12470.0, out(u, "A", 1).toArray(new Failure[0]));
        assertLines(su, 90.91, 106.42, 106.42);
        assertEquals(654.5, sensor(su, Protection.Senses.NEUTRAL_VOLTAGE).magnitude(), 0.65);
        assertEquals(7854.55, su.leg(Banks.STAGE, "A").orElseThrow().volts().magnitude(), 7.85);
        assertEquals(6896.06, su.leg(Banks.STAGE, "B").orElseThrow().volts().magnitude(), 6.9);
    }

    private static void assertLines(Solution.Solved solved, double a, double b, double c) {
        double[] expected = {a, b, c};
        for (int p = 0; p < 3; p++) {
            assertEquals(expected[p], solved.lines().get(p).amperes().magnitude(), expected[p] * 1e-3);
        }
    }

    /** UNB-008: double wye, four 100 kvar 7.96 kV a phase and half, 13.8 kV, one out, CT 50:5 (first principles). */
    @Test
    void doubleWyeOneOut() {
        Bank bank = Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 1, 4)
                .rated(100e3, 7960.0)
                .sensing(
                        Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 50.0, 5.0),
                        Banks.sensor(Protection.Senses.NEUTRAL_VOLTAGE, 8400.0, 120.0))
                .bank();
        Solution.Solved solved = solve(bank, 13800.0, out(bank, "A1", 1).toArray(new Failure[0]));
        Solution.SensorValue current = solved.sensors().get(0);
        assertEquals(6.56063, current.primary().magnitude(), 6.56063e-3);
        assertEquals(0.656063, current.secondary().orElseThrow().magnitude(), 0.656063e-3);
        assertEquals(1.04348, solved.highestGroupPerHealthy(), 1e-5);
        assertEquals(346.41, solved.sensors().get(1).primary().magnitude(), 0.3464);
    }

    /** UNB-010: one bank fuse open, 12.47 kV: kvar left, neutral, other phases (first principles). */
    @Test
    void onePoleOpen() {
        Failure open = new Failure.PhaseOpen(Banks.STAGE, "A");
        assertEquals(0.5, varsLeft(Connection.WYE_UNGROUNDED, open), 1e-9);
        assertEquals(2.0 / 3.0, varsLeft(Connection.WYE_GROUNDED, open), 1e-9);
        assertEquals(0.5, varsLeft(Connection.DELTA, open), 1e-9);
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 2).bank();
        Solution.Solved solved = solve(bank, 12470.0, open);
        double phase = 12470.0 / Math.sqrt(3.0);
        assertEquals(0.5, solved.neutrals().getFirst().volts().magnitude() / phase, 1e-9);
        assertEquals(
                0.866025, solved.leg(Banks.STAGE, "B").orElseThrow().volts().magnitude() / phase, 1e-6);
        // The load side of the open fuse floats to the neutral: about 3600 V to ground, and it is not dead.
        assertEquals(3600.0, solved.lines().getFirst().volts().magnitude(), 3.6);
    }

    /** UNB-012: half of phase voltage at the neutral with one pole not closed; 3326 V reported at 11.5 kV (MSHA fatality investigation report, 2001). */
    @ParameterizedTest
    @CsvSource({"11500, 3319.76", "12000, 3464.10", "12470, 3599.78"})
    void neutralWithOnePoleNotClosed(double lineVolts, double neutral) {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 1).bank();
        Solution.Solved solved = solve(bank, lineVolts, new Failure.PhaseOpen(Banks.STAGE, "B"));
        assertEquals(neutral, solved.neutrals().getFirst().volts().magnitude(), 0.01);
        if (lineVolts == 11500.0) {
            assertEquals(3326.0, solved.neutrals().getFirst().volts().magnitude(), 3326.0 * 0.05);
        }
    }

    private static double varsLeft(Connection connection, Failure failure) {
        Bank bank = Banks.plan(connection, 1, 1, 2).bank();
        return solve(bank, 12470.0, failure).stages().getFirst().vars()
                / solve(bank, 12470.0).stages().getFirst().vars();
    }

    /** UNB-014: six-position double wye, 13.8 kV, 60 Hz, neutral current as found and at best (first principles). */
    @ParameterizedTest
    @CsvSource({"4.18 4.30 4.36 4.40 4.21 4.25, 0.48127", "4.30 4.21 4.40 4.25 4.18 4.36, 0.0251232"})
    void sixPositions(String microfarads, double amperes) {
        Bank bank = Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 1, 1).bank();
        Capacitances values = Capacitances.nameplate(bank);
        List<String> each = List.of(microfarads.split(" ", -1));
        for (int i = 0; i < 6; i++) {
            values = values.with(bank.positions().get(i), Double.parseDouble(each.get(i)) * 1e-6);
        }
        LegState state = LegModel.of(bank, bank.stages().getFirst(), new Supply.Balanced(13800.0))
                .evaluate(values);
        Solution.Solved solved = assertInstanceOf(
                Solution.Solved.class,
                Network.of(bank, bank.stages().getFirst(), values, new Supply.Balanced(13800.0))
                        .healthy());
        assertEquals(amperes, sensor(solved, Protection.Senses.NEUTRAL_CURRENT).magnitude(), amperes * 1e-3);
        assertEquals(amperes, state.sensors().get(1).magnitude(), amperes * 1e-3);
    }

    /** Delta of 600, 800, 800 kvar at 7.2 kV: lines 168.97, 168.97, 192.45 A (first principles). */
    @Test
    void unequalDelta() {
        Bank bank = Banks.plan(Connection.DELTA, 1, 1, 4)
                .rated(200e3, 7200.0)
                .at(7200.0, 60.0)
                .bank();
        Solution.Solved solved = solve(bank, 7200.0, out(bank, "AB", 1).toArray(new Failure[0]));
        assertLines(solved, 168.97, 168.97, 192.45);
    }

    /** A whole group shorted, ungrounded: that phase's current × 3, 1.5, 1.2857, 1.2, 1.1538; S = 1: other phases at √3 (first principles). */
    @ParameterizedTest
    @CsvSource({"1, 3", "2, 1.5", "3, 1.2857", "4, 1.2", "5, 1.1538"})
    void groupShorted(int groups, double multiple) {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, groups, 2).bank();
        Solution.Solved healthy = solve(bank, 13800.0);
        Solution.Solved solved =
                solve(bank, 13800.0, new Failure.UnitShorted(bank.positions().getFirst()));
        assertEquals(
                multiple,
                solved.lines().getFirst().amperes().magnitude()
                        / healthy.lines().getFirst().amperes().magnitude(),
                5e-5);
        if (groups == 1) {
            assertEquals(Math.sqrt(3.0), solved.highestGroupPerHealthy(), 1e-9);
        }
    }

    /** Bridge: I_bridge/I_phase = C1/(C1+C2) − C3/(C3+C4), 1 and 2 top left and right, 3 and 4 bottom (first principles). */
    @Test
    void bridgeCurrent() {
        Bank bank = Banks.plan(Connection.BRIDGE_UNGROUNDED, 1, 1, 1).bank();
        Capacitances values = Capacitances.nameplate(bank);
        double[] c = {30e-6, 33e-6, 31e-6, 28e-6}; // ul, ll, ur, lr
        for (int q = 0; q < 4; q++) {
            values = values.with(bank.positions().get(q), c[q]);
        }
        Solution.Solved solved = assertInstanceOf(
                Solution.Solved.class,
                Network.of(bank, bank.stages().getFirst(), values, new Supply.Balanced(13800.0))
                        .healthy());
        double expected = c[0] / (c[0] + c[2]) - c[1] / (c[1] + c[3]);
        assertEquals(
                expected,
                sensor(solved, Protection.Senses.BRIDGE_CURRENT)
                        .dividedBy(solved.lines().getFirst().amperes())
                        .re(),
                1e-12);
    }

    /** Fuseless string of 42 elements, k shorted: 1.0244, 1.1053, 1.2353 on the rest (first principles). 14 units of 3 sections stand in for it. */
    @ParameterizedTest
    @CsvSource({"1, 1.0244", "4, 1.1053", "8, 1.2353"})
    void fuselessString(int shorted, double multiple) {
        // The unit of these banks has 4 sections: 42 elements are 10 units of 4 and 2 sections that are shorted in
        // "healthy".
        Bank bank = Banks.plan(Connection.WYE_GROUNDED, 3, 11, 1).bank();
        List<UnitPosition> string = bank.positions().stream()
                .filter(p -> p.leg().equals("A") && p.string() == 1)
                .toList();
        List<Failure> before = new ArrayList<>(List.of(new Failure.SectionsShorted(string.getLast(), 2)));
        List<Failure> after = new ArrayList<>(before);
        for (int k = 0; k < shorted; k++) {
            after.add(new Failure.SectionsShorted(string.get(k), 1));
        }
        double healthy = highestOf(solve(bank, 13800.0, before.toArray(new Failure[0])), string.getLast());
        double failed = highestOf(solve(bank, 13800.0, after.toArray(new Failure[0])), string.getLast());
        assertEquals(multiple, failed / healthy, 5e-5);
    }

    private static double highestOf(Solution.Solved solved, UnitPosition position) {
        return solved.unit(UnitBranch.of(position)).orElseThrow().sectionPerRated();
    }

    /** Inside a unit (first principles): sections shorted × S/(S−k); element fuses (4,10): 0.97297, survivors s·n/(s(n−1)+1). */
    @Test
    void insideAUnit() {
        Bank bank = Banks.plan(Connection.WYE_GROUNDED, 1, 1, 1).bank();
        double rated = bank.unitTypes().getFirst().capacitanceFarads();
        UnitPosition at = bank.positions().getFirst();
        Solution.UnitValue shorted =
                solve(bank, 13800.0, new Failure.SectionsShorted(at, 1)).units().getFirst();
        assertEquals(1.3333, shorted.farads() / rated, 5e-5);
        assertEquals(4.0 / 3.0, shorted.sectionPerRated(), 1e-9);
        Solution.UnitValue fused =
                solve(bank, 13800.0, new Failure.ElementsOut(at, 1)).units().getFirst();
        assertEquals(0.97297, fused.farads() / rated, 5e-6);
        assertEquals(40.0 / 37.0, fused.sectionPerRated(), 1e-9);
    }

    /** KV-001, 003, 005, 008: output at another voltage and frequency (first principles). */
    @ParameterizedTest
    @CsvSource({
        "100, 440, 60, 380, 60, 74.5868",
        "70, 480, 60, 400, 50, 40.5093",
        "10, 400, 60, 200, 60, 2.5",
        "200, 7200, 60, 6350.8529610858835, 50, 129.672"
    })
    void outputAtAnotherVoltage(double kvar, double rated, double ratedHz, double volts, double hz, double expected) {
        Banks.Plan plan = Banks.plan(Connection.WYE_GROUNDED, 1, 1, 1)
                .rated(kvar * 1e3, rated)
                .at(volts, ratedHz);
        Bank nameplate = plan.bank();
        double farads = nameplate.unitTypes().getFirst().capacitanceFarads();
        Bank bank = plan.at(volts, hz).bank();
        Capacitances values = Capacitances.nameplate(bank);
        for (UnitPosition p : bank.positions()) {
            values = values.with(p, farads);
        }
        Solution.Solved solved = assertInstanceOf(
                Solution.Solved.class,
                Network.of(bank, bank.stages().getFirst(), values, new Supply.Balanced(volts * Math.sqrt(3.0)))
                        .healthy());
        assertEquals(expected, solved.stages().getFirst().vars() / 3e3, expected * 1e-3);
    }

    /** KV-007: 25 kvar 7.2 kV: 3.47222 A, at +10 % C and +5 % V 4.01042 A (first principles). */
    @Test
    void worstUnitCurrent() {
        Bank bank =
                Banks.plan(Connection.WYE_GROUNDED, 1, 1, 1).rated(25e3, 7200.0).bank();
        assertEquals(
                3.47222,
                solve(bank, 7200.0 * Math.sqrt(3.0))
                        .units()
                        .getFirst()
                        .amperes()
                        .magnitude(),
                3.5e-5);
        Solution.Solved worst = assertInstanceOf(
                Solution.Solved.class,
                Network.of(
                                bank,
                                bank.stages().getFirst(),
                                Capacitances.nameplate(bank).times(1.1),
                                new Supply.Balanced(7200.0 * 1.05 * Math.sqrt(3.0)))
                        .healthy());
        assertEquals(4.01042, worst.units().getFirst().amperes().magnitude(), 4e-5);
    }

    /** Bank error: 1 % of capacitance and 0.5 % of the system at 20 kV: 66.7 + 33.3 V at the neutral (UNB-002, first principles, to first order). */
    @Test
    void inherentUnbalance() {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 1).bank();
        double v = 20000.0;
        Capacitances off = Capacitances.nameplate(bank);
        off = off.with(
                bank.positions().getFirst(),
                off.farads(UnitBranch.of(bank.positions().getFirst())) * 1.01);
        LegModel balanced = LegModel.of(bank, bank.stages().getFirst(), new Supply.Balanced(v * Math.sqrt(3.0)));
        assertEquals(66.67, balanced.evaluate(off).neutralVolts().magnitude(), 0.3);
        Supply uneven =
                new Supply.Measured(Complex.polar(v * 1.005, 0.0), Complex.polar(v, -120.0), Complex.polar(v, 120.0));
        assertEquals(
                33.33,
                LegModel.of(bank, bank.stages().getFirst(), uneven)
                        .evaluate(Capacitances.nameplate(bank))
                        .neutralVolts()
                        .magnitude(),
                0.01);
    }

    /** 600 kvar at 12.47 kV: X_C 259.168 Ω a phase, 27.78 A (first principles); inside a three-phase unit with a delta the same lines. */
    @Test
    void threePhaseUnitsDrawTheSameLines() {
        for (InternalConnection internal : InternalConnection.values()) {
            Connection connection = internal == InternalConnection.DELTA ? Connection.DELTA : Connection.WYE_UNGROUNDED;
            Bank bank = Banks.plan(connection, 1, 1, 1)
                    .cans(internal)
                    .rated(600e3, 12470.0)
                    .at(12470.0, 60.0)
                    .bank();
            Solution.Solved solved = solve(bank, 12470.0);
            assertEquals(27.78, solved.lines().getFirst().amperes().magnitude(), 0.01);
            assertEquals(600e3, solved.stages().getFirst().vars(), 1e-3);
            assertEquals(1.0, solved.highestUnitPerRated(), 1e-9);
        }
    }

    /** Second wye of another size: its legs are solved with their own layout. */
    @Test
    void unequalWyes() {
        Bank bank = Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 2, 4)
                .second(new LegLayout(1, 2, 2))
                .bank();
        Solution.Solved solved = solve(bank, 13800.0);
        Stage stage = bank.stages().getFirst();
        assertEquals(36, stage.positions().size());
        assertEquals(
                2.0,
                solved.leg(Banks.STAGE, "A1").orElseThrow().amperes().magnitude()
                        / solved.leg(Banks.STAGE, "A2").orElseThrow().amperes().magnitude(),
                1e-9);
        assertEquals(0.0, sensor(solved, Protection.Senses.NEUTRAL_CURRENT).magnitude(), 1e-9);
    }

    /** Line-to-line voltages close a triangle around ground; magnitudes come back. */
    @Test
    void lineVoltagesAsPhasors() {
        List<Complex> v = Supply.ofLineVolts(13900.0, 13700.0, 13800.0).phaseVolts();
        assertEquals(13900.0, v.get(0).minus(v.get(1)).magnitude(), 1e-9);
        assertEquals(13700.0, v.get(1).minus(v.get(2)).magnitude(), 1e-9);
        assertEquals(13800.0, v.get(2).minus(v.get(0)).magnitude(), 1e-9);
        assertEquals(0.0, v.get(0).degrees(), 1e-12);
        assertTrue(v.get(1).degrees() < -119.0 && v.get(1).degrees() > -121.0, "sequence A-B-C: " + v);
        assertEquals(0.0, v.get(0).plus(v.get(1)).plus(v.get(2)).magnitude(), 1e-9);
    }
}
