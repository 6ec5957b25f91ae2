package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.waveform.Waves;

/** Findings on either side of their thresholds: what is named, where, when, and how large. Two stages of one and two units of 200 kvar at 7.2 kV, neutrals floating. */
class ThresholdsTest {
    private static final Bank BANK = RecordBanks.twoStages("400 MVA");
    private static final Bank GROUNDED = RecordBanks.grounded();
    private static final double CYCLE = 1.0 / 60.0;
    private static final double AMPERES = 2.0 * 200e3 / 7200.0;

    private static List<Finding> of(RecordStudy study, String kind) {
        return study.findings().stream().filter(f -> f.kind().equals(kind)).toList();
    }

    private static Finding only(RecordStudy study, String kind) {
        assertEquals(1, of(study, kind).size(), () -> kind + " in\n" + RecordStudyText.of(study));
        return of(study, kind).getFirst();
    }

    private static DoubleUnaryOperator scaled(DoubleUnaryOperator part, DoubleUnaryOperator x) {
        return t -> part.applyAsDouble(t) * x.applyAsDouble(t);
    }

    /** Currents of stage 2 (or of the grounded stage), each times a part of what it carries in good order. */
    private static RecordStudy study(
            Bank bank, double seconds, DoubleUnaryOperator a, DoubleUnaryOperator b, DoubleUnaryOperator c) {
        Synthetic record = new Synthetic(3840.0, seconds).bus();
        DoubleUnaryOperator[] parts = {a, b, c};
        for (int p = 0; p < 3; p++) {
            record.primary(
                    "I" + "ABC".charAt(p) + (bank.equals(BANK) ? " stage 2" : ""),
                    "A",
                    scaled(parts[p], Synthetic.leads(AMPERES, p)));
        }
        return RecordStudy.of(record.input(), bank, List.of());
    }

    private static DoubleUnaryOperator step(double at, double after) {
        return t -> t < at ? 1.0 : after;
    }

    /** More than 3 % of current for the same voltage, for good, is inside. */
    @Test
    void howMuchAdmittanceIsAFailureInside() {
        for (double part : new double[] {0.975, 1.025, 0.955, 1.045}) {
            RecordStudy study = study(GROUNDED, 0.5, t -> 1.0, step(0.25, part), t -> 1.0);
            boolean inside = Math.abs(part - 1.0) > 0.03;
            assertEquals(inside ? 1 : 0, of(study, "admittance").size(), part + "\n" + RecordStudyText.of(study));
            if (inside) {
                Finding finding = only(study, "admittance");
                assertEquals(0.25, finding.seconds(), 1.5 * CYCLE);
                assertEquals(
                        Math.abs(part - 1.0), finding.basis().terms().getFirst().value(), 0.002);
                assertTrue(
                        finding.words().contains("B " + (part > 1.0 ? "+4.5 %" : "−4.5 %"))
                                && finding.words().contains("A +0.0 %"),
                        finding.words());
                assertEquals(Finding.Weight.FAILED, finding.weight());
                assertEquals(RecordStudy.Answer.FAILED, study.answer());
            }
        }
    }

    /** What a stage draws against what it should: a tenth off is to be looked into. */
    @Test
    void theCurrentAgainstTheBankFile() {
        for (double part : new double[] {0.88, 0.92, 1.08, 1.12}) {
            RecordStudy study = study(GROUNDED, 0.3, t -> 1.0, t -> part, t -> 1.0);
            Finding current = only(study, "current");
            assertEquals(
                    Math.abs(part - 1.0) > 0.1 ? Finding.Weight.LOOK : Finding.Weight.NOTE,
                    current.weight(),
                    "" + part);
            assertTrue(current.words().contains(String.format(java.util.Locale.ROOT, "B %.2f", part)), current.words());
            assertEquals(AMPERES * part, current.evidence().get(1).value(), 0.01 * AMPERES);
        }
    }

