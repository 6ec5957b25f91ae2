package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.waveform.Waves;

/** Findings against records whose story was written first. */
class FindingsTest {
    private static final Bank BANK = RecordBanks.twoStages("400 MVA");
    private static final Bank GROUNDED = RecordBanks.grounded();
    private static final double CYCLE = 1.0 / 60.0;
    private static final double ONE = 27.78;
    private static final double TWO = 2.0 * ONE;

    private static List<Finding> of(RecordStudy study, String kind) {
        return study.findings().stream().filter(f -> f.kind().equals(kind)).toList();
    }

    private static Finding only(RecordStudy study, String kind) {
        assertEquals(1, of(study, kind).size(), () -> kind + " in\n" + RecordStudyText.of(study));
        return of(study, kind).getFirst();
    }

    private static Synthetic stage2(
            double seconds, DoubleUnaryOperator a, DoubleUnaryOperator b, DoubleUnaryOperator c) {
        return new Synthetic(7680.0, seconds)
                .bus()
                .primary("IA stage 2", "A", a)
                .primary("IB stage 2", "A", b)
                .primary("IC stage 2", "A", c);
    }

    private static DoubleUnaryOperator between(double from, double to, DoubleUnaryOperator x) {
        return t -> t >= from && t < to ? x.applyAsDouble(t) : 0.0;
    }

    private static DoubleUnaryOperator sum(DoubleUnaryOperator x, DoubleUnaryOperator y) {
        return t -> x.applyAsDouble(t) + y.applyAsDouble(t);
    }

    @Test
    void aMeanInACapacitorsCurrentIsTheMeasuringChains() {
        RecordStudy study = RecordStudy.of(
                stage2(0.5, sum(Synthetic.leads(TWO, 0), t -> 3.0), Synthetic.leads(TWO, 1), Synthetic.leads(TWO, 2))
                        .input(),
                BANK,
                List.of());
        Finding offset = only(study, "dc-offset");
        assertEquals("stage 2/A", offset.where());
        assertEquals(3.0, offset.evidence().getFirst().value(), 1e-3);
        // I/Î·ωT by hand: 3/(√2·55.56)·377·0.5
        assertEquals(
                3.0 / (Math.sqrt(2.0) * TWO) * 2.0 * Math.PI * 60.0 * 0.5,
                offset.basis().terms().getLast().value(),
                0.3);
    }

    @Test
    void currentsAtAFloatingNeutralThatDontAddUp() {
        RecordStudy study = RecordStudy.of(
                stage2(0.4, Synthetic.leads(1.15 * TWO, 0), Synthetic.leads(TWO, 1), Synthetic.leads(TWO, 2))
                        .input(),
                BANK,
                List.of());
        assertEquals(
                0.15 * TWO,
                only(study, "currents-dont-add-up").basis().terms().getFirst().value(),
                0.1);
    }

    @Test
    void aPoleThatDoesntClose() {
        double at = 6.2 * CYCLE;
        RecordStudy study = RecordStudy.of(
                stage2(
                                0.4,
                                between(at, 1.0, t -> Waves.wave(0.866 * TWO, 60.0, 60.0, t)),
                                t -> 0.0,
                                between(at, 1.0, t -> Waves.wave(0.866 * TWO, 60.0, -120.0, t)))
                        .input(),
                BANK,
                List.of("IA stage 2=stage 2/A", "IC stage 2=stage 2/C"));
        assertEquals("stage 2/B", only(study, "pole-not-closed").where());
        assertEquals(Finding.Weight.FAILED, only(study, "pole-not-closed").weight());
    }

    @Test
    void aPoleOfAGroundedStageThatStaysClosed() {
        double opens = 10.25 * CYCLE;
        double amperes = TWO;
        RecordStudy study = RecordStudy.of(
                new Synthetic(7680.0, 0.4)
                        .bus()
                        .primary("IA", "A", between(0.0, opens, Synthetic.leads(amperes, 0)))
                        .primary("IB", "A", Synthetic.leads(amperes, 1))
                        .primary("IC", "A", between(0.0, opens + CYCLE / 3.0, Synthetic.leads(amperes, 2)))
                        .input(),
                GROUNDED,
                List.of());
        assertEquals("G/B", only(study, "pole-not-opened").where());
    }

