package org.varwright.fuse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.FuseType;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/** FUS-5, FUS-7, FUS-8 and FUS-10 at their limits, by hand: units of 200 kvar, 7.2 kV, 60 Hz, 27.778 A, on 12.4708 kV. First principles; limits named beside. */
class FuseLimitsTest {
    private static final double LINE = 7200.0 * Math.sqrt(3.0);
    private static final double AMPERES = 200e3 / 7200.0;

    private static FuseType fuse(double amperes, double volts, OptionalDouble joules) {
        return new FuseType(
                "F",
                FuseType.Kind.CURRENT_LIMITING,
                Optional.empty(),
                OptionalDouble.of(amperes),
                OptionalDouble.of(volts),
                joules,
                Optional.empty());
    }

    private static SupplySystem system(OptionalDouble highest, SystemGrounding grounding) {
        return new SupplySystem(LINE, highest, 60.0, OptionalDouble.of(100e6), OptionalDouble.of(10.0), grounding);
    }

    private static Bank bank(
            Standard standard, SupplySystem system, Connection connection, FusePlace place, FuseType f) {
        return FuseBanks.bank(
                standard,
                system,
                FuseBanks.stage(
                        "s",
                        connection,
                        new LegLayout(1, 1, 2),
                        FuseBanks.unit(200e3, 7200.0, 60.0),
                        place == FusePlace.UNIT ? Optional.of(f) : Optional.empty(),
                        place == FusePlace.LINE ? Optional.of(f) : Optional.empty()));
    }

    private static List<Check> checks(Bank bank, String id) {
        return Fuses.of(bank, FuseOptions.AS_FILED).checks().stream()
                .filter(c -> c.basis().id().equals(id))
                .toList();
    }

    private static void rating(Standard standard, Connection connection, FusePlace place, double multiple) {
        double current = AMPERES * (place == FusePlace.LINE ? 2.0 : 1.0);
        record Row(double part, Verdict verdict) {}
        // Within 0.1 % of what it must carry a fuse stands at the edge: nothing is left for tolerance.
        for (Row row : List.of(
                new Row(0.998, Verdict.FAIL),
                new Row(0.9995, Verdict.WARN),
                new Row(1.0005, Verdict.WARN),
                new Row(1.002, Verdict.PASS))) {
            Check check = checks(
                            bank(
                                    standard,
                                    system(OptionalDouble.empty(), SystemGrounding.SOLID),
                                    connection,
                                    place,
                                    fuse(row.part() * multiple * current, 20e3, OptionalDouble.of(1e6))),
                            "FUS-5")
                    .getFirst();
            assertEquals(multiple * current, check.limit(), 1e-4 * current, standard + " " + connection);
            assertEquals(row.verdict(), check.verdict(), standard + " " + connection + " " + row);
        }
    }

    /** IEEE Std 18: 1.35 of a unit's current; GB 50053: 1.37; in the line 1.25 behind a floating neutral, else 1.35 (IEEE Std C37.48), 1.43 by IEC. */
    @Test
    void whatAFuseMustCarry() {
        rating(Standard.IEEE, Connection.WYE_UNGROUNDED, FusePlace.UNIT, 1.35);
        rating(Standard.IEC, Connection.WYE_UNGROUNDED, FusePlace.UNIT, 1.37);
        rating(Standard.IEEE, Connection.WYE_UNGROUNDED, FusePlace.LINE, 1.25);
        rating(Standard.IEEE, Connection.WYE_GROUNDED, FusePlace.LINE, 1.35);
        rating(Standard.IEC, Connection.WYE_UNGROUNDED, FusePlace.LINE, 1.43);
        rating(Standard.IEC, Connection.WYE_GROUNDED, FusePlace.LINE, 1.43);
    }

    /** GB 50053-2013: not above 1.50 times the unit's current, which is a remark; IEEE names no such limit. */
    @Test
    void aFuseLargerThanItNeedBe() {
        SupplySystem system = system(OptionalDouble.empty(), SystemGrounding.SOLID);
        for (double part : new double[] {1.49, 1.51}) {
            FuseType f = fuse(part * AMPERES, 20e3, OptionalDouble.of(1e6));
            List<Check> iec = checks(bank(Standard.IEC, system, Connection.WYE_UNGROUNDED, FusePlace.UNIT, f), "FUS-5");
            assertEquals(2, iec.size());
            assertEquals(part < 1.5 ? Verdict.PASS : Verdict.WARN, iec.getLast().verdict());
            assertEquals(1.5 * AMPERES, iec.getLast().limit(), 1e-6);
            assertEquals(
                    1,
                    checks(bank(Standard.IEEE, system, Connection.WYE_UNGROUNDED, FusePlace.UNIT, f), "FUS-5")
                            .size());
        }
    }

    /** The most by the bank's own data is at the highest voltage: 27.778 A·1.05. */
    @Test
    void theHighestVoltageCounts() {
        for (double part : new double[] {1.04, 1.06}) {
            Check check = checks(
                            bank(
                                    Standard.IEEE,
                                    system(OptionalDouble.of(1.05 * LINE), SystemGrounding.SOLID),
                                    Connection.WYE_UNGROUNDED,
                                    FusePlace.UNIT,
                                    fuse(part * AMPERES, 20e3, OptionalDouble.of(1e6))),
                            "FUS-7")
                    .getFirst();
            assertEquals(1.05 * AMPERES, check.limit(), 1e-3);
            assertEquals(part < 1.05 ? Verdict.FAIL : Verdict.PASS, check.verdict());
        }
    }

