package org.varwright.drawing;

import java.util.List;
import org.varwright.interlock.Move;

/**
 * One line of a sequence card.
 *
 * @param step its number in the order of work
 * @param at what it is done on: a device, the door of a compartment, an exchange
 * @param text what to do
 * @param keysIn keys that are put in and trapped
 * @param keysOut keys that come out
 */
public record CardMove(int step, String at, String text, List<String> keysIn, List<String> keysOut) {
    public CardMove {
        keysIn = List.copyOf(keysIn);
        keysOut = List.copyOf(keysOut);
    }

    /** The line for a move of an interlocking scheme. */
    public static CardMove of(int step, Move move) {
        return switch (move) {
            case Move.Withdraw withdraw ->
                new CardMove(step, move.what(), move.text(), withdraw.lock().keys(), List.of());
            case Move.Extend extend ->
                new CardMove(
                        step, move.what(), move.text(), List.of(), extend.lock().keys());
            case Move.Give give ->
                new CardMove(
                        step,
                        move.what(),
                        move.text(),
                        give.exchange().in(),
                        give.exchange().out());
            case Move.Return back ->
                new CardMove(
                        step,
                        move.what(),
                        move.text(),
                        back.exchange().out(),
                        back.exchange().in());
            case Move.Operate operate -> plain(step, move);
            case Move.OpenDoor open -> plain(step, move);
            case Move.CloseDoor close -> plain(step, move);
            case Move.Wait wait -> plain(step, move);
        };
    }

    private static CardMove plain(int step, Move move) {
        return new CardMove(step, move.what(), move.text(), List.of(), List.of());
    }
}
