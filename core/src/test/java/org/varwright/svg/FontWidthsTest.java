package org.varwright.svg;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class FontWidthsTest {
    /** From memory, unchecked: "A" is 667 and "i" 222 thousandths wide in Helvetica's own metrics file. */
    @Test
    void widthsAreThoseOfTheFace() {
        assertEquals(6.67, FontWidths.width("A", 10.0, false), 1e-9);
        assertEquals(2.22, FontWidths.width("i", 10.0, false), 1e-9);
        assertEquals(7.22, FontWidths.width("A", 10.0, true), 1e-9);
    }

    @Test
    void wrapsAtBlanksThenMarksThenAnywhere() {
        assertEquals(
                List.of("bolt out,", "holds", "closed"), FontWidths.wrap("bolt out, holds closed", 10.0, false, 45.0));
        assertEquals(List.of("LBL-", "section"), FontWidths.wrap("LBL-section", 10.0, false, 40.0));
        assertEquals(List.of("iiiii", "iiiii", "i"), FontWidths.wrap("iiiiiiiiiii", 10.0, false, 12.0));
    }

    @Test
    void noLineIsWiderThanAskedAndNothingIsLost() {
        String text = "grounding switch 57-2 of the north incoming, seen through window";
        for (double width = 12.0; width < 200.0; width += 7.0) {
            List<String> lines = FontWidths.wrap(text, 8.6, true, width);
            for (String line : lines) {
                assertTrue(FontWidths.width(line, 8.6, true) <= width, line);
            }
            assertEquals(text.replace(" ", ""), String.join("", lines).replace(" ", ""));
        }
    }

    @Test
    void onlyNamesLoseTheirMiddle() {
        String essay = "x".repeat(500);
        assertEquals(61, FontWidths.name(essay).length());
        assertTrue(FontWidths.name(essay).contains("…"));
        assertEquals(essay, String.join("", FontWidths.wrap(essay, 8.0, false, 100.0)));
    }

    @Test
    void controlsAndTurnedTextAreDropped() {
        assertEquals("a b", SvgText.clean("a\tb"));
        assertEquals("ab", SvgText.clean("a\u0000\u202E\u0085\uFFFE\uD800b"));
        assertEquals("😀", SvgText.clean("😀"));
        assertEquals("&lt;&amp;&gt;&quot;&#39;", SvgText.escape("<&>\"'"));
        assertEquals("-0.05", SvgText.number(-0.05));
        assertEquals("12.5", SvgText.number(12.5));
        assertEquals("3", SvgText.number(2.999));
    }
}
