package org.varwright.survey;

/** What a healthy unit would read, and how well that is known. */
public sealed interface Reference {
    /** The middle of what is expected [F]. */
    double farads();

    /** In words, for the reason. */
    String words();

    /**
     * A factory or earlier value of this very unit.
     *
     * @param farads [F]
     * @param sigma standard deviation as a part of it
     */
    record Factory(double farads, double sigma) implements Reference {
        @Override
        public String words() {
            return "its own earlier value";
        }
    }

    /**
     * What this very unit read on an earlier visit, when it was in order.
     *
     * @param farads [F]
     * @param sigma standard deviation as a part of it
     * @param when the visit, in words
     */
    record Earlier(double farads, double sigma, String when) implements Reference {
        @Override
        public String words() {
            return "its own value of " + when;
        }
    }

    /** Whether it is of this very unit. */
    default boolean isOwn() {
        return this instanceof Factory || this instanceof Earlier;
    }

    /**
     * The median of its mates.
     *
     * @param farads [F]
     * @param sigma standard deviation as a part of it
     * @param count of mates
     * @param where they stand: the leg, the stage, the bank
     */
    record Mates(double farads, double sigma, int count, String where) implements Reference {
        @Override
        public String words() {
            return "the median of " + count + " mates in " + where;
        }
    }

    /**
     * The nameplate: anywhere within its tolerance, all as likely.
     *
     * @param ratedFarads by kvar, voltage and frequency [F]
     * @param low lower end of the tolerance, as a part of it
     * @param high upper end, likewise
     */
    record Nameplate(double ratedFarads, double low, double high) implements Reference {
        @Override
        public double farads() {
            return ratedFarads * (1.0 + (low + high) / 2.0);
        }

        @Override
        public String words() {
            return "its nameplate";
        }
    }

    /** Standard deviation as a part of {@link #farads()}. */
    default double relativeSigma() {
        return switch (this) {
            case Factory factory -> factory.sigma();
            case Earlier earlier -> earlier.sigma();
            case Mates mates -> mates.sigma();
            case Nameplate plate ->
                (plate.high() - plate.low()) / Math.sqrt(12.0) / (1.0 + (plate.low() + plate.high()) / 2.0);
        };
    }
}
