package org.varwright.fit;

/**
 * One lift: one unit taken out for good, put in from the spares, or moved from one position to another. Replacing a unit is two lifts, exchanging two units is
 * two.
 *
 * @param number 1-based, in the order in which to do it
 * @param kind which of these
 * @param serial of the unit, or its position where the number isn't known
 * @param from position, or {@link #SPARES}
 * @param to position, {@link #OUT} or {@link #ASIDE}
 * @param setDown whether it waits on the floor until its place is free
 * @param why what is known against the unit, in one sentence; empty where nothing is
 */
public record Move(int number, Kind kind, String serial, String from, String to, boolean setDown, String why) {
    /** Where spares come from. */
    public static final String SPARES = "spares";
    /** Where condemned units go. */
    public static final String OUT = "out";
    /** Where good units go that are taken out. */
    public static final String ASIDE = "set aside";

    /** What a lift does. */
    public enum Kind {
        TAKE_OUT,
        RELOCATE,
        PUT_IN
    }
}
