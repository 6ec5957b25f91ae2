package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.basis.Verdict;
import org.varwright.resonance.BankText;

/** DUT-6 by hand: which spares mislead, and what they do where they don't belong. 24.94 kV, 14.4 kV to neutral, two groups in series. First principles. */
class SpareStudyTest {
    /*
     *   a leg of stage S:   line ──┬─ u1 ─┬──┬─ u1 ─┬── ground through a transformer 100:5
     *                              └─ u2 ─┘  └─ u2 ─┘
     *                               group 1   group 2
     */
    private static Bank bank(String types, String rest) {
        return BankText.bank(BankText.system("24.941532", "280", ", x-over-r: 11"), """
                unit-types:
                  - {name: U, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %]}
                """ + types + """
                stages:
                  - {name: S, connection: wye-grounded, groups: 2, units: 2, unit: U}
                """ + rest);
    }

    private static String type(String name, String rating, String voltage, String hertz) {
        return "  - {name: " + name + ", rating: " + rating + ", voltage: " + voltage + ", frequency: " + hertz
                + ", tolerance: [-5 %, +10 %]}\n";
    }

    private static List<WrongSpare> wrong(Bank bank, List<Spare> more) {
        return SpareStudy.of(bank, more);
    }

    /**
     * 200 kvar at 4.8 kV is 2.25 times the capacitance of 200 kvar at 7.2 kV: at 7.2 kV it gives 450 kvar, at 1.5 times its rated voltage and current. Group 1
     * then has 3.25 units' worth against 2: it bears 14.4·2/5.25 = 5.4857 kV, which is 1.1429 of the spare's 4.8 kV; group 2 bears 8.9143 kV, 1.2381 of 7.2 kV.
     */
    @Test
    void aUnitForLessVoltage() {
        WrongSpare w = wrong(bank(type("L", "200 kvar", "4.8 kV", "60 Hz"), """
                                spares: [{serial: "S-1", unit: L}]
                                protection: [{stage: S, senses: neutral-current, ratio: "100:5"}]
                                """), List.of())
                .getFirst();
        assertEquals("S-1", w.serial());
        assertEquals("S", w.stage());
        assertEquals("4.8 kV, not 7.2 kV", w.differs());
        assertEquals(2.25, w.farads() / w.wantedFarads(), 1e-9);
        assertEquals(450e3, w.vars(), 1.0);
        assertEquals(200e3, w.wantedVars(), 1.0);
        assertEquals(1.5, w.voltsPerRated(), 1e-6);
        assertEquals(1.5, w.amperesPerRated(), 1e-6);
        assertEquals(2.25, w.check().value(), 1e-9);
        assertEquals(1.10, w.check().limit(), 1e-12);
        assertEquals(Verdict.WARN, w.check().verdict());
        WrongSpare.Effect effect = w.effect().orElseThrow();
        assertEquals("S/A/g1u1", effect.position());
        assertEquals(8.9142857 / 7.2, effect.highestUnitPerRated(), 1e-6);
        // A healthy leg is 27.7778 A·2 = 55.5556 A; with 3.25 and 2 in series 14.4·ω·C·(3.25·2/5.25), which is 1.2381
        // times
        // 55.5556 A: 13.228 A more than the other two phases, 0.6614 A behind 100:5.
        assertEquals(1, effect.sensors().size());
        assertTrue(
                effect.sensors().getFirst().contains("661.4 mA at the relay"),
                effect.sensors().toString());
    }

    /** With one group nothing shields the spare: it bears the whole 14.4 kV, three times its rated 4.8 kV, whatever its neighbours are rated. */
    @Test
    void theSpareIsJudgedByItsOwnPlate() {
        Bank bank = BankText.bank(BankText.system("24.941532", "280", ""), """
                unit-types:
                  - {name: U, rating: 200 kvar, voltage: 14.4 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %]}
                  - {name: L, rating: 200 kvar, voltage: 4.8 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %]}
                stages:
                  - {name: S, connection: wye-grounded, groups: 1, units: 2, unit: U}
                """);
        WrongSpare w = wrong(bank, List.of()).getFirst();
        assertEquals("", w.serial(), "no spare of that type is listed");
        assertEquals(3.0, w.voltsPerRated(), 1e-6);
        assertEquals(3.0, w.effect().orElseThrow().highestUnitPerRated(), 1e-6);
        assertEquals(List.of(), w.effect().orElseThrow().sensors());
    }

    /** Without a ratio the sensor is given as it is: 13.228 A primary. */
    @Test
    void aSensorWithoutRatio() {
        WrongSpare w = wrong(
                        bank(
                                type("L", "200 kvar", "4.8 kV", "60 Hz"),
                                "protection: [{stage: S, senses: neutral-current}]\n"),
                        List.of())
                .getFirst();
        assertTrue(
                w.effect().orElseThrow().sensors().getFirst().contains("13.23 A primary"),
                w.effect().orElseThrow().sensors().toString());
    }

