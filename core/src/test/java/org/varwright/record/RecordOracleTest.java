package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.unbalance.Candidate;
import org.varwright.waveform.Signal;

/** What ngspice makes of known failures and switchings must be found in its waveforms. */
class RecordOracleTest {
    private static final double CYCLE = 1.0 / 60.0;
    private static final double[][] STAYS = {{}, {}, {}};

    /** Poles that clear at the zeros of their currents: A where the clock stands at 90°, B and C at 180°. */
    private static double[][] opens(int cycle) {
        return new double[][] {{(cycle + 0.25) * CYCLE}, {(cycle + 0.5) * CYCLE}, {(cycle + 0.5) * CYCLE}};
    }

    private static Finding only(RecordStudy study, String kind) {
        List<Finding> found =
                study.findings().stream().filter(f -> f.kind().equals(kind)).toList();
        assertEquals(1, found.size(), kind + " in\n" + words(study));
        return found.getFirst();
    }

    private static String words(RecordStudy study) {
        StringBuilder text = new StringBuilder();
        study.matching()
                .ifPresent(m ->
                        m.open().forEach(q -> text.append("? ").append(q.what()).append('\n')));
        study.findings()
                .forEach(f ->
                        text.append(f.kind()).append(": ").append(f.words()).append('\n'));
        study.located().forEach(l -> text.append(org.varwright.unbalance.LocateText.of(l.locate())));
        study.unanswered().forEach(u -> text.append("- ").append(u.print()).append('\n'));
        return text.toString();
    }

    private static Candidate best(RecordStudy study) {
        assertEquals(1, study.located().size(), () -> words(study));
        return study.located().getFirst().locate().candidates().getFirst();
    }

    @Test
    void aFuseThatOperatesInPhaseB() throws Exception {
        Bank bank = RecordBanks.fourGroups();
        Map<String, Signal> waves = new SpiceStage(bank, 60.0)
                .stage(0, true, opens(20), List.of(new SpiceStage.Trouble.UnitOut("B", 3, 8.1 * CYCLE)))
                .run(3840.0, 0.5);
        RecordStudy study =
                RecordStudy.of(SpiceStage.record(waves, 60.0, List.of("VA F", "VB F", "VC F")), bank, List.of());
        Candidate best = best(study);
        assertEquals("F/B", best.parts().getFirst().place());
        assertEquals("unit-out", best.parts().getFirst().kind());
        assertEquals(1, best.parts().getFirst().count());
        assertTrue(best.probability() > 0.8);
        only(study, "opened");
        assertEquals(8.1 * CYCLE, only(study, "trip-passed").seconds(), 1.0 * CYCLE);
    }

    @Test
    void oneSectionShortedInPhaseC() throws Exception {
        Bank bank = RecordBanks.fourGroups();
        Map<String, Signal> waves = new SpiceStage(bank, 59.7)
                .stage(0, true, STAYS, List.of(new SpiceStage.Trouble.SectionsShorted("C", 2, 1, 8.1 * CYCLE)))
                .run(3840.0, 0.4);
        RecordStudy study =
                RecordStudy.of(SpiceStage.record(waves, 60.0, List.of("VA F", "VB F", "VC F")), bank, List.of());
        Candidate best = best(study);
        assertEquals("F/C", best.parts().getFirst().place());
        assertEquals("sections-shorted", best.parts().getFirst().kind());
        assertEquals(1, best.parts().getFirst().count());
    }

    @Test
    void aUnitThatShortsAndIsClearedByItsFuse() throws Exception {
        Bank bank = RecordBanks.twoStages("400 MVA");
        Map<String, Signal> waves = new SpiceStage(bank, 60.0)
                .stage(0, true, STAYS, List.of())
                .stage(
                        1,
                        true,
                        opens(20),
                        List.of(new SpiceStage.Trouble.ShortedThenOut("A", 1, 8.1 * CYCLE, 10.5 * CYCLE)))
                .run(3840.0, 0.5);
        RecordStudy study =
                RecordStudy.of(SpiceStage.record(waves, 60.0, List.of("VA s", "VB s", "VC s")), bank, List.of());
        assertTrue(only(study, "fault").words().contains("phase A"), () -> words(study));
        Candidate best = study.located().stream()
                .filter(l -> l.sensor().startsWith("stage 2"))
                .findFirst()
                .orElseThrow()
                .locate()
                .candidates()
                .getFirst();
        assertEquals("stage 2/A", best.parts().getFirst().place());
        assertEquals("unit-out", best.parts().getFirst().kind());
    }

