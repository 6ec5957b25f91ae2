package org.varwright.bank;

/**
 * A place in the bank that holds one unit, written {@code stage/leg/s2g3u4} without the parts that can only be 1.
 *
 * @param stage name of the stage
 * @param leg name of the leg; empty for a three-phase unit, whose legs belong together
 * @param string 1-based
 * @param group 1-based, counted from the line end
 * @param unit 1-based
 * @param name as written in files and on screens
 */
public record UnitPosition(String stage, String leg, int string, int group, int unit, String name) {
    static UnitPosition of(String stage, String leg, LegLayout layout, int string, int group, int unit) {
        StringBuilder name = new StringBuilder(stage);
        if (!leg.isEmpty()) {
            name.append('/').append(leg);
        }
        StringBuilder place = new StringBuilder();
        if (layout.strings() > 1) {
            place.append('s').append(string);
        }
        if (layout.groups() > 1) {
            place.append('g').append(group);
        }
        if (layout.units() > 1) {
            place.append('u').append(unit);
        }
        if (!place.isEmpty()) {
            name.append('/').append(place);
        }
        return new UnitPosition(stage, leg, string, group, unit, name.toString());
    }
}
