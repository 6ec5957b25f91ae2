package org.varwright.basis;

/** What a check says. */
public enum Verdict {
    PASS("pass"),
    WARN("warn"),
    FAIL("fail");

    private final String code;

    Verdict(String code) {
        this.code = code;
    }

    /** The word in JSON. */
    public String code() {
        return code;
    }
}
