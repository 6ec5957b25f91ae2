package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Standard;
import org.varwright.resonance.BankText;

/** SRV-3: a unit with element fuses out is watched while what is left inside bears at most 1.10 of rated (IEEE Std 18) at the highest voltage of the system. */
class WatchLimitTest {
    /** Two of 14 elements out in one of 5 sections: 5·14/(5·12 + 2) = 1.129032 on what is left of it, 60/62 of the capacitance. */
    private static final double LEFT = 70.0 / 62.0;

    private static UnitSurvey survey(double leftPerRated, String highest, double faradsPart) {
        // So rated that what is left bears leftPerRated at the nominal voltage to neutral.
        double ratedVolts = LEFT / leftPerRated * 13800.0 / Math.sqrt(3.0);
        double farads = 300e3 / (2.0 * Math.PI * 60.0 * ratedVolts * ratedVolts);
        Bank bank = BankText.bank(
                BankText.system("13.8", "280", highest), """
                unit-types:
                  - {name: U, rating: 300 kvar, voltage: RATED kV, frequency: 60 Hz, tolerance: [-5 %, +10 %], sections: 5, elements: 14, element-fuses: internal}
                stages: [{name: S, connection: wye-ungrounded, groups: 1, units: 1, unit: U}]
                positions: [{at: S/A, capacitance: FARADS uF}]
                """.replace("RATED", Double.toString(ratedVolts / 1e3))
                        .replace("FARADS", Double.toString(farads * 1e6)));
        String table = "position,capacitance,temperature\nS/A," + 1e6 * farads * faradsPart + ",25\n";
        return Survey.of(
                        bank,
                        ReadingsFile.read(bank, "r.csv", table.getBytes(StandardCharsets.UTF_8)),
                        SurveySettings.of(Standard.IEEE, 0.002))
                .units()
                .getFirst();
    }

    @Test
    void theHighestVoltageOfTheSystemDecides() {
        record Row(double leftPerRated, String highest, UnitVerdict verdict) {}
        for (Row row : new Row[] {
            new Row(1.08, "", UnitVerdict.WATCH),
            new Row(1.0999, "", UnitVerdict.WATCH),
            new Row(1.1001, "", UnitVerdict.REPLACE),
            // 5 % above nominal at times: 1.08 is 1.134, 1.047 is 1.0994, 1.048 is 1.1004.
            new Row(1.08, ", maximum-voltage: 14.49 kV", UnitVerdict.REPLACE),
            new Row(1.047, ", maximum-voltage: 14.49 kV", UnitVerdict.WATCH),
            new Row(1.048, ", maximum-voltage: 14.49 kV", UnitVerdict.REPLACE)
        }) {
            UnitSurvey unit = survey(row.leftPerRated(), row.highest(), 60.0 / 62.0);
            assertEquals(row.verdict(), unit.verdict(), row + ": " + unit.reason());
            assertTrue(unit.reason().contains("2 of 14 element fuses have operated"), unit.reason());
            assertEquals(row.verdict() == UnitVerdict.WATCH, unit.reason().endsWith("which it may."), unit.reason());
        }
    }

    /** A shorted section is no fuse that has done its work: the unit is replaced however little it bears. */
    @Test
    void aShortedSectionIsNeverWatched() {
        UnitSurvey unit = survey(0.6, "", 5.0 / 4.0);
        assertEquals(UnitVerdict.REPLACE, unit.verdict(), unit.reason());
        assertTrue(unit.reason().contains("1 of 5 sections shorted"), unit.reason());
    }
}
