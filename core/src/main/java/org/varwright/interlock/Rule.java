package org.varwright.interlock;

import java.util.List;

/**
 * One way in which a move is allowed: when {@code guard} and every key count holds, {@code effect} is what becomes of the bits.
 *
 * @param move what is done
 * @param guard when it is allowed
 * @param counted keys with several copies that must be free
 * @param effect the bits after it
 * @param switching the closed bit of the device that it moves; 0 where it moves none or a selector
 * @param waits the charge bit of the stage that it waits for; 0 where it is no wait
 */
record Rule(Move move, Guard guard, List<KeyCount> counted, Guard effect, long switching, long waits) {
    Rule {
        counted = List.copyOf(counted);
    }

    /**
     * A key of which fewer copies are trapped than there are.
     *
     * @param plantMask bits of traps in the plant word
     * @param plantFlip those of them that trap when clear
     * @param accessMask bits of traps in the access word
     * @param accessFlip those of them that trap when clear
     * @param copies how many copies there are
     */
    record KeyCount(long plantMask, long plantFlip, long accessMask, long accessFlip, int copies) {
        boolean isFree(long plant, long access) {
            return trapped(plant, access) < copies;
        }

        int trapped(long plant, long access) {
            return Long.bitCount((plant ^ plantFlip) & plantMask) + Long.bitCount((access ^ accessFlip) & accessMask);
        }
    }

    boolean allows(long plant, long access) {
        if (!guard.holds(plant, access)) {
            return false;
        }
        for (KeyCount key : counted) {
            if (!key.isFree(plant, access)) {
                return false;
            }
        }
        return true;
    }
}