    /**
     * A weak source, so that the stages feed each other at {@code f = 1/(2π√(L_eq·C_eq))} (as in IEEE C37.99 and IEC 62271-100). The peak is that of a run
     * which ngspice samples eight times as often.
     */
    @Test
    void backToBackInrush() throws Exception {
        Bank bank = RecordBanks.twoStages("40 MVA");
        double closes = 6.25 * CYCLE;
        SpiceStage circuit = new SpiceStage(bank, 60.0)
                .stage(0, true, STAYS, List.of())
                .stage(1, false, new double[][] {{closes}, {closes}, {closes}}, List.of());
        RecordStudy study = RecordStudy.of(
                SpiceStage.record(circuit.run(23040.0, 0.3), 60.0, List.of("VA s", "VB s", "VC s")), bank, List.of());
        Signal fine = Objects.requireNonNull(circuit.run(184320.0, 0.12).get("IA stage 2"));
        Finding inrush = only(study, "inrush");
        double c = 200e3 / (2.0 * Math.PI * 60.0 * 7200.0 * 7200.0);
        double farads = c * 2.0 * c / (3.0 * c);
        double henries = 2.0 * 1.5025e-3;
        double hertz = 1.0 / (2.0 * Math.PI * Math.sqrt(henries * farads));
        assertEquals("stage 2/A", inrush.where());
        assertEquals(hertz, term(inrush, "f"), 0.04 * hertz);
        double missed = 1.0 - Math.cos(Math.PI / term(inrush, "n"));
        double peak = fine.largest(0, fine.size());
        assertEquals(peak, inrush.evidence().getFirst().value(), missed * peak);
        assertTrue(inrush.words().contains("That agrees"), () -> words(study));
        assertEquals(closes, only(study, "closed").seconds(), 1e-4);
    }

    @Test
    void slowSamplesDontTellAnInrush() throws Exception {
        Bank bank = RecordBanks.twoStages("40 MVA");
        double closes = 6.25 * CYCLE;
        Map<String, Signal> waves = new SpiceStage(bank, 60.0)
                .stage(0, true, STAYS, List.of())
                .stage(1, false, new double[][] {{closes}, {closes}, {closes}}, List.of())
                .run(1920.0, 0.3);
        RecordStudy study =
                RecordStudy.of(SpiceStage.record(waves, 60.0, List.of("VA s", "VB s", "VC s")), bank, List.of());
        assertTrue(
                study.unanswered().stream().anyMatch(u -> u.effect().contains("peak and frequency of the inrush")),
                () -> words(study));
    }

    private static double term(Finding finding, String symbol) {
        return finding.basis().terms().stream()
                .filter(t -> t.symbol().equals(symbol))
                .findFirst()
                .orElseThrow()
                .value();
    }

    @Test
    void aPoleThatStaysClosed() throws Exception {
        Bank bank = RecordBanks.twoStages("400 MVA");
        Map<String, Signal> waves = new SpiceStage(bank, 60.0)
                .stage(0, true, STAYS, List.of())
                .stage(1, true, new double[][] {{10.25 * CYCLE}, {}, {10.5 * CYCLE}}, List.of())
                .run(3840.0, 0.4);
        RecordStudy study =
                RecordStudy.of(SpiceStage.record(waves, 60.0, List.of("VA s", "VB s", "VC s")), bank, List.of());
        assertEquals("stage 2/B", only(study, "pole-not-opened").where());
    }

    @Test
    void aRestrike() throws Exception {
        Bank bank = RecordBanks.twoStages("400 MVA");
        double[][] again = {
            {10.25 * CYCLE, 10.75 * CYCLE, 11.3 * CYCLE}, {10.5 * CYCLE, 10.75 * CYCLE, 11.3 * CYCLE}, {10.5 * CYCLE}
        };
        Map<String, Signal> waves = new SpiceStage(bank, 60.0)
                .stage(0, true, STAYS, List.of())
                .stage(1, true, again, List.of())
                .run(7680.0, 0.4);
        RecordStudy study = RecordStudy.of(SpiceStage.record(waves, 60.0, List.of()), bank, List.of());
        Finding restrike = study.findings().stream()
                .filter(f -> f.kind().equals("restrike") && f.where().equals("stage 2/A"))
                .findFirst()
                .orElseThrow();
        assertEquals(10.75 * CYCLE, restrike.seconds(), 3e-4);
        assertEquals(RecordStudy.Answer.FAILED, study.answer());
    }

    @Test
    void aFuseInOneOfTwoWyes() throws Exception {
        Bank bank = RecordBanks.doubleWye();
        Map<String, Signal> waves = new SpiceStage(bank, 60.0)
                .stage(0, true, STAYS, List.of(new SpiceStage.Trouble.UnitOut("C2", 2, 8.1 * CYCLE)))
                .run(3840.0, 0.4);
        RecordStudy study =
                RecordStudy.of(SpiceStage.record(waves, 60.0, List.of("VA D", "VB D", "VC D", "VN")), bank, List.of());
        Candidate best = best(study);
        assertEquals("D/C2", best.parts().getFirst().place(), () -> words(study));
        assertEquals("unit-out", best.parts().getFirst().kind());
    }

    /** Two sections, in a record that begins after the failure: without a healthy reading. */
    @Test
    void aRecordThatBeginsTooLate() throws Exception {
        Bank bank = RecordBanks.fourGroups();
        Map<String, Signal> waves = new SpiceStage(bank, 60.0)
                .stage(0, true, opens(12), List.of(new SpiceStage.Trouble.SectionsShorted("A", 1, 2, -6.0 * CYCLE)))
                .run(3840.0, 0.4);
        RecordStudy study =
                RecordStudy.of(SpiceStage.record(waves, 60.0, List.of("VA F", "VB F", "VC F")), bank, List.of());
        Candidate best = best(study);
        assertEquals("F/A", best.parts().getFirst().place(), () -> words(study));
        assertEquals("sections-shorted", best.parts().getFirst().kind());
        assertEquals(2, best.parts().getFirst().count());
        assertTrue(!study.located().getFirst().hasHealthy());
    }
}