    /** 1.6 times what it can carry by itself is a fault; three in one phase and √3 in the others a leg shorted at a floating neutral (Millman). */
    @Test
    void faultsByTheirSizeAndPattern() {
        DoubleUnaryOperator[] high = new DoubleUnaryOperator[3];
        for (double most : new double[] {1.5, 1.75}) {
            for (int p = 0; p < 3; p++) {
                high[p] = p == 1 ? t -> t > 0.15 && t < 0.25 ? most : 1.0 : t -> 1.0;
            }
            RecordStudy study = study(GROUNDED, 0.4, high[0], high[1], high[2]);
            assertEquals(most > 1.6 ? 1 : 0, of(study, "fault").size(), most + "\n" + RecordStudyText.of(study));
            if (most > 1.6) {
                Finding fault = only(study, "fault");
                assertTrue(
                        fault.words().contains("in phase B") && fault.words().contains("until about"), fault.words());
                assertEquals(0.15, fault.seconds(), 1.5 * CYCLE);
                assertEquals(most, fault.basis().terms().get(1).value(), 0.02);
                assertEquals(1.0, fault.basis().terms().get(0).value(), 0.02);
            }
        }
        for (int shorted = 0; shorted < 3; shorted++) {
            for (int p = 0; p < 3; p++) {
                double times = p == shorted ? 3.0 : Math.sqrt(3.0);
                high[p] = t -> t > 0.2 ? times : 1.0;
            }
            Finding fault = only(study(BANK, 0.4, high[0], high[1], high[2]), "fault");
            assertTrue(
                    fault.words().contains("shorted end to end: phase " + "ABC".charAt(shorted))
                            && fault.words().contains("to the end of the record"),
                    fault.words());
        }
        Finding both = only(study(BANK, 0.4, t -> t > 0.2 ? 2.5 : 1.0, t -> t > 0.2 ? 2.5 : 1.0, t -> 1.0), "fault");
        assertTrue(both.words().contains("in phases A and B"), both.words());
    }

    /** Three currents at a floating neutral may leave 5 % of their mean; to ground they need not add up. */
    @Test
    void currentsThatAddUp() {
        for (double part : new double[] {1.04, 1.07}) {
            assertEquals(
                    part > 1.05 ? 1 : 0,
                    of(study(BANK, 0.3, t -> part, t -> 1.0, t -> 1.0), "currents-dont-add-up")
                            .size(),
                    "" + part);
            assertEquals(
                    0,
                    of(study(GROUNDED, 0.3, t -> part, t -> 1.0, t -> 1.0), "currents-dont-add-up")
                            .size(),
                    "" + part);
        }
    }

    /** A mean of 1 % of the peak is none; one of 3 % for three cycles would have added half the peak: {@code 0.03·2π·3 = 0.57}. */
    @Test
    void meansInACapacitorsCurrent() {
        for (double[] row : new double[][] {{0.01, 0.5, 0}, {0.03, 0.5, 1}, {-0.03, 0.5, 1}}) {
            Synthetic record = new Synthetic(3840.0, row[1]).bus();
            double peak = Math.sqrt(2.0) * AMPERES;
            record.primary(
                    "IA", "A", t -> row[0] * peak + Synthetic.leads(AMPERES, 0).applyAsDouble(t));
            record.primary("IB", "A", Synthetic.leads(AMPERES, 1)).primary("IC", "A", Synthetic.leads(AMPERES, 2));
            RecordStudy study = RecordStudy.of(record.input(), GROUNDED, List.of());
            assertEquals((int) row[2], of(study, "dc-offset").size(), row[0] + "\n" + RecordStudyText.of(study));
            if (row[2] > 0) {
                assertEquals(
                        row[0] * peak,
                        only(study, "dc-offset").evidence().getFirst().value(),
                        0.01 * peak);
            }
        }
    }

