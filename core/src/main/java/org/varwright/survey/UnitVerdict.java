package org.varwright.survey;

/** What to do with a unit. */
public enum UnitVerdict {
    HEALTHY("healthy"),
    WATCH("watch"),
    REPLACE("replace"),
    MEASURE_AGAIN("measure-again"),
    NOT_MEASURED("not-measured");

    private final String code;

    UnitVerdict(String code) {
        this.code = code;
    }

    /** The word in JSON. */
    public String code() {
        return code;
    }

    /** The word for people. */
    public String words() {
        return code.replace('-', ' ');
    }

    /** The more serious of two. */
    UnitVerdict worse(UnitVerdict other) {
        return rank() >= other.rank() ? this : other;
    }

    private int rank() {
        return switch (this) {
            case HEALTHY -> 0;
            case NOT_MEASURED -> 1;
            case WATCH -> 2;
            case MEASURE_AGAIN -> 3;
            case REPLACE -> 4;
        };
    }
}
