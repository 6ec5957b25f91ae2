package org.varwright.problem;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.util.Collections;
import org.junit.jupiter.api.Test;

class MessageTest {
    @Test
    void everyTemplateFillsWithoutALeftover() {
        for (Message message : Message.values()) {
            String text = new Problem(message, Place.NOWHERE, Collections.nCopies(message.placeholders(), "x")).text();
            assertFalse(text.matches("(?s).*\\{[0-9]+}.*"), message + " leaves a placeholder: " + text);
            assertFalse(text.isBlank(), message + " is blank");
        }
    }

    @Test
    void aPlacePrintsWhatIsKnownOfIt() {
        assertEquals("a.yaml:3:7 stages[0].unit", new Place("a.yaml", 3, 7, "stages[0].unit").print());
        assertEquals("a.yaml", new Place("a.yaml", 0, 0, "").print());
        assertEquals("row 4", new Place("", 0, 0, "row 4").print());
    }
}
