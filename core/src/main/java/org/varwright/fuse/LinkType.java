package org.varwright.fuse;

/** How fast a standard expulsion link is. */
public enum LinkType {
    /** Fast. */
    K("fast"),
    /** Slow. */
    T("slow");

    private final String word;

    LinkType(String word) {
        this.word = word;
    }
}
