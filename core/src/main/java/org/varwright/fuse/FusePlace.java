package org.varwright.fuse;

/** Where a fuse sits. */
public enum FusePlace {
    /** In series with one unit. */
    UNIT("unit fuse"),
    /** In one line, ahead of a whole stage. */
    LINE("line fuse");

    private final String words;

    FusePlace(String words) {
        this.words = words;
    }

    public String words() {
        return words;
    }
}
