package org.varwright.unbalance;

/** Whether a bank may run on with a failure (UNB-2). */
public enum RunVerdict {
    /** Within the continuous limit, and so it would be with one more failure of the kind in the same place. */
    RUN_ON("run on"),
    /** Within the continuous limit, but one more would not be, or there is no more to lose. */
    ALARM("alarm"),
    /** Above the continuous limit, or a whole leg is lost, or a short circuit stands across the supply. */
    TAKE_OUT("take out");

    private final String words;

    RunVerdict(String words) {
        this.words = words;
    }

    /** The words in text and JSON. */
    public String words() {
        return words;
    }
}
