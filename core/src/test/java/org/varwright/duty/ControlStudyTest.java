package org.varwright.duty;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.TransformerRatio;
import org.varwright.basis.Check;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.resonance.BankText;

/** DUT-8 by hand for every kind of control: 12.47 kV, steps of 300 and 600 kvar, load of 2000 kW and 1500 kvar, at light load 400 kW. First principles. */
class ControlStudyTest {
    private static Bank bank(String control, String load) {
        return BankText.bank(BankText.system("12.470766", "200", ""), """
                unit-types:
                  - {name: A, rating: 100 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
                  - {name: B, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
                stages:
                  - {name: small, connection: wye-ungrounded, groups: 1, units: 1, unit: A}
                  - {name: large, connection: wye-ungrounded, groups: 1, units: 1, unit: B}
                """ + load + "control: " + control + "\n");
    }

    private static final String LOAD =
            "load: {power: 2000 kW, reactive: 1500 kvar, light-power: 400 kW, light-reactive: 200 kvar}\n";

    private static Duty duty(Bank bank) {
        return Duty.of(bank, DutyQuestion.PLAIN);
    }

    private static Check step(Duty duty, String name) {
        return duty.control().checks().stream()
                .filter(c -> c.subject().equals("control: the step of " + name + " against the dead band"))
                .findFirst()
                .orElseThrow(() -> new AssertionError(name + " in "
                        + duty.control().checks().stream().map(Check::subject).toList()));
    }

    /** A band of 455 kvar is more than 1.5 steps of 300 kvar, 600 kvar hunts. A band of 445 kvar warns. */
    @Test
    void kvar() {
        Duty duty = duty(bank("{senses: kvar, on: 500 kvar, off: 45 kvar, current-ratio: \"500:5\"}", LOAD));
        assertEquals(300e3, step(duty, "small").value(), 10.0);
        assertEquals(455e3, step(duty, "small").limit(), 1e-6);
        assertEquals(Verdict.PASS, step(duty, "small").verdict());
        assertEquals(Verdict.FAIL, step(duty, "large").verdict());
        Duty narrow = duty(bank("{senses: kvar, on: 500 kvar, off: 55 kvar, current-ratio: \"500:5\"}", LOAD));
        assertEquals(Verdict.WARN, step(narrow, "small").verdict());
        assertTrue(
                duty.control()
                        .lines()
                        .getFirst()
                        .contains("on when the load draws 500 kvar, off at 45 kvar; its band is 455 kvar"),
                duty.control().lines().toString());
    }

    /** 500:5 fitted, 100:5 entered: it sees a fifth; 500 kvar are reached at 2500, which 1500 kvar of load never are. */
    @Test
    void aWrongCurrentTransformer() {
        Bank bank = bank("{senses: kvar, on: 500 kvar, off: 45 kvar, current-ratio: \"500:5\"}", LOAD);
        DutyQuestion question = Questions.currentRatioEntered(new TransformerRatio(100.0, 5.0));
        String said = Duty.of(bank, question).control().lines().getLast();
        assertTrue(said.contains("sees 0.2 times the true reactive power"), said);
        assertTrue(said.contains("at a true 2.5 Mvar instead of 500 kvar"), said);
        assertTrue(said.contains("1.5 Mvar looks like 300 kvar: nothing ever goes on."), said);
    }

    /** tan φ of 0.90 less that of 0.98 is 0.28126: 562.5 kvar at 2000 kW, 112.5 at 400 kW. */
    @Test
    void powerFactor() {
        Duty duty = duty(bank("{senses: power-factor, on: 0.90, off: 0.98}", LOAD));
        assertEquals(562.5e3, step(duty, "small at full load").limit(), 50.0);
        assertEquals(300e3, step(duty, "small at full load").value(), 10.0);
        assertEquals(Verdict.PASS, step(duty, "small at full load").verdict());
        assertEquals(Verdict.FAIL, step(duty, "large at full load").verdict());
        assertEquals(112.5e3, step(duty, "small at light load").limit(), 10.0);
        assertEquals(Verdict.FAIL, step(duty, "small at light load").verdict());
        Duty noLoad = duty(bank("{senses: power-factor, on: 0.90, off: 0.98}", ""));
        assertTrue(noLoad.control().checks().isEmpty());
        assertTrue(
                noLoad.unanswered().stream()
                        .map(Unanswered::print)
                        .anyMatch(u -> u.contains("power-factor control hunts")),
                noLoad.unanswered().toString());
    }

