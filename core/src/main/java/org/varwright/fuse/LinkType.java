package org.varwright.fuse;

/** How fast a standard expulsion link is. */
public enum LinkType {
    /** Fast. */
    K,
    /** Slow. */
    T
}
