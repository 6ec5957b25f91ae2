package org.varwright.isolation;

import java.util.List;

/**
 * How moves are to be made, beyond what is safe; given up from the last to the first where no way keeps them (ISO-3).
 *
 * @param doorsLast no switching while a wanted door is open
 * @param outOfAutomatic no switch that a selector governs is moved by hand while that selector stands at automatic
 * @param oneStageAtATime no move makes two stages live at once
 * @param groundedBySwitchOnly on the way back nothing but a grounding switch grounds anything: no other device is closed onto a ground
 */
record Manner(boolean doorsLast, boolean outOfAutomatic, boolean oneStageAtATime, boolean groundedBySwitchOnly) {
    /** From the strictest to none. */
    static final List<Manner> STRICTEST_FIRST = List.of(
            new Manner(true, true, true, true),
            new Manner(true, true, true, false),
            new Manner(true, true, false, false),
            new Manner(true, false, false, false),
            new Manner(false, false, false, false));

    /** The same for the way in, where nothing is asked of what grounds. */
    static final List<Manner> ON_THE_WAY_IN = STRICTEST_FIRST.subList(1, STRICTEST_FIRST.size());

    /** What was given up, in words. */
    List<String> givenUp() {
        List<String> words = new java.util.ArrayList<>();
        if (!doorsLast) {
            words.add("no way keeps the doors shut until all switching is done: something is switched while a door is"
                    + " open; everybody stands clear of it then");
        }
        if (!outOfAutomatic) {
            words.add("no way takes the controller out of automatic first: it may switch by itself at any time");
        }
        if (!oneStageAtATime) {
            words.add("no way switches the stages on one by one: several become live in one move");
        }
        return words;
    }
}
