package org.varwright.jobsheet;

/** Paper that a report is printed on. */
public enum PaperSize {
    A4("A4"),
    LETTER("Letter");

    private final String code;

    PaperSize(String code) {
        this.code = code;
    }

    /** The word in the job sheet. */
    public String code() {
        return code;
    }
}
