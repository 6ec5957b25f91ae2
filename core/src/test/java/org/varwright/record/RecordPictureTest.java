package org.varwright.record;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.plot.Width;

class RecordPictureTest {
    @Test
    void theDemosTripIsDrawnWithItsMarks() throws Exception {
        RecordStudy study = RecordStudy.of(RecordInput.of(DemoTrip.make()), DemoTrip.bank(), List.of());
        String svg = RecordPicture.svg(study, Width.PAGE).orElseThrow();
        if (Boolean.getBoolean("varwright.look")) {
            java.nio.file.Files.writeString(java.nio.file.Path.of("target/trip.svg"), svg);
        }
        for (String said : List.of("IA S3", "VN S3", "new state", "a unit out")) {
            assertTrue(svg.contains(said), said);
        }
    }

    @Test
    void withoutAPlaceThereIsNoPicture() {
        RecordStudy study = RecordStudy.of(new Synthetic(3840.0, 0.2).bus().input());
        assertEquals(Optional.empty(), RecordPicture.svg(study, Width.PAGE));
    }
}
