package org.varwright.basis;

/** How far a source can be leaned on. */
public enum Standing {
    /** A published document, named. */
    PUBLISHED(""),
    /** Derived here from physics; a derivation is in {@code docs/theory}. */
    FIRST_PRINCIPLES(""),
    /** Widely done, without a source to cite. */
    COMMON_PRACTICE("common practice, no source"),
    /** Believed to stand in the named document, which nobody had open. */
    UNCHECKED("from memory, unchecked");

    private final String remark;

    Standing(String remark) {
        this.remark = remark;
    }

    /** What to print beside the source; empty where nothing needs saying. */
    public String remark() {
        return remark;
    }
}
