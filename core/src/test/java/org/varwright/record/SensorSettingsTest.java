package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.waveform.Waves;

/**
 * A sensor against its settings. Alarm 7 V and trip 20 V at the relay behind 7200:120 are 420 V and 1200 V primary: a ratio taken the wrong way round is a factor of
 * 3600.
 */
class SensorSettingsTest {
    private static final Bank BANK = RecordBanks.twoStages("400 MVA");
    private static final double AMPERES = 2.0 * 200e3 / 7200.0;

    private static RecordStudy study(Channel.Side side, double before, double after, double opens) {
        Synthetic record = new Synthetic(1920.0, 0.5).bus();
        for (int p = 0; p < 3; p++) {
            var x = Synthetic.leads(AMPERES, p);
            record.primary("I" + "ABC".charAt(p) + " stage 2", "A", t -> t < opens ? x.applyAsDouble(t) : 0.0);
        }
        record.add(
                "VN stage 2", "V", side, t -> t < opens ? Waves.wave(t < 0.2 ? before : after, 60.0, 180.0, t) : 0.0);
        return RecordStudy.of(record.input(), BANK, List.of());
    }

    private static List<String> kinds(RecordStudy study) {
        return study.findings().stream()
                .map(Finding::kind)
                .filter(k -> k.endsWith("-passed") || k.startsWith("sensor"))
                .toList();
    }

    @Test
    void primaryAndSecondaryValuesPassTheSameSettings() {
        for (double factor : new double[] {1.0, 60.0}) {
            Channel.Side side = factor == 1.0 ? new Channel.Side.Primary() : new Channel.Side.Secondary(60.0);
            for (double[] row : factor == 1.0
                    ? new double[][] {{410.0, 0, 0}, {430.0, 1, 0}, {1190.0, 1, 0}, {1210.0, 1, 1}}
                    : new double[][] {{410.0, 0, 0}, {1210.0, 1, 1}}) {
                RecordStudy study = study(side, 10.0 / factor, row[0] / factor, 9.0);
                String said = row[0] + "/" + factor + "\n" + RecordStudyText.of(study);
                assertEquals(row[1] > 0, kinds(study).contains("alarm-passed"), said);
                assertEquals(row[2] > 0, kinds(study).contains("trip-passed"), said);
                Finding sensor = study.findings().stream()
                        .filter(f -> f.kind().equals("sensor"))
                        .findFirst()
                        .orElseThrow();
                assertEquals(Finding.Weight.FAILED, sensor.weight(), "it moved");
                assertEquals(row[0], sensor.evidence().getLast().value(), 0.01 * row[0], said);
                assertEquals(10.0, sensor.evidence().getFirst().value(), 1.0, said);
            }
        }
    }

    /** Passed at 0.2 s, opened at 0.35 s: 0.15 s later, against a delay of 0.1 s. */
    @Test
    void whenASettingWasPassedAndHowLongThePolesTook() {
        RecordStudy study = study(new Channel.Side.Primary(), 10.0, 1500.0, 0.35);
        Finding trip = study.findings().stream()
                .filter(f -> f.kind().equals("trip-passed"))
                .findFirst()
                .orElseThrow();
        assertEquals(0.2, trip.seconds(), 1.1 / 60.0);
        assertTrue(
                trip.words().contains("20 V at the relay") && trip.words().contains("the delay set is 100 ms"),
                trip.words());
        assertEquals(1200.0, trip.basis().terms().getFirst().value(), 1e-9);
    }

    /** A fifth of the alarm, 84 V, tells nothing; from the begin above the trip is said so. */
    @Test
    void quietAndFromTheBegin() {
        assertEquals(List.of("sensor-quiet"), kinds(study(new Channel.Side.Primary(), 80.0, 80.0, 9.0)));
        RecordStudy study = study(new Channel.Side.Primary(), 1500.0, 1500.0, 9.0);
        assertEquals(List.of("trip-passed", "alarm-passed", "sensor"), kinds(study));
        Finding sensor = study.findings().stream()
                .filter(f -> f.kind().equals("sensor"))
                .findFirst()
                .orElseThrow();
        assertEquals(Finding.Weight.LOOK, sensor.weight(), "nothing healthy is in the record");
        assertTrue(
                study.findings().stream()
                        .filter(f -> f.kind().equals("trip-passed"))
                        .allMatch(f -> f.words().contains("from the begin of the record")),
                RecordStudyText.of(study));
        assertEquals(1, study.located().size());
        assertEquals(false, study.located().getFirst().hasHealthy());
        assertEquals(true, study.located().getFirst().hasAngle());
    }
}
