package org.varwright.page;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class PageTest {
    /** Found by the law over every command: columns that leave the last one no room took the header past the edge, though its rows kept to it. */
    @Test
    void aTableKeepsToThePageWhereItsColumnsLeaveNoRoom() {
        String wide = "17.38 (2900 to 41); 5.11 (30 to 12); 3.02 (9 to 4), and so on up to the very edge";
        String page = new Page()
                .table(
                        List.of("", "resonance at", "x11", "x13", "on"),
                        List.of(List.of("WARN", wide, "1.25", "0.91", "stage 1")))
                .print();
        assertTrue(page.lines().allMatch(line -> line.length() <= Page.COLUMNS), page);
        assertTrue(page.replaceAll("\\s+", " ").contains("0.91 stage 1"), page);
    }
}
