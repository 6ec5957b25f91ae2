package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.json.Json;
import org.varwright.problem.VarwrightException;
import org.varwright.waveform.Waves;

/** What a screen shows at a cursor, by the formula that the waves were made of: rms, angle against phase A, harmonics, symmetrical components. */
class RecordViewTest {
    private static final double VOLTS = 12470.0 / Math.sqrt(3.0);
    private static final double AMPERES = 2.0 * 200e3 / 7200.0;

    private static Json at(Json json, String... path) {
        Json at = json;
        for (String name : path) {
            at = name.matches("[0-9]+")
                    ? ((Json.Arr) at).items().get(Integer.parseInt(name))
                    : ((Json.Obj) at).get(name);
        }
        return at;
    }

    private static double number(Json json, String... path) {
        return ((Json.Num) at(json, path)).value();
    }

    private static Synthetic stage() {
        Synthetic record = new Synthetic(3840.0, 0.3).bus();
        for (int p = 0; p < 3; p++) {
            record.primary("I" + "ABC".charAt(p) + " stage 2", "A", Synthetic.leads(AMPERES, p));
        }
        return record;
    }

    @Test
    void phasorsAndSymmetricalComponents() {
        RecordStudy study = RecordStudy.of(stage().input(), RecordBanks.twoStages("400 MVA"), List.of());
        Json json = RecordView.at(study, 0.1517);
        assertEquals(60.0, number(json, "hertz"), 1e-6);
        assertEquals(0.1517, 0.5 * (number(json, "fromSeconds") + number(json, "toSeconds")), 2.0 / 3840.0);
        assertEquals(new Json.Str("VA"), at(json, "reference"));
        for (int p = 0; p < 3; p++) {
            assertEquals(VOLTS, number(json, "channels", "" + p, "fundamental"), 1e-3);
            assertEquals(new double[] {0.0, -120.0, 120.0}[p], number(json, "channels", "" + p, "degrees"), 1e-6);
            assertEquals(AMPERES, number(json, "channels", "" + (3 + p), "rms"), 1e-4);
            assertEquals(
                    new double[] {90.0, -30.0, -150.0}[p], number(json, "channels", "" + (3 + p), "degrees"), 1e-6);
            assertEquals(Math.sqrt(2.0) * AMPERES, number(json, "channels", "" + (3 + p), "peak"), 0.1);
            assertEquals(0.0, number(json, "channels", "" + p, "dc"), 1e-3);
        }
        assertEquals(new Json.Str("bus"), at(json, "sequences", "0", "where"));
        assertEquals(VOLTS, number(json, "sequences", "0", "positive", "magnitude"), 1e-3);
        assertEquals(0.0, number(json, "sequences", "0", "negative", "magnitude"), 1e-3);
        assertEquals(new Json.Str("stage 2"), at(json, "sequences", "1", "where"));
        assertEquals(AMPERES, number(json, "sequences", "1", "positive", "magnitude"), 1e-4);
        assertEquals(90.0, number(json, "sequences", "1", "positive", "degrees"), 1e-6);
    }

    @Test
    void harmonicsAndDistortion() {
        RecordStudy study = RecordStudy.of(new Synthetic(3840.0, 0.3)
                .primary(
                        "V",
                        "V",
                        t -> 5.0
                                + Waves.wave(100.0, 60.0, 20.0, t)
                                + Waves.wave(3.0, 300.0, 0.0, t)
                                + Waves.wave(4.0, 420.0, 9.0, t))
                .input());
        Json json = RecordView.at(study, 0.15);
        assertEquals(5.0, number(json, "channels", "0", "dc"), 1e-6);
        assertEquals(0.05, number(json, "channels", "0", "distortion"), 1e-8);
        assertEquals(5.0, number(json, "channels", "0", "harmonics", "3", "order"));
        assertEquals(3.0, number(json, "channels", "0", "harmonics", "3", "rms"), 1e-6);
        assertEquals(4.0, number(json, "channels", "0", "harmonics", "5", "rms"), 1e-6);
        assertEquals(Math.sqrt(25.0 + 10_000.0 + 9.0 + 16.0), number(json, "channels", "0", "rms"), 1e-6);
    }

    /** A dead channel in front gives no angle: the first one that is alive does. */
    @Test
    void anglesCountFromTheFirstChannelThatIsAlive() {
        RecordStudy study = RecordStudy.of(new Synthetic(3840.0, 0.3)
                .primary("I1", "A", t -> 0.0)
                .primary("V1", "V", t -> Waves.wave(100.0, 60.0, 20.0, t))
                .primary("V2", "V", t -> Waves.wave(100.0, 60.0, 65.0, t))
                .input());
        Json json = RecordView.at(study, 0.15);
        assertEquals(new Json.Str("V1"), at(json, "reference"));
        assertEquals(45.0, number(json, "channels", "2", "degrees"), 1e-6);
        assertEquals(0.0, number(json, "channels", "0", "degrees"));
    }

    @Test
    void waveformsOfAWindow() {
        RecordStudy study = RecordStudy.of(stage().input());
        Json json = RecordView.waveforms(study, List.of("vb", "4"), 0.1, 0.2, 20_000);
        assertEquals(2, ((Json.Arr) json).items().size());
        assertEquals(new Json.Str("VB"), at(json, "0", "name"));
        assertEquals(new Json.Str("IA stage 2"), at(json, "1", "name"));
        assertEquals(385, ((Json.Arr) at(json, "0", "seconds")).items().size(), "0.1 s at 3840 and both ends");
        assertEquals(
                6,
                ((Json.Arr) RecordView.waveforms(study, List.of(), 0.1, 0.2, 4))
                        .items()
                        .size());
        for (Object[] wrong : new Object[][] {{0.2, 0.1, 100}, {0.1, 0.1, 100}, {0.1, 0.2, 3}, {0.1, 0.2, 20_001}}) {
            assertThrows(
                    VarwrightException.class,
                    () -> RecordView.waveforms(
                            study, List.of(), (Double) wrong[0], (Double) wrong[1], (Integer) wrong[2]));
        }
        assertThrows(VarwrightException.class, () -> RecordView.waveforms(study, List.of("VX"), 0.1, 0.2, 100));
    }
}
