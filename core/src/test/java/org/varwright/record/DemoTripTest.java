package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.comtrade.Analog;
import org.varwright.comtrade.Bytes;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.Source;
import org.varwright.unbalance.Candidate;

/** The demo's record tells the story that it was made from. */
class DemoTripTest {
    @Test
    void theStoryIsFoundInTheRecord() throws Exception {
        RecordStudy study = RecordStudy.of(RecordInput.of(DemoTrip.make()), DemoTrip.bank(), List.of());
        String said = RecordStudyText.of(study);
        assertTrue(study.matching().orElseThrow().open().isEmpty(), said);
        assertEquals(2, study.located().size(), said);
        Candidate before = study.located().getFirst().locate().candidates().getFirst();
        assertEquals("stage 3/B", before.parts().getFirst().place(), said);
        assertEquals("sections-shorted", before.parts().getFirst().kind(), said);
        Candidate after = study.located().getLast().locate().candidates().getFirst();
        assertEquals("stage 3/B", after.parts().getFirst().place(), said);
        assertEquals("unit-out", after.parts().getFirst().kind(), said);
        assertTrue(said.contains("TRIP S3"), said);
        assertEquals(DemoTrip.FUSE_SECONDS, study.located().getLast().fromSeconds(), 0.03, said);
    }

    /** Run with {@code -Dvarwright.record=true} to write the file anew. */
    @Test
    void theFileIsThatRecord() throws Exception {
        if (Boolean.getBoolean("varwright.record")) {
            java.nio.file.Files.write(DemoTrip.FILE, DemoTrip.file());
        }
        byte[] file = java.nio.file.Files.readAllBytes(DemoTrip.FILE);
        Recording read = RecordReader.readCombined(Source.of("trip.cff", Bytes.of(file)), ReadOptions.ALL);
        Recording made = DemoTrip.make();
        for (int c = 0; c < made.analogs().size(); c++) {
            Analog is = read.analogs().get(c);
            Analog should = made.analogs().get(c);
            assertEquals(should.name(), is.name());
            double step = is.scale().multiplier();
            for (int i = 0; i < made.seconds().size(); i++) {
                assertEquals(should.values().at(i), is.values().at(i), 0.6 * step, should.name() + " at " + i);
            }
        }
        assertEquals(made.seconds().size(), read.seconds().size());
    }
}
