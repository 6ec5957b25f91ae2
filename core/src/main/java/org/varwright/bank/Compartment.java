package org.varwright.bank;

import java.util.List;
import java.util.Optional;

/**
 * A space with one door.
 *
 * @param name unique among compartments
 * @param exposes conductors in reach when its door is open
 * @param label what is written or coded on it
 * @param note free text
 */
public record Compartment(String name, List<String> exposes, Optional<String> label, Optional<String> note) {
    public Compartment {
        exposes = List.copyOf(exposes);
    }
}