    /** 200 kvar at 50 Hz is 1.2 times the capacitance: 240 kvar, rated voltage, 1.2 times its rated current. */
    @Test
    void aUnitForAnotherFrequency() {
        WrongSpare w = wrong(bank(type("F", "200 kvar", "7.2 kV", "50 Hz"), ""), List.of())
                .getFirst();
        assertEquals("50 Hz, not 60 Hz", w.differs());
        assertEquals(240e3, w.vars(), 1.0);
        assertEquals(1.0, w.voltsPerRated(), 1e-6);
        assertEquals(1.2, w.amperesPerRated(), 1e-6);
        WrongSpare both = wrong(bank(type("F", "200 kvar", "14.4 kV", "50 Hz"), ""), List.of())
                .getFirst();
        assertEquals("14.4 kV, not 7.2 kV and 50 Hz, not 60 Hz", both.differs());
        // Too little: the lower end of the tolerance is what it misses.
        assertEquals(1.2 / 4.0, both.check().value(), 1e-9);
        assertEquals(0.95, both.check().limit(), 1e-12);
        assertEquals(Verdict.WARN, both.check().verdict());
    }

    /** What was measured counts more than the plate: inside −5 % to +10 % of the unit wanted it passes, ends included. */
    @Test
    void whatWasMeasuredCounts() {
        Bank bank = bank(type("L", "200 kvar", "4.8 kV", "60 Hz"), "");
        double wanted = bank.unitTypes().get(0).capacitanceFarads();
        double[] ratios = {0.9499, 0.95, 1.0, 1.1, 1.1001};
        for (int i = 0; i < ratios.length; i++) {
            Spare spare =
                    new Spare("M", bank.unitTypes().get(1), OptionalDouble.of(ratios[i] * wanted), Optional.empty());
            List<WrongSpare> found = wrong(bank, List.of(spare));
            assertEquals(1, found.size(), "its type is on the list by the spare");
            assertEquals("M", found.getFirst().serial());
            assertEquals(ratios[i], found.getFirst().check().value(), 1e-12);
            assertEquals(
                    i == 0 || i == 4 ? Verdict.WARN : Verdict.PASS,
                    found.getFirst().check().verdict(),
                    "ratio " + ratios[i]);
        }
    }

    /** A plate rounds: 2 % of rated voltage or frequency are the same. Another kvar misleads nobody, it is seen. */
    @Test
    void whatMisleads() {
        record Case(String rating, String voltage, String hertz, int found) {}
        for (Case c : List.of(
                new Case("200 kvar", "7.34 kV", "60 Hz", 0),
                new Case("200 kvar", "7.35 kV", "60 Hz", 1),
                new Case("200 kvar", "7.05 kV", "60 Hz", 1),
                new Case("203 kvar", "4.8 kV", "60 Hz", 1),
                new Case("205 kvar", "4.8 kV", "60 Hz", 0),
                new Case("195 kvar", "4.8 kV", "60 Hz", 0),
                new Case("200 kvar", "7.2 kV", "61 Hz", 0))) {
            assertEquals(
                    c.found(),
                    wrong(bank(type("T", c.rating(), c.voltage(), c.hertz()), ""), List.of())
                            .size(),
                    c.toString());
        }
        // A three-phase unit of the same kvar has other terminals: nobody takes it for a single-phase one.
        assertEquals(
                List.of(),
                wrong(
                        bank(
                                "  - {name: T, rating: 200 kvar, voltage: 4.8 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %],"
                                        + " phases: 3, internal: delta}\n",
                                ""),
                        List.of()));
    }

    /** Two stages with the same units are one warning, with other units two; the same serial twice is one spare. */
    @Test
    void eachIsNamedOnce() {
        Bank bank = BankText.bank(BankText.system("12.470766", "280", ""), """
                unit-types:
                  - {name: U, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %]}
                  - {name: V, rating: 200 kvar, voltage: 7.62 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %]}
                  - {name: L, rating: 200 kvar, voltage: 4.8 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %]}
                stages:
                  - {name: one, connection: wye-grounded, groups: 1, units: 2, unit: U}
                  - {name: two, connection: wye-grounded, groups: 1, units: 2, unit: U}
                  - {name: three, connection: wye-grounded, groups: 1, units: 2, unit: V}
                spares: [{serial: "S-1", unit: L}]
                """);
        Spare again = bank.spares().getFirst();
        Spare other = new Spare("S-2", again.unit(), OptionalDouble.empty(), Optional.empty());
        assertEquals(
                List.of("S-1 one", "S-1 three", "S-2 one", "S-2 three", " three", " one"),
                wrong(bank, List.of(again, other)).stream()
                        .map(w -> w.serial() + " " + w.stage())
                        .toList());
    }

    /** Of a three-phase unit all three legs count: 200 kvar for 6.9 kV give 200·(4.8/6.9)² = 96.79 kvar on 4.8 kV, at 4.8/6.9 = 0.69565 of rated. */
    @Test
    void threePhaseUnits() {
        Bank bank = BankText.bank(BankText.system("4.8", "100", ""), """
                unit-types:
                  - {name: U, rating: 200 kvar, voltage: 4.8 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %], phases: 3, internal: delta}
                  - {name: V, rating: 200 kvar, voltage: 6.9 kV, frequency: 60 Hz, tolerance: [-5 %, +10 %], phases: 3, internal: delta}
                stages:
                  - {name: S, connection: delta, groups: 1, units: 2, unit: U}
                """);
        WrongSpare w = wrong(bank, List.of()).getFirst();
        assertEquals(96.786e3, w.vars(), 1.0);
        assertEquals(200e3, w.wantedVars(), 1e-3);
        assertEquals(0.695652, w.voltsPerRated(), 1e-6);
        assertEquals(0.695652, w.amperesPerRated(), 1e-6);
        assertEquals(1.0, w.effect().orElseThrow().highestUnitPerRated(), 1e-6);
    }
}
