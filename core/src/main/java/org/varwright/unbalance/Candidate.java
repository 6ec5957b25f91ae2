package org.varwright.unbalance;

import java.util.List;
import org.varwright.network.Failure;
import org.varwright.quantity.Complex;

/**
 * One way to come to a sensor's reading.
 *
 * @param parts what failed; empty for "nothing failed"
 * @param probability of all candidates
 * @param sensor what the sensor would show, primary
 * @param lines what lines A, B, C would draw [A]
 * @param distance of the reading from what it would show, in standard deviations
 */
public record Candidate(List<Part> parts, double probability, Complex sensor, List<Double> lines, double distance) {
    public Candidate {
        parts = List.copyOf(parts);
        lines = List.copyOf(lines);
    }

    /**
     * One failure, as far as the sensor can tell places apart.
     *
     * @param place leg such as {@code rack/A1}, or phases such as {@code rack phase A}
     * @param kind {@code unit-out}, {@code sections-shorted}, {@code elements-out}, {@code unit-shorted}, {@code phase-open}
     * @param count units out in one group, sections shorted or elements out in one unit, phases open
     * @param groups number of groups in which it would look the same
     * @param units number of units that it may be
     * @param standIn a failure of this sort, for the network
     */
    public record Part(String place, String kind, int count, int groups, int units, List<Failure> standIn) {
        public Part {
            standIn = List.copyOf(standIn);
        }

        /** Such as {@code 2 units out in one group of rack/A1}. */
        public String words() {
            return switch (kind) {
                case "unit-out" ->
                    count == 1
                            ? "a unit out (fuse operated) in " + place
                            : count + " units out in one group of " + place;
                case "sections-shorted" ->
                    count + (count == 1 ? " section" : " sections") + " shorted in a unit of " + place;
                case "elements-out" ->
                    count + (count == 1 ? " element fuse" : " element fuses") + " operated in a unit of " + place;
                case "unit-shorted" -> "a unit shorted in " + place;
                default ->
                    count == 1
                            ? place + " open: bank fuse, switch pole, connection, or the supply's phase lost"
                            : place + " open: only one pole closed";
            };
        }
    }

    /** All parts in words. */
    public String words() {
        return parts.isEmpty()
                ? "nothing failed: drift, unequal voltages, or the sensor itself"
                : String.join(", and ", parts.stream().map(Part::words).toList());
    }
}