    /** Poles that close within a quarter of a cycle close together; later is a fault of the switch, three cycles later another operation. */
    @Test
    void polesThatCloseApart() {
        for (double apart : new double[] {0.2, 0.4}) {
            double at = 6.25 * CYCLE;
            RecordStudy study = study(
                    GROUNDED,
                    0.4,
                    t -> t < at ? 0.0 : 1.0,
                    t -> t < at + apart * CYCLE ? 0.0 : 1.0,
                    t -> t < at + 0.1 * CYCLE ? 0.0 : 1.0);
            Finding closed = only(study, "closed");
            assertEquals(at, closed.seconds(), 6e-4);
            assertEquals(apart > 0.25 ? Finding.Weight.LOOK : Finding.Weight.NOTE, closed.weight(), closed.words());
            assertEquals(apart * CYCLE, closed.basis().terms().getFirst().value(), 6e-4);
        }
    }

    /** Current again a quarter of a cycle or more after it had stopped is a restrike, less a re-ignition (terms of IEEE C37.100, from memory, unchecked). */
    @Test
    void currentThatComesAgain() {
        double stop = 10.0 * CYCLE;
        for (double pause : new double[] {0.15, 0.35}) {
            double again = stop + pause * CYCLE;
            RecordStudy study = study(
                    GROUNDED,
                    0.4,
                    t -> t < stop || (t >= again && t < again + 0.5 * CYCLE) ? 1.0 : 0.0,
                    t -> t < stop + CYCLE / 6.0 ? 1.0 : 0.0,
                    t -> t < stop + CYCLE / 3.0 ? 1.0 : 0.0);
            Finding finding = only(study, pause < 0.25 ? "re-ignition" : "restrike");
            assertEquals("G/A", finding.where());
            assertEquals(again, finding.seconds(), 6e-4);
            assertEquals(pause * CYCLE, finding.basis().terms().getFirst().value(), 6e-4);
            assertEquals(0, of(study, pause < 0.25 ? "restrike" : "re-ignition").size());
        }
    }

    /** Two cycles after the first pole is late. */
    @Test
    void aPoleThatOpensLate() {
        double stop = 10.0 * CYCLE;
        for (double later : new double[] {1.5, 3.0}) {
            RecordStudy study = study(
                    GROUNDED,
                    0.5,
                    t -> t < stop ? 1.0 : 0.0,
                    t -> t < stop + CYCLE / 6.0 ? 1.0 : 0.0,
                    t -> t < stop + later * CYCLE ? 1.0 : 0.0);
            assertEquals(
                    later > 2.0 ? List.of("G/C") : List.of(),
                    of(study, "pole-late").stream().map(Finding::where).toList(),
                    "" + later);
            assertEquals(0, of(study, "pole-not-opened").size());
        }
    }

    /** With one pole closed the floating neutral follows that phase: at 0.6 of it and above that pole is named. */
    @Test
    void onePoleThatHoldsAFloatingNeutral() {
        double stop = 10.0 * CYCLE;
        for (int p = 0; p < 3; p++) {
            for (double part : new double[] {0.5, 1.0}) {
                double degrees = -120.0 * p;
                Synthetic record = new Synthetic(3840.0, 0.4).bus();
                for (int q = 0; q < 3; q++) {
                    DoubleUnaryOperator x = Synthetic.leads(AMPERES, q);
                    record.primary("I" + "ABC".charAt(q) + " stage 2", "A", t -> t < stop ? x.applyAsDouble(t) : 0.0);
                }
                record.primary("VN stage 2", "V", t -> t < stop ? 0.0 : part * Waves.wave(7200.0, 60.0, degrees, t));
                RecordStudy study = RecordStudy.of(record.input(), BANK, List.of());
                assertEquals(
                        part > 0.6 ? List.of("stage 2/" + "ABC".charAt(p)) : List.of(),
                        of(study, "pole-not-opened").stream()
                                .map(Finding::where)
                                .toList(),
                        part + "\n" + RecordStudyText.of(study));
            }
        }
    }
}
