package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
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

/**
 * Readings beside the capacitance as a table: what is known to be good is healthy, what may be bad never is (SRV-8 to SRV-11, SRV-21).
 *
 * <p>300 kvar, 7.96 kV, 60 Hz is 12.559 µF. 50 V after 5 min (IEEE Std 18): {@code R = 300/(C·ln(√2·7960/50)) = 4.41 MΩ}.
 */
class SideReadingsTest {
    private static final double FARADS = 300e3 / (2.0 * Math.PI * 60.0 * 7960.0 * 7960.0);

    private static UnitType type(Optional<DischargeDevice> device) {
        return BankSketch.type("U", 300e3, 7960, 60, new Tolerance(-0.05, 0.05), 4, 12, false, device);
    }

    private static Survey survey(double kilovolts, Optional<DischargeDevice> device, String column, String... cells) {
        Bank bank = new BankSketch()
                .system(kilovolts * 1e3, 60.0, SystemGrounding.SOLID)
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 3), type(device))
                .build();
        StringBuilder table = new StringBuilder("position,capacitance," + column + "\n");
        for (int i = 0; i < cells.length; i++) {
            table.append("s/").append("ABC".charAt(i / 3)).append("/u").append(i % 3 + 1);
            table.append(',').append(1e6 * FARADS).append(',').append(cells[i]).append('\n');
        }
        Readings readings = ReadingsFile.read(bank, "r.csv", table.toString().getBytes(StandardCharsets.UTF_8));
        return Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01));
    }

    private record Row(String cell, UnitVerdict verdict, String finding) {}

    private static void table(double kilovolts, Optional<DischargeDevice> device, String column, Row... rows) {
        for (Row row : rows) {
            UnitSurvey unit =
                    survey(kilovolts, device, column, row.cell()).units().getFirst();
            String what = row + ": " + unit.reason() + " " + unit.remarks();
            assertEquals(row.verdict(), unit.verdict(), what);
            assertEquals(row.finding(), unit.finding().orElse(""), what);
        }
    }

    /** 4.41 MΩ keep the standard; ten times that is no resistor any more; a kilohm and less are leads that touch. */
    @Test
    void dischargeResistanceByTheStandard() {
        double most = 300.0 / (FARADS * Math.log(Math.sqrt(2.0) * 7960.0 / 50.0));
        assertEquals(4.408e6, most, 2e3);
        table(
                13.8,
                Optional.empty(),
                "resistance",
                new Row("4.40 MΩ", UnitVerdict.HEALTHY, ""),
                new Row("4.44 MΩ", UnitVerdict.WATCH, "resistor-slow"),
                new Row("44.0 MΩ", UnitVerdict.WATCH, "resistor-slow"),
                new Row("44.2 MΩ", UnitVerdict.REPLACE, "resistor-open"),
                new Row("999 Ω", UnitVerdict.MEASURE_AGAIN, "resistance-shorted"),
                new Row("1001 Ω", UnitVerdict.HEALTHY, ""),
                new Row(">200 MΩ", UnitVerdict.REPLACE, "resistor-open"),
                new Row(">4.3 MΩ", UnitVerdict.MEASURE_AGAIN, ""),
                new Row("<1 kΩ", UnitVerdict.MEASURE_AGAIN, "resistance-shorted"),
                new Row("OL", UnitVerdict.REPLACE, "resistor-open"));
    }

    /** With 4.2 MΩ on the nameplate 10 % off is on its way out, a thousand times is a wrong range; 4.62 MΩ are allowed by the nameplate and slow by nothing. */
    @Test
    void dischargeResistanceByTheNameplate() {
        table(
                13.8,
                Optional.of(new DischargeDevice.Resistor(4.2e6)),
                "resistance",
                new Row("4.2 MΩ", UnitVerdict.HEALTHY, ""),
                new Row("3.79 MΩ", UnitVerdict.HEALTHY, ""),
                new Row("3.77 MΩ", UnitVerdict.WATCH, ""),
                new Row("4.61 MΩ", UnitVerdict.HEALTHY, ""),
                new Row("4.65 MΩ", UnitVerdict.WATCH, "resistor-slow"),
                new Row("4.2 kΩ", UnitVerdict.MEASURE_AGAIN, "wrong-range"),
                new Row("4.9 kΩ", UnitVerdict.MEASURE_AGAIN, "wrong-range"),
                new Row("5.1 kΩ", UnitVerdict.WATCH, ""),
                new Row("4.2 GΩ", UnitVerdict.MEASURE_AGAIN, "wrong-range"));
    }

    /** 75 V in 10 min on the nameplate counts before the standard: 600/(C·ln(11257/75)) = 9.535 MΩ. */
    @Test
    void dischargeResistanceByTheNameplatesTime() {
        assertEquals(9.535e6, 600.0 / (FARADS * Math.log(Math.sqrt(2.0) * 7960.0 / 75.0)), 3e3);
        table(
                13.8,
                Optional.of(new DischargeDevice.Rated(75.0, 600.0)),
                "resistance",
                new Row("9.5 MΩ", UnitVerdict.HEALTHY, ""),
                new Row("9.6 MΩ", UnitVerdict.WATCH, "resistor-slow"));
    }

    /** ANSI/NETA MTS-2019 table 100.1 by class; a meter that ends below the hint says neither, and "less than" is never taken for enough. */
    @Test
    void insulationToCase() {
        record VoltageClass(double kilovolts, String below, String above) {}
        for (VoltageClass c : List.of(
                new VoltageClass(5.1, "4.9 GΩ", "5.1 GΩ"),
                new VoltageClass(15.0, "4.9 GΩ", "5.1 GΩ"),
                new VoltageClass(15.1, "9.9 GΩ", "10.1 GΩ"),
                new VoltageClass(25.0, "9.9 GΩ", "10.1 GΩ"),
                new VoltageClass(25.1, "99 GΩ", "101 GΩ"),
                new VoltageClass(34.5, "99 GΩ", "101 GΩ"))) {
            table(
                    c.kilovolts(),
                    Optional.empty(),
                    "insulation",
                    new Row(c.below(), UnitVerdict.WATCH, ""),
                    new Row(c.above(), UnitVerdict.HEALTHY, ""));
        }
        for (double kilovolts : new double[] {5.0, 34.6}) {
            UnitSurvey unit = survey(kilovolts, Optional.empty(), "insulation", "1 GΩ")
                    .units()
                    .getFirst();
            assertTrue(unit.checks().isEmpty(), "no limit for this class");
            assertTrue(
                    unit.remarks().stream().anyMatch(r -> r.contains("no limit on file")),
                    unit.remarks().toString());
        }
        table(
                13.8,
                Optional.empty(),
                "insulation",
                new Row(">10 GΩ", UnitVerdict.HEALTHY, ""),
                new Row(">2 GΩ", UnitVerdict.HEALTHY, ""),
                new Row("<2 GΩ", UnitVerdict.WATCH, ""),
                new Row("<10 GΩ", UnitVerdict.WATCH, ""),
                new Row("OL", UnitVerdict.HEALTHY, ""));
        assertTrue(survey(13.8, Optional.empty(), "insulation", ">2 GΩ")
                .units()
                .getFirst()
                .checks()
                .isEmpty());
        assertTrue(survey(13.8, Optional.empty(), "insulation", "<10 GΩ")
                .units()
                .getFirst()
                .checks()
                .isEmpty());
    }

    /** A fuse that reads megohms is open, also where there are no mates to hold it against, and a survey with an open fuse is not good. */
    @Test
    void anOpenFuseIsSeenAlone() {
        table(
                13.8,
                Optional.empty(),
                "fuse",
                new Row("2 mΩ", UnitVerdict.HEALTHY, ""),
                new Row("99 Ω", UnitVerdict.HEALTHY, ""),
                new Row("100 Ω", UnitVerdict.WATCH, "fuse-open"),
                new Row("5 MΩ", UnitVerdict.WATCH, "fuse-open"),
                new Row("OL", UnitVerdict.WATCH, "fuse-open"),
                new Row(">20 MΩ", UnitVerdict.WATCH, "fuse-open"));
        assertFalse(survey(13.8, Optional.empty(), "fuse", "OL").isGood());
        assertTrue(survey(13.8, Optional.empty(), "fuse", "2 mΩ").isGood());
    }

    /** 15 % off the median of three or more; the median is that of the stage. */
    @Test
    void fusesOfOneSet() {
        Survey set = survey(13.8, Optional.empty(), "fuse", "2.0 mΩ", "2.0 mΩ", "2.29 mΩ", "2.31 mΩ", "1.69 mΩ");
        List<Verdict> verdicts = set.units().stream()
                .flatMap(u -> u.checks().stream())
                .map(Check::verdict)
                .toList();
        assertEquals(List.of(Verdict.PASS, Verdict.PASS, Verdict.PASS, Verdict.WARN, Verdict.WARN), verdicts);
        assertEquals(Optional.of("fuse-apart"), set.units().get(3).finding());
        Survey two = survey(13.8, Optional.empty(), "fuse", "2.0 mΩ", "4.0 mΩ");
        assertTrue(two.units().stream().allMatch(u -> u.checks().isEmpty()), "two don't say which of them is off");
    }

    /** An open resistor behind an open fuse: the fuse is named, because the unit is not in the circuit. */
    @Test
    void theOpenFuseIsNamedFirst() {
        UnitSurvey unit = survey(13.8, Optional.empty(), "resistance,fuse", "OL,OL")
                .units()
                .getFirst();
        assertEquals(UnitVerdict.REPLACE, unit.verdict());
        assertEquals(Optional.of("fuse-open"), unit.finding());
    }

    /** TM 5-683 / MO-116 (1995), ch. 2: 55 and 65 °C. A thermometer at the end of its range is no good sign. */
    @Test
    void caseTemperatureAtTheEndOfARange() {
        table(
                13.8,
                Optional.empty(),
                "case temperature",
                new Row("55 °C", UnitVerdict.HEALTHY, ""),
                new Row("55.1 °C", UnitVerdict.WATCH, "case-warm"),
                new Row("65 °C", UnitVerdict.WATCH, "case-warm"),
                new Row("65.1 °C", UnitVerdict.WATCH, "case-hot"),
                new Row(">70 °C", UnitVerdict.WATCH, "case-hot"),
                new Row(">50 °C", UnitVerdict.WATCH, "case-not-read"),
                new Row("<40 °C", UnitVerdict.HEALTHY, ""),
                new Row("<60 °C", UnitVerdict.WATCH, "case-not-read"),
                new Row("OL", UnitVerdict.WATCH, "case-not-read"));
    }
}