    /** A line fuse holds off line to ground where system and bank are grounded, else line to line; at the highest voltage of the system. Common practice. */
    @Test
    void voltageAcrossAnOpenLineFuse() {
        record Row(Connection connection, SystemGrounding grounding, double needed) {}
        for (Row row : List.of(
                new Row(Connection.WYE_GROUNDED, SystemGrounding.SOLID, 1.05 * 7200.0),
                new Row(Connection.WYE_GROUNDED, SystemGrounding.RESISTANCE, 1.05 * LINE),
                new Row(Connection.WYE_UNGROUNDED, SystemGrounding.SOLID, 1.05 * LINE))) {
            for (double part : new double[] {0.999, 1.001}) {
                Check check = checks(
                                bank(
                                        Standard.IEEE,
                                        system(OptionalDouble.of(1.05 * LINE), row.grounding()),
                                        row.connection(),
                                        FusePlace.LINE,
                                        fuse(1000.0, part * row.needed(), OptionalDouble.of(1e6))),
                                "FUS-8")
                        .getFirst();
                assertEquals(row.needed(), check.limit(), 1e-6 * row.needed(), row.toString());
                assertEquals(part < 1.0 ? Verdict.FAIL : Verdict.PASS, check.verdict(), row.toString());
            }
        }
    }

    /** ½·10.233 µF·(1.1·√2·7.2 kV)² = 641.9 J a unit: what the file allows is held to the joule, a fuse of unknown limit is not judged. */
    @Test
    void energyAgainstTheFile() {
        double unit = 0.5 * 200e3 / (2.0 * Math.PI * 60.0) * 2.0 * 1.21;
        assertEquals(641.9, unit, 0.1);
        SupplySystem system = system(OptionalDouble.empty(), SystemGrounding.SOLID);
        for (double part : new double[] {0.999, 1.001}) {
            Check check = checks(
                            bank(
                                    Standard.IEEE,
                                    system,
                                    Connection.WYE_UNGROUNDED,
                                    FusePlace.UNIT,
                                    fuse(100.0, 20e3, OptionalDouble.of(part * 2.0 * unit))),
                            "FUS-10")
                    .getFirst();
            assertEquals(2.0 * unit, check.value(), 0.01);
            assertEquals(part < 1.0 ? Verdict.FAIL : Verdict.PASS, check.verdict());
        }
        assertEquals(
                List.of(),
                checks(
                        bank(
                                Standard.IEEE,
                                system,
                                Connection.WYE_UNGROUNDED,
                                FusePlace.UNIT,
                                fuse(100.0, 20e3, OptionalDouble.empty())),
                        "FUS-10"));
    }

    /** Expulsion fuses without a figure: 10 kJ with older paper-film units, 15 kJ with all-film units (IEEE Std C37.99, unchecked): 15, 16, 23 and 24 units of 641.9 J. */
    @Test
    void energyOfExpulsionFuses() {
        int[] units = {15, 16, 23, 24};
        Verdict[] verdicts = {Verdict.PASS, Verdict.WARN, Verdict.WARN, Verdict.FAIL};
        for (int i = 0; i < units.length; i++) {
            Stage stage = FuseBanks.stage(
                    "s",
                    Connection.WYE_UNGROUNDED,
                    new LegLayout(1, 1, units[i]),
                    FuseBanks.unit(200e3, 7200.0, 60.0),
                    Optional.of(FuseBanks.link("40T")),
                    Optional.empty());
            Check check = checks(
                            FuseBanks.bank(Standard.IEEE, system(OptionalDouble.empty(), SystemGrounding.SOLID), stage),
                            "FUS-10")
                    .getFirst();
            assertEquals(verdicts[i], check.verdict(), units[i] + " units");
            assertEquals(i == 0 ? 10e3 : 15e3, check.limit());
            assertEquals(i == 1 || i == 2, check.subject().endsWith("only if the units are all-film"), check.subject());
        }
    }

    /** Three units in parallel in the groups of one wye and five in those of the other: the fuses of the latter see five. */
    @Test
    void theFullerWyeCounts() {
        Stage stage = new Stage(
                "s",
                Connection.DOUBLE_WYE_UNGROUNDED,
                Optional.empty(),
                new LegLayout(1, 2, 3),
                Optional.of(new LegLayout(1, 2, 5)),
                FuseBanks.unit(200e3, 3600.0, 60.0),
                Optional.of(fuse(100.0, 20e3, OptionalDouble.of(4.0 * 641.9))),
                Optional.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
        Check check = checks(
                        FuseBanks.bank(Standard.IEEE, system(OptionalDouble.empty(), SystemGrounding.SOLID), stage),
                        "FUS-10")
                .getFirst();
        assertEquals(5.0 * 641.9, check.value(), 1.0);
        assertTrue(check.subject().contains("5 units in parallel"), check.subject());
        assertEquals(Verdict.FAIL, check.verdict());
    }
}
