package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
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
        assertEquals(DemoTrip.file().length, file.length);
    }
}
