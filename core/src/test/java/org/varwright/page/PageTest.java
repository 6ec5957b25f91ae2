package org.varwright.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

class PageTest {
    /** Found by JobFoldersLawIT, with a file's name; a bank's name or a note can hold the same. */
    @Test
    void nothingInATextBeginsALineOrSteersTheTerminal() {
        String odd = "bay\u001b[2J 2\nALL PROVEN DEAD\r\u202e\u0085";
        String one = "bay\ufffd[2J 2 ALL PROVEN DEAD \ufffd\ufffd";
        assertEquals(
                List.of("  - " + one, one, "  x                       " + one, "  h", "  " + one),
                new Page()
                        .item("  - ", odd)
                        .text(odd)
                        .row("x", odd)
                        .table(List.of("h"), List.of(List.of(odd)))
                        .print()
                        .lines()
                        .toList());
    }

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
