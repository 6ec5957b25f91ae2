package org.varwright.fuse;

/**
 * A time read from a fuse's curve, or a bound where the curve doesn't reach so far.
 *
 * @param seconds [s]; for {@link Bound#NOT_KNOWN} NaN
 * @param bound what the number is
 */
public record FuseTime(double seconds, Bound bound) {
    public static final FuseTime NOT_KNOWN = new FuseTime(Double.NaN, Bound.NOT_KNOWN);

    /** What a time is. */
    public enum Bound {
        ABOUT("about"),
        AT_LEAST("at-least"),
        AT_MOST("at-most"),
        /** The curve ends before: longer than the number, or never. */
        LONGER_OR_NEVER("longer-or-never"),
        NOT_KNOWN("not-known");

        private final String code;

        Bound(String code) {
            this.code = code;
        }

        /** The word in JSON. */
        public String code() {
            return code;
        }
    }

    static FuseTime about(double seconds) {
        return new FuseTime(seconds, Bound.ABOUT);
    }

    static FuseTime atLeast(double seconds) {
        return new FuseTime(seconds, Bound.AT_LEAST);
    }

    static FuseTime atMost(double seconds) {
        return new FuseTime(seconds, Bound.AT_MOST);
    }

    static FuseTime longerOrNever(double seconds) {
        return new FuseTime(seconds, Bound.LONGER_OR_NEVER);
    }

    public boolean isKnown() {
        return bound != Bound.NOT_KNOWN;
    }

    /** Whether it is certain, by the curve, that the time is over after {@code limitSeconds}. */
    public boolean isWithin(double limitSeconds) {
        return switch (bound) {
            case ABOUT, AT_MOST -> seconds <= limitSeconds * (1.0 + 1e-9);
            case AT_LEAST, LONGER_OR_NEVER, NOT_KNOWN -> false;
        };
    }

    /** So much later; what has no end stays without one. */
    FuseTime plus(double more) {
        return bound == Bound.LONGER_OR_NEVER ? this : new FuseTime(seconds + more, bound);
    }
}
