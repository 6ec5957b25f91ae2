package org.varwright.isolation;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * What an order of work is wanted for.
 *
 * @param compartments whose doors are to be open; at least one
 * @param start where things stand now
 * @param devicesNotToUse devices that must stay as they are
 * @param limit how many states may be looked at in one search before the answer is undecided
 */
public record PlanRequest(List<String> compartments, Start start, Set<String> devicesNotToUse, int limit) {
    /** Enough for every bank of the examples; a few hundred bytes a state. */
    public static final int USUAL_LIMIT = 2_000_000;

    public PlanRequest {
        compartments = List.copyOf(new LinkedHashSet<>(compartments));
        devicesNotToUse = Collections.unmodifiableSet(new LinkedHashSet<>(devicesNotToUse));
    }

    /** These compartments, from the state that the bank file gives. */
    public static PlanRequest to(List<String> compartments) {
        return new PlanRequest(compartments, new Start.AsInFile(), Set.of(), USUAL_LIMIT);
    }

    public PlanRequest from(Start newStart) {
        return new PlanRequest(compartments, newStart, devicesNotToUse, limit);
    }

    public PlanRequest without(Set<String> devices) {
        return new PlanRequest(compartments, start, devices, limit);
    }

    /** Where things stand when the work starts. */
    public sealed interface Start {
        /** As the bank file says: in service, or its {@code start} positions. */
        record AsInFile() implements Start {}

        /**
         * Devices in these positions and these doors open, everything else in service.
         *
         * @param grounds conductor to the number of portable grounds found on it
         * @param shorts stage to the number of its units found shorted
         */
        record Positions(
                Map<String, String> positions,
                Set<String> openDoors,
                Map<String, Integer> grounds,
                Map<String, Integer> shorts)
                implements Start {
            public Positions {
                positions = Collections.unmodifiableMap(new LinkedHashMap<>(positions));
                openDoors = Collections.unmodifiableSet(new LinkedHashSet<>(openDoors));
                grounds = Collections.unmodifiableMap(new LinkedHashMap<>(grounds));
                shorts = Collections.unmodifiableMap(new LinkedHashMap<>(shorts));
            }

            /** With no portable grounds and no shorts on. */
            public Positions(Map<String, String> positions, Set<String> openDoors) {
                this(positions, openDoors, Map.of(), Map.of());
            }
        }

        /** A state that was saved, such as half-way through another order of work. */
        record Saved(SavedState state) implements Start {}
    }
}
