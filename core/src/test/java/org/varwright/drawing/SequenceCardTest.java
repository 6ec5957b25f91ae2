package org.varwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.varwright.bank.Bank;
import org.varwright.interlock.Move;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;
import org.w3c.dom.Document;

class SequenceCardTest {
    static List<Path> examples() throws java.io.IOException {
        return OneLineDrawingTest.examples().toList();
    }

    /** TF-1 goes from the selector to the disconnector, which then gives TF-2. */
    private static final List<CardMove> MOVES = List.of(
            new CardMove(1, "43-2", "turn 43-2 to off", List.of(), List.of()),
            new CardMove(2, "43-2", "extend the bolt of 43-2, take TF-1", List.of(), List.of("TF-1")),
            new CardMove(3, "89-2", "put TF-1 into 89-2", List.of("TF-1"), List.of()),
            new CardMove(4, "89-2", "open 89-2", List.of(), List.of()),
            new CardMove(5, "89-2", "extend the bolt of 89-2, take TF-2", List.of(), List.of("TF-2")));

    @Test
    void everyMoveHasItsRowAndEveryKeyItsLane() {
        Document card = DrawnThings.parsed(
                SequenceCard.draw(OneLineDrawingTest.tamarack(), "way in", MOVES, DrawingOptions.PORTRAIT));
        assertEquals(List.of("1", "2", "3", "4", "5"), DrawnThings.named(card, "step"));
        assertEquals("1 turn 43-2 to off 43-2", DrawnThings.words(card, "step", "1"));
        assertEquals("3 put TF-1 into 89-2 89-2 TF-1", DrawnThings.words(card, "step", "3"));
        assertEquals("4 open 89-2", DrawnThings.words(card, "step", "4"), "shares the box of step 3");
        assertEquals(List.of("TF-1", "TF-2"), DrawnThings.named(card, "carried"));
        assertEquals(List.of("TF-1", "TF-1", "TF-2"), DrawnThings.named(card, "trapped"));
    }

    @Test
    void aKeyThatIsPutInFirstWasInHandBefore() {
        Document card = DrawnThings.parsed(SequenceCard.draw(
                OneLineDrawingTest.tamarack(), "way back", MOVES.subList(2, 4), DrawingOptions.PORTRAIT));
        assertEquals(List.of("TF-1"), DrawnThings.named(card, "carried"));
        assertEquals(List.of("TF-1"), DrawnThings.named(card, "trapped"));
    }

    @Test
    void nothingIsLeftOutOfALongInstruction() {
        String words = "put key TF-1 into the lock of 89-2 (holds closed) and withdraw the bolt; the key is trapped; "
                + "say so to the second person and wait for the answer";
        Document card = DrawnThings.parsed(SequenceCard.draw(
                OneLineDrawingTest.tamarack(),
                "way in",
                List.of(new CardMove(1, "89-2", words, List.of("TF-1"), List.of())),
                DrawingOptions.LANDSCAPE));
        assertTrue(DrawnThings.words(card, "step", "1").contains(words));
    }

    /** Random walks of 1 to 40 moves on every example. */
    @ParameterizedTest
    @MethodSource("examples")
    void noWordsLieOverAnything(Path file) {
        Bank bank = OneLineDrawingTest.read(file);
        Scheme scheme = Scheme.of(bank);
        SplittableRandom random = new SplittableRandom(11);
        for (int length = 1; length <= 40; length += 3) {
            List<CardMove> moves = new ArrayList<>();
            State state = scheme.start();
            while (moves.size() < length) {
                List<Move> possible = scheme.moves(state);
                Move move = possible.get(random.nextInt(possible.size()));
                moves.add(CardMove.of(moves.size() + 1, move));
                state = scheme.apply(state, move);
            }
            for (DrawingOptions options : List.of(DrawingOptions.PORTRAIT, DrawingOptions.LANDSCAPE)) {
                List<Mark> marks =
                        SequenceCard.sheet(bank, "walk", moves, options).marks();
                assertFalse(marks.isEmpty());
                assertEquals(List.of(), Overlaps.in(marks, options.page()), file + ", " + length + " moves");
            }
        }
    }
}
