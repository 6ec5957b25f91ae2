package org.varwright.fit;

import java.util.List;

/**
 * What the person asks for.
 *
 * @param keep positions (or serial numbers of units in place) that are not to be touched
 * @param swaps exchanges that are to be made whatever the search says
 * @param without serial numbers of spares that are not to be used
 * @param aim what counts after the limits
 * @param extraLifts lifts beyond those that replace condemned units that are tried exhaustively, 0 or more; 2 is usual
 */
public record FitOptions(List<String> keep, List<Exchange> swaps, List<String> without, Aim aim, int extraLifts) {
    /** Nothing asked for: fewest lifts, up to two extra lifts tried. */
    public static final FitOptions USUAL = new FitOptions(List.of(), List.of(), List.of(), Aim.FEWEST_LIFTS, 2);

    public FitOptions {
        keep = List.copyOf(keep);
        swaps = List.copyOf(swaps);
        without = List.copyOf(without);
    }

    /** What counts once every limit is kept. */
    public enum Aim {
        /** Fewest lifts, then least unbalance. */
        FEWEST_LIFTS,
        /** Least unbalance, then fewest lifts. */
        LEAST_UNBALANCE
    }

    /**
     * Two units that change places.
     *
     * @param first position or serial number of a unit in place
     * @param second position, serial number of a unit in place, or serial number of a spare
     */
    public record Exchange(String first, String second) {}
}
