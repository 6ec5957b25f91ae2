package org.varwright.bench;

import java.util.Random;
import org.varwright.comtrade.DataFormat;
import org.varwright.comtrade.Instant;
import org.varwright.comtrade.Ratio;
import org.varwright.comtrade.RecordDraft;
import org.varwright.comtrade.RecordWriter;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.Revision;
import org.varwright.comtrade.WrittenRecord;

/** A disturbance record of any length. */
final class RecordSubject {
    static final int ANALOGS = 16;
    static final int STATUSES = 32;

    private RecordSubject() {}

    static WrittenRecord written(int samples, DataFormat format, Revision revision) {
        return RecordWriter.write(recording(samples), revision, format);
    }

    /** Waves with noise, so that numbers have all lengths; a state changes now and then. */
    static Recording recording(int samples) {
        Random random = new Random(400);
        RecordDraft draft =
                new RecordDraft("Corbel Reach", "REC 1", 60.0, 10_000.0, new Instant(2026, 5, 4, 6, 7, 8, 0));
        for (int c = 0; c < ANALOGS; c++) {
            double[] values = new double[samples];
            for (int i = 0; i < samples; i++) {
                values[i] = 100.0 * Math.sin(2.0 * Math.PI * 60.0 * i / 10_000.0 + c) + random.nextGaussian();
            }
            draft.analog("I" + c, "", "A", Ratio.UNKNOWN, values);
        }
        for (int c = 0; c < STATUSES; c++) {
            boolean[] states = new boolean[samples];
            for (int i = 1; i < samples; i++) {
                states[i] = random.nextInt(10_000) == 0 ? !states[i - 1] : states[i - 1];
            }
            draft.status("S" + c, "", states);
        }
        return draft.build();
    }
}
