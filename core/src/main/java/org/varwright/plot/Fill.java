package org.varwright.plot;

/** How a bar is filled; told apart without colour. */
public enum Fill {
    SOLID,
    HATCHED,
    GREY,
    OPEN
}
