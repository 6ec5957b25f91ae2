package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Standard;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** Values from outside. "Independent calculation" means first principles, worked out by another program than this one. */
class SurveyReferenceTest {
    private static UnitType can(
            double vars, double volts, double hertz, Tolerance tolerance, InternalConnection inside) {
        return BankSketch.type(
                "can", vars, volts, hertz, tolerance, 0, 0, false, Optional.empty(), Optional.of(inside));
    }

    private static Survey survey(Bank bank, String table) {
        Readings readings = ReadingsFile.read(bank, "r.csv", table.getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of(), readings.problems());
        return Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01));
    }

    /** Source: published low-voltage test example (400 kvar, 6.6 kV, 50 Hz; 200 V applied, 1.87, 1.866, 1.861 A; limits ±10 %). */
    @Test
    void cap001VoltsAndAmperes() {
        UnitType type = BankSketch.type("U", 400e3, 6600, 50, new Tolerance(-0.1, 0.1), 0, 0, false, Optional.empty());
        Bank bank = new BankSketch()
                .standard(Standard.IEC)
                .system(6600, 50, SystemGrounding.ISOLATED)
                .stage("s", Connection.DELTA, new LegLayout(1, 1, 1), type)
                .build();
        assertEquals(29.2296e-6, type.capacitanceFarads(), 29.2296e-6 * 1e-4);
        Survey survey =
                survey(bank, "position,test voltage,test current\ns/AB,200,1.87\ns/BC,200,1.866\ns/CA,200,1.861\n");
        double[] micro = {29.762, 29.6983, 29.6187};
        double[] percent = {1.92457, 1.70655, 1.43402};
        for (int i = 0; i < 3; i++) {
            double farads = survey.units().get(i).capacitanceFarads().orElseThrow();
            assertEquals(micro[i] * 1e-6, farads, micro[i] * 1e-6 * 5e-4);
            // the example's nameplate says 29.2 µF
            assertEquals(percent[i], 100.0 * (farads / 29.2e-6 - 1.0), 0.02);
            assertEquals(UnitVerdict.HEALTHY, survey.units().get(i).verdict());
        }
    }

    /** Source: independent calculation. 30 kvar, 690 V, 60 Hz delta unit of 55.7 µF a leg. */
    @Test
    void cap003DeltaReadsOneAndAHalfLegs() {
        UnitType type = can(30e3, 690, 60, new Tolerance(-0.05, 0.1), InternalConnection.DELTA);
        assertEquals(55.7148e-6, type.capacitanceFarads(), 1e-9);
        assertEquals(83.55e-6, 55.7e-6 * ThreeTerminal.pairFactor(InternalConnection.DELTA), 1e-9);
        UnitType asFifty = can(30e3, 690, 50, new Tolerance(-0.05, 0.1), InternalConnection.DELTA);
        assertEquals(66.8578e-6, asFifty.capacitanceFarads(), 1e-9);
        Bank bank = new BankSketch()
                .system(690, 60, SystemGrounding.SOLID)
                .stage("s", Connection.DELTA, new LegLayout(1, 1, 1), type)
                .build();
        // 83.55 µF taken for a leg: named, not judged
        UnitSurvey open =
                survey(bank, "position,capacitance\ns,83.55\n").units().getFirst();
        assertEquals(UnitVerdict.MEASURE_AGAIN, open.verdict());
        assertEquals(Optional.of("wrong-terminals"), open.finding());
        UnitSurvey linked =
                survey(bank, "position,capacitance\ns,111.4\n").units().getFirst();
        assertEquals(Optional.of("wrong-terminals"), linked.finding());
        assertTrue(linked.reason().contains("other two joined"), linked.reason());
    }

    /** Source: independent calculation. Leg A-B open: 27.85, 55.7, 55.7 µF. */
    @Test
    void cap004DeltaWithOneLegOpen() {
        ThreeTerminal legs = ThreeTerminal.of(InternalConnection.DELTA, 27.85, 55.7, 55.7);
        assertEquals(0.0, legs.first(), 1e-9);
        assertEquals(55.7, legs.second(), 1e-9);
        assertEquals(55.7, legs.third(), 1e-9);
        ThreeTerminal sound = ThreeTerminal.of(InternalConnection.DELTA, 83.55, 83.55, 83.55);
        assertEquals(55.7, sound.first(), 1e-9);
        ThreeTerminal wye = ThreeTerminal.of(InternalConnection.WYE_UNGROUNDED, 10.0, 10.0, 10.0);
        assertEquals(20.0, wye.second(), 1e-9);
    }

    /** Source: independent calculation. 100 kvar, 480 V, 60 Hz: a delta leg and a wye phase. */
    @Test
    void cap006DeltaLegAndWyePhase() {
        Tolerance any = new Tolerance(0.0, 0.1);
        assertEquals(
                383.765e-6, can(100e3, 480, 60, any, InternalConnection.DELTA).capacitanceFarads(), 1e-9);
        assertEquals(
                1151.29e-6,
                can(100e3, 480, 60, any, InternalConnection.WYE_UNGROUNDED).capacitanceFarads(),
                1e-8);
    }

    /** Source: independent calculation. 33.2 µF a phase in star on 400 V, 50 Hz gives 1.66881 kvar. */
    @Test
    void cap008KvarFromMicrofarad() {
        UnitType type = can(1668.81, 400, 50, new Tolerance(0.0, 0.1), InternalConnection.WYE_UNGROUNDED);
        assertEquals(33.2e-6, type.capacitanceFarads(), 33.2e-6 * 5e-3);
    }

    /** Source: independent calculation. One of 12 element fuses in 4 sections: −2.222 %, 1.0667 on the survivors; a nameplate of 0 to +10 % can't show it. */
    @Test
    void cap010OneElementFuse() {
        Hypothesis out = new Hypothesis.ElementsOut(1, 4, 12);
        assertEquals(0.977778, out.factor(), 1e-6);
        assertEquals(1.06667, out.voltageLeft(), 1e-5);
        UnitType type = BankSketch.type("U", 300e3, 7960, 60, new Tolerance(0.0, 0.1), 4, 12, true, Optional.empty());
        Bank plain = new BankSketch()
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1), type)
                .build();
        String table = "position,capacitance\ns/A," + 1e6 * type.capacitanceFarads() * 1.05 * out.factor() + "\n";
        UnitSurvey byNameplate = survey(plain, table).units().getFirst();
        assertEquals(UnitVerdict.HEALTHY, byNameplate.verdict());
        assertTrue(byNameplate.reason().contains("One element out changes it by 2.2 % only"), byNameplate.reason());
        // against its own factory value and with a good meter it shows
        Bank known = new BankSketch()
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1), type)
                .known("s/A", "", type.capacitanceFarads() * 1.05)
                .build();
        Readings readings = ReadingsFile.read(
                known,
                "r.csv",
                table.replace("capacitance\n", "capacitance,temperature\n")
                        .replaceFirst("\n$", ",25\n")
                        .getBytes(StandardCharsets.UTF_8));
        UnitSurvey byFactory = Survey.of(known, readings, SurveySettings.of(Standard.IEEE, 0.002))
                .units()
                .getFirst();
        assertEquals(UnitVerdict.WATCH, byFactory.verdict(), byFactory.reason());
        assertEquals(1, byFactory.elementsOut());
    }

    /** Source: independent calculation. One of S sections shorted; one element out of internally fused units. */
    @Test
    void factorsOfFailures() {
        assertEquals(1.3333, new Hypothesis.SectionsShorted(1, OptionalInt.of(4), 4).factor(), 1e-4);
        assertEquals(1.1429, new Hypothesis.SectionsShorted(1, OptionalInt.of(8), 8).factor(), 1e-4);
        assertEquals(1.0909, new Hypothesis.SectionsShorted(1, OptionalInt.of(12), 12).factor(), 1e-4);
        assertEquals(0.97297, new Hypothesis.ElementsOut(1, 4, 10).factor(), 1e-5);
        assertEquals(0.98485, new Hypothesis.ElementsOut(1, 5, 14).factor(), 1e-5);
        // the survivors bear s·n/(s(n−1)+1)
        assertEquals(4.0 * 10 / (4.0 * 9 + 1), new Hypothesis.ElementsOut(1, 4, 10).voltageLeft(), 1e-12);
    }

    /** Source: handbook figure for polypropylene, about −0.03 %/K; the reference of 25 °C is that of IEEE Std 18-1992. */
    @Test
    void temperature() {
        SurveySettings settings = SurveySettings.of(Standard.IEEE, 0.01);
        assertEquals(-3e-4, settings.capacitancePerKelvin(), 0.0);
        assertEquals(25.0, settings.referenceCelsius(), 0.0);
        UnitType type = BankSketch.type("U", 300e3, 7960, 60, new Tolerance(0.0, 0.1), 4, 12, false, Optional.empty());
        Bank bank = new BankSketch()
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1), type)
                .build();
        UnitSurvey warm = survey(bank, "position,capacitance,temperature\ns/A,12.71,45\n")
                .units()
                .getFirst();
        assertEquals(12.71e-6 / (1.0 - 0.006), warm.capacitanceFarads().orElseThrow(), 1e-12);
    }
}
