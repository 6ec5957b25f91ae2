package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.json.Json;
import org.varwright.page.Page;

class RecordingTextTest {
    private static final Recording FOUR = new RecordDraft(
                    "Plover Hill", "REC 1", 60.0, 1000.0, new Instant(2024, 3, 9, 14, 5, 7, 25_000_000))
            .analog("IA", "A", "A", new Ratio(Ratio.Side.SECONDARY, 600.0, 5.0), 0.0, 1.5, Double.NaN, -1.5)
            .analog("VA", "A", "kV", Ratio.UNKNOWN, 8.5, 4.0, 2.0, -8.5)
            .status("CLOSED", "A", true, true, false, true)
            .status("TRIP", "", false, false, false, false)
            .triggered(0.002)
            .build();

    @Test
    void thePageSaysWhatIsInTheRecord() {
        assertEquals("""
                DISTURBANCE RECORD  PLOVER HILL  REC 1
                  written by              IEEE C37.111-2013 (IEC 60255-24:2013), FLOAT32, names UTF-8
                  first sample            2024-03-09T14:05:07.025000
                  trigger                 2 ms after the first sample (2024-03-09T14:05:07.027000)
                  samples                 4 from 0 s to 3 ms, at 1000 a second
                  line frequency          60 Hz

                ANALOG CHANNELS (2)
                  no.  name  phase    least  largest       rms  side              missing
                    1  IA    A       -1.5 A    1.5 A   1.225 A  secondary, 600:5        1
                    2  VA    A      -8.5 kV   8.5 kV  6.413 kV  not said

                STATUS CHANNELS (2)
                  no.  name    changes
                    1  CLOSED  0 at 2 ms, 1 at 3 ms
                  1 never change; 0 of them are 1.
                """, RecordingText.of(FOUR));
    }

    @Test
    void theJsonHasTheFieldsOfTheCommand() {
        Json.Obj json = RecordingJson.of(FOUR).build();
        assertEquals(
                List.of(
                        "standard",
                        "revision",
                        "format",
                        "codePage",
                        "station",
                        "device",
                        "lineHertz",
                        "start",
                        "trigger",
                        "triggerSeconds",
                        "clock",
                        "rates",
                        "timeBasis",
                        "samplesInFile",
                        "samples",
                        "fromSeconds",
                        "toSeconds",
                        "analog",
                        "status",
                        "header",
                        "information",
                        "remarks"),
                List.copyOf(json.members().keySet()));
        Json.Obj samples = (Json.Obj) RecordingJson.samples(FOUR);
        assertEquals(
                "[0,1.5,null,-1.5]",
                ((Json.Arr) samples.get("analog")).items().getFirst().printLine());
        assertEquals("[\"1101\",\"0000\"]", samples.get("status").printLine());
    }

    @Test
    void strangeNamesKeepToThePage() {
        Recording strange = new RecordDraft(
                        "\u0007bell", "x".repeat(300), 0.0, 1.0, new Instant(2024, 1, 1, 0, 0, 0, 0))
                .analog("n".repeat(500) + "\u001b[2J", "", "", Ratio.UNKNOWN, 1.0)
                .build();
        String text = RecordingText.of(strange);
        assertTrue(text.contains("n".repeat(32)) && !text.contains("n".repeat(33)), text);
        assertTrue(text.lines().allMatch(l -> l.length() <= Page.COLUMNS), text);
        assertTrue(text.chars().allMatch(c -> c >= ' ' || c == '\n'), text);
    }
}
