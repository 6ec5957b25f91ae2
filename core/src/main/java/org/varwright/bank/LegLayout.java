package org.varwright.bank;

/**
 * How the units of one leg are arranged: {@code strings} in parallel, each of {@code groups} in series, each of {@code units} in parallel.
 *
 * @param strings 1 or more
 * @param groups 1 or more
 * @param units 1 or more
 */
public record LegLayout(int strings, int groups, int units) {
    /** Units in the leg. */
    public int count() {
        return strings * groups * units;
    }
}
