package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.waveform.TimeBase;

/** What a record doesn't show has not been found in good order: the answer is undecided, never "nothing failed". */
class NotSeenTest {
    private static final Bank BANK = RecordBanks.twoStages("400 MVA");
    private static final Bank GROUNDED = RecordBanks.grounded();
    private static final double CYCLE = 1.0 / 60.0;
    /** Two units of 200 kvar at 7.2 kV a phase. */
    private static final double AMPERES = 2.0 * 200e3 / 7200.0;

    private static RecordStudy study(Synthetic record, Bank bank) {
        return RecordStudy.of(record.input(), bank, List.of());
    }

    private static List<Finding> unseen(RecordStudy study) {
        return study.findings().stream()
                .filter(f -> f.kind().equals("pole-not-seen-to-open"))
                .toList();
    }

    @Test
    void aRecordWithoutAChannelOfTheBankIsUndecided() {
        RecordInput none =
                new RecordInput("", "", 60.0, TimeBase.of(new double[0]), List.of(), List.of(), OptionalDouble.empty());
        assertEquals(
                RecordStudy.Answer.UNDECIDED,
                RecordStudy.of(none, BANK, List.of()).answer());
        assertEquals(
                RecordStudy.Answer.UNDECIDED,
                study(new Synthetic(7680.0, 0.4).bus(), BANK).answer(),
                "voltages of the bus say nothing of the bank");
    }

    @Test
    void aRecordShorterThanACycleIsUndecided() {
        assertEquals(
                RecordStudy.Answer.UNDECIDED,
                study(
                                new Synthetic(7680.0, 0.8 * CYCLE)
                                        .bus()
                                        .primary("IA stage 2", "A", Synthetic.leads(AMPERES, 0)),
                                BANK)
                        .answer());
        assertEquals(
                RecordStudy.Answer.UNDECIDED,
                study(new Synthetic(7680.0, 0.4).bus().primary("IA stage 2", "A", t -> Double.NaN), BANK)
                        .answer());
    }

    @Test
    void aRecordOfAStageInGoodOrderIsDecided() {
        Synthetic record = new Synthetic(7680.0, 0.4).bus();
        for (int p = 0; p < 3; p++) {
            record.primary("I" + "ABC".charAt(p) + " stage 2", "A", Synthetic.leads(AMPERES, p));
        }
        RecordStudy study = study(record, BANK);
        assertEquals(RecordStudy.Answer.NOTHING_FAILED, study.answer(), () -> RecordStudyText.of(study));
    }

    private static Synthetic opening(double seconds, double opens, DoubleUnaryOperator b) {
        return new Synthetic(7680.0, seconds)
                .bus()
                .primary("IA", "A", t -> t < opens ? Synthetic.leads(AMPERES, 0).applyAsDouble(t) : 0.0)
                .primary("IB", "A", b)
                .primary(
                        "IC",
                        "A",
                        t -> t < opens + CYCLE / 3.0
                                ? Synthetic.leads(AMPERES, 2).applyAsDouble(t)
                                : 0.0);
    }

    /** A and C stop at their zeros, B carries on: a record that ends a cycle later can't say that its pole stayed closed, nor that it opened. */
    @Test
    void aRecordThatEndsBeforeThePoleCouldOpen() {
        double opens = 10.0 * CYCLE;
        RecordStudy early = study(opening(opens + 1.5 * CYCLE, opens, Synthetic.leads(AMPERES, 1)), GROUNDED);
        assertEquals(
                List.of("G/B"), unseen(early).stream().map(Finding::where).toList(), () -> RecordStudyText.of(early));
        assertEquals(RecordStudy.Answer.UNDECIDED, early.answer());
        assertTrue(unseen(early).getFirst().words().contains("does not count as open"));
        RecordStudy later = study(opening(opens + 4.0 * CYCLE, opens, Synthetic.leads(AMPERES, 1)), GROUNDED);
        assertEquals(List.of(), unseen(later));
        assertEquals(RecordStudy.Answer.FAILED, later.answer(), "then it stayed closed");
        assertEquals(
                List.of("G/B"),
                later.findings().stream()
                        .filter(f -> f.kind().equals("pole-not-opened"))
                        .map(Finding::where)
                        .toList());
    }

    /** A tenth of the current that goes on is below what REC-5 tells from noise: it is said, with its size, and does not count as open. */
    @Test
    void aRemainderThatGoesOnIsSaid() {
        double opens = 10.0 * CYCLE;
        for (double part : new double[] {0.02, 0.1}) {
            DoubleUnaryOperator b = t -> (t < opens + CYCLE / 6.0 ? 1.0 : part)
                    * Synthetic.leads(AMPERES, 1).applyAsDouble(t);
            RecordStudy study = study(opening(opens + 8.0 * CYCLE, opens, b), GROUNDED);
            assertEquals(
                    part < 0.05 ? List.of() : List.of("G/B"),
                    unseen(study).stream().map(Finding::where).toList(),
                    () -> RecordStudyText.of(study));
            if (part > 0.05) {
                assertEquals(
                        part * AMPERES,
                        unseen(study).getFirst().evidence().getFirst().value(),
                        0.05 * AMPERES * part);
                assertEquals(RecordStudy.Answer.UNDECIDED, study.answer());
            } else {
                assertEquals(RecordStudy.Answer.NOTHING_FAILED, study.answer(), () -> RecordStudyText.of(study));
            }
        }
    }

    /** B has not closed when the record ends two cycles after the others: that is no finding yet, and not left out either. */
    @Test
    void aRecordThatEndsBeforeThePoleCouldClose() {
        double closes = 10.0 * CYCLE;
        for (double cycles : new double[] {2.0, 5.0}) {
            Synthetic record = new Synthetic(7680.0, closes + cycles * CYCLE).bus();
            for (int p = 0; p < 3; p++) {
                DoubleUnaryOperator x = Synthetic.leads(AMPERES, p);
                boolean stays = p == 1;
                record.primary("I" + "ABC".charAt(p), "A", t -> t < closes || stays ? 0.0 : x.applyAsDouble(t));
            }
            RecordStudy study = study(record, GROUNDED);
            boolean failed = study.findings().stream().anyMatch(f -> f.kind().equals("pole-not-closed"));
            assertEquals(cycles > 3.0, failed, () -> RecordStudyText.of(study));
            assertEquals(
                    cycles < 3.0,
                    study.unanswered().stream().anyMatch(u -> u.effect().contains("the pole of phase B of G closed")),
                    () -> RecordStudyText.of(study));
        }
    }

    /** Phase A's voltage is not recorded, B and C are exchanged: they stand at 120° instead of −120°. */
    @Test
    void exchangedVoltagesAreSeenWithoutPhaseA() {
        for (boolean exchanged : new boolean[] {false, true}) {
            Synthetic record = new Synthetic(3840.0, 0.3)
                    .primary(
                            "VB",
                            "V",
                            t -> org.varwright.waveform.Waves.wave(7200.0, 60.0, exchanged ? 120.0 : -120.0, t))
                    .primary(
                            "VC",
                            "V",
                            t -> org.varwright.waveform.Waves.wave(7200.0, 60.0, exchanged ? -120.0 : 120.0, t));
            ChannelMatching matching = study(record, BANK).matching().orElseThrow();
            assertEquals(exchanged ? 1 : 0, matching.open().size(), matching.toString());
        }
    }
}
