package org.varwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;

/** Holds for every bank of 1 to 12 stages that a seed makes up. */
class OneLineDrawingLawTest {
    private static final int BANKS = 200;

    @Test
    void noWordsLieOverAnythingAndNothingIsOffTheSheet() {
        List<String> faults = new ArrayList<>();
        for (long seed = 1; seed <= BANKS; seed++) {
            Bank bank = RandomBank.of(seed);
            for (DrawingOptions options : List.of(DrawingOptions.LANDSCAPE, DrawingOptions.PORTRAIT)) {
                List<Mark> marks = OneLineDrawing.sheet(bank, DrawingState.inService(bank), options)
                        .marks();
                long at = seed;
                Overlaps.in(marks, options.page())
                        .forEach(f -> faults.add("seed " + at + " " + options.page() + ": " + f));
                assertTrue(marks.size() > 40, "seed " + seed + " draws next to nothing");
            }
        }
        assertEquals(List.of(), faults.stream().limit(10).toList());
    }

    /** Letters of 4.6 px at 96 a inch are 3.4 points, as on a nameplate: the least that anybody should be given (common practice, no source). */
    @Test
    void wordsOfABankOfSixteenColumnsCanBeReadOnA4() {
        int checked = 0;
        for (long seed = 1; seed <= BANKS; seed++) {
            Bank bank = RandomBank.of(seed);
            Feeding feeding = Feeding.of(bank);
            int columns =
                    Columns.of(bank, feeding, Claims.of(bank, feeding)).all().size();
            if (columns <= 16 && feeding.deepest() <= 3) {
                checked++;
                double smallest = smallestLetters(bank, DrawingOptions.LANDSCAPE);
                assertTrue(smallest >= 4.6, "seed " + seed + ": smallest letters are " + smallest + " px");
            }
        }
        assertTrue(checked > BANKS / 4, "only " + checked + " banks are of that size");
    }

    /** Whatever the bank, on A3. */
    @Test
    void wordsOfAnyBankCanBeReadOnA3() {
        DrawingOptions large = new DrawingOptions(DrawingOptions.Page.A3_LANDSCAPE, DrawingOptions.Colours.COLOUR);
        for (long seed = 1; seed <= BANKS; seed++) {
            double smallest = smallestLetters(RandomBank.of(seed), large);
            assertTrue(smallest >= 5.0, "seed " + seed + ": smallest letters are " + smallest + " px");
        }
    }

    private static double smallestLetters(Bank bank, DrawingOptions options) {
        return OneLineDrawing.sheet(bank, DrawingState.inService(bank), options).marks().stream()
                .filter(m -> m.kind() == Mark.Kind.TEXT)
                .mapToDouble(m -> (m.bottom() - m.top()) / 0.96)
                .min()
                .orElseThrow();
    }

    @Test
    void everyThingIsDrawnOnce() {
        for (long seed = 1; seed <= BANKS; seed++) {
            Bank bank = RandomBank.of(seed);
            DrawnThings.check("seed " + seed, bank, DrawingState.inService(bank), DrawingOptions.LANDSCAPE);
        }
    }

    @Test
    void theSameBankGivesTheSameText() {
        for (long seed = 1; seed <= 20; seed++) {
            Bank bank = RandomBank.of(seed);
            Bank again = RandomBank.of(seed);
            assertEquals(
                    OneLineDrawing.draw(bank, DrawingState.inService(bank), DrawingOptions.LANDSCAPE),
                    OneLineDrawing.draw(again, DrawingState.inService(again), DrawingOptions.LANDSCAPE),
                    "seed " + seed);
        }
    }
}
