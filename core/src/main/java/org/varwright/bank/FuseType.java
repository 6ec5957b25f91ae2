package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A type of fuse.
 *
 * @param name unique among fuse types
 * @param kind expulsion or current-limiting
 * @param link trade name of the link, such as {@code 65T}
 * @param ratedAmperes rated current [A]; for a link the number in its name where the file gives no other
 * @param ratedVolts rated voltage [V]
 * @param maximumParallelJoules energy that may discharge into it from its neighbours [J]
 * @param interruptingAmperes largest symmetrical current that it interrupts [A]
 * @param meltingAmpereSquaredSeconds smallest I²t at which its element melts [A²s]
 * @param clearingAmpereSquaredSeconds largest I²t that it lets through until the current has ceased [A²s]
 * @param note free text
 */
public record FuseType(
        String name,
        Kind kind,
        Optional<String> link,
        OptionalDouble ratedAmperes,
        OptionalDouble ratedVolts,
        OptionalDouble maximumParallelJoules,
        OptionalDouble interruptingAmperes,
        OptionalDouble meltingAmpereSquaredSeconds,
        OptionalDouble clearingAmpereSquaredSeconds,
        Optional<String> note) {

    /** A fuse of which neither the interrupting rating nor I²t are known. */
    public FuseType(
            String name,
            Kind kind,
            Optional<String> link,
            OptionalDouble ratedAmperes,
            OptionalDouble ratedVolts,
            OptionalDouble maximumParallelJoules,
            Optional<String> note) {
        this(
                name,
                kind,
                link,
                ratedAmperes,
                ratedVolts,
                maximumParallelJoules,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                note);
    }

    /** How a fuse interrupts. */
    public enum Kind {
        EXPULSION,
        CURRENT_LIMITING
    }
}