    /**
     * 100:5, on at 4 A: 80 A of line at power factor 0.8 are 64 A and 48 A; 300 kvar take 13.89 A off the latter, which leaves √(64² + 34.11²) = 72.52 A: a
     * step of 7.48 A against a band of 30 A.
     */
    @Test
    void current() {
        Duty duty = duty(bank("{senses: current, on: 4 A, off: 2.5 A, current-ratio: \"100:5\"}", LOAD));
        Check small = step(duty, "small");
        assertEquals(7.48, small.value(), 0.01);
        assertEquals(30.0, small.limit(), 1e-9);
        assertEquals(Verdict.PASS, small.verdict());
        // 600 kvar: 27.78 A, √(64² + 20.22²) = 67.12 A.
        assertEquals(12.88, step(duty, "large").value(), 0.01);
        assertTrue(
                duty.control().lines().getFirst().contains("on above 80 A, off below 50 A"),
                duty.control().lines().toString());
    }

    /** 60:1, thresholds 118 and 122 V around 120: inside. One that looks for 100 V sees 20 % too much: the ratio is not the transformer's. */
    @Test
    void voltageSeenAtNominal() {
        Check inside = seen(duty(bank("{senses: voltage, ratio: \"7200:120\", on: 118 V, off: 122 V}", LOAD)));
        assertEquals(120.0, inside.value(), 1e-3);
        assertEquals(Verdict.PASS, inside.verdict());
        Check outside = seen(duty(bank("{senses: voltage, ratio: \"7200:120\", on: 98 V, off: 102 V}", LOAD)));
        assertEquals(102.0, outside.limit());
        assertEquals(Verdict.WARN, outside.verdict());
        Check below = seen(duty(bank("{senses: voltage, ratio: \"7200:120\", on: 138 V, off: 142 V}", LOAD)));
        assertEquals(138.0, below.limit());
        assertEquals(Verdict.WARN, below.verdict());
        // Thresholds near √3 times as much: connected line to line.
        Duty line = duty(bank("{senses: voltage, ratio: \"7200:120\", on: 205 V, off: 211 V}", LOAD));
        assertEquals(207.85, seen(line).value(), 0.01);
        assertTrue(
                line.control().lines().getFirst().contains("line to line"),
                line.control().lines().toString());
    }

    private static Check seen(Duty duty) {
        return duty.control().checks().stream()
                .filter(c -> c.subject().startsWith("control: voltage seen"))
                .findFirst()
                .orElseThrow();
    }

    /** 7200:120 fitted. With 14400:120 entered it takes 120 V for twice the bus, with 3600:120 for half of it; 7250:120 makes 0.7 %. */
    @Test
    void aWrongVoltageTransformer() {
        Bank bank = bank("{senses: voltage, ratio: \"7200:120\", on: 118 V, off: 122 V}", LOAD);
        record Row(double primary, String says) {}
        for (Row row : java.util.List.of(
                new Row(14400.0, "for 2 times what it is: nothing goes on."),
                new Row(3600.0, "for 0.5 times what it is: everything goes on and nothing comes off."),
                new Row(7250.0, "for 1.007 times what it is: little changes."))) {
            String said = Duty.of(bank, Questions.voltageRatioEntered(new TransformerRatio(row.primary(), 120.0)))
                    .control()
                    .lines()
                    .getLast();
            assertTrue(said.contains(row.says()), said);
        }
    }
}