    @Test
    void aBurstBeforeTheCurrentComesForGood() {
        double first = 6.2 * CYCLE;
        double forGood = first + 0.3 * CYCLE;
        DoubleUnaryOperator burst = t -> 300.0 * Math.sin(2.0 * Math.PI * 900.0 * (t - first));
        RecordStudy study = RecordStudy.of(
                stage2(
                                0.4,
                                sum(
                                        between(first, first + 1.0 / 900.0, burst),
                                        between(forGood, 1.0, Synthetic.leads(TWO, 0))),
                                between(forGood, 1.0, Synthetic.leads(TWO, 1)),
                                between(forGood, 1.0, Synthetic.leads(TWO, 2)))
                        .input(),
                BANK,
                List.of());
        Finding strike = only(study, "pre-strike");
        assertEquals("stage 2/A", strike.where());
        assertEquals(first, strike.seconds(), 3e-4);
    }

    @Test
    void aDipElsewhereIsNoFailureHere() {
        DoubleUnaryOperator part = t -> t > 0.15 && t < 0.25 ? 0.6 : 1.0;
        Synthetic record = new Synthetic(7680.0, 0.5);
        for (int p = 0; p < 3; p++) {
            double degrees = -120.0 * p;
            record.primary(
                    "V" + "ABC".charAt(p), "V", t -> part.applyAsDouble(t) * Waves.wave(7200.0, 60.0, degrees, t));
        }
        for (int p = 0; p < 3; p++) {
            DoubleUnaryOperator x = Synthetic.leads(TWO, p);
            record.primary("I" + "ABC".charAt(p) + " stage 2", "A", t -> part.applyAsDouble(t) * x.applyAsDouble(t));
        }
        RecordStudy study = RecordStudy.of(record.input(), BANK, List.of());
        assertTrue(of(study, "admittance").isEmpty() && of(study, "fault").isEmpty(), () -> RecordStudyText.of(study));
        assertEquals(2, of(study, "voltage-elsewhere").size(), () -> RecordStudyText.of(study));
        assertTrue(of(study, "voltage-elsewhere").getFirst().words().contains("falls to 60 %"));
        assertEquals(RecordStudy.Answer.NOTHING_FAILED, study.answer());
    }

    @Test
    void chargeThatFallsSlowerThanTheNameplateSays() {
        // nameplate: R·C = 4.2 MΩ · 10.23 µF = 43 s; here 120 s
        double opens = 6.25 * CYCLE;
        Synthetic record = stage2(
                4.0,
                between(0.0, opens, Synthetic.leads(TWO, 0)),
                between(0.0, opens + CYCLE / 4.0, Synthetic.leads(TWO, 1)),
                between(0.0, opens + CYCLE / 4.0, Synthetic.leads(TWO, 2)));
        record.primary(
                "VA stage 2",
                "V",
                t -> t < opens ? Waves.wave(7200.0, 60.0, 0.0, t) : 9000.0 * Math.exp(-(t - opens) / 120.0));
        RecordStudy study = RecordStudy.of(record.input(), BANK, List.of());
        Finding slow = only(study, "decay-slow");
        assertEquals(120.0, slow.basis().terms().getFirst().value(), 2.0);
        assertEquals(43.0, slow.basis().terms().getLast().value(), 0.5);
    }

    @Test
    void whatARecordCantTellIsSaid() {
        RecordStudy study = RecordStudy.of(
                new Synthetic(7680.0, 0.3)
                        .primary("IA stage 2", "A", Synthetic.leads(TWO, 0))
                        .input(),
                BANK,
                List.of());
        String all = study.unanswered().stream().map(RecordStudyText::sentence).collect(Collectors.joining("\n"));
        assertTrue(all.contains("nothing is said of stage 1") || all.contains("Nothing is said of stage 1"), all);
    }

    @Test
    void aRecordWithoutABankIsMeasuredAllTheSame() {
        RecordStudy study = RecordStudy.of(stage2(0.4, between(0.1, 1.0, Synthetic.leads(TWO, 0)), t -> 0.0, t -> 0.0)
                .input());
        assertEquals(60.0, study.cycles().hertz(), 1e-6);
        assertEquals(0.1, only(study, "change").seconds(), 1e-3);
        assertEquals(0.1, only(study, "conduction").seconds(), 1e-3);
    }
}
