package org.varwright.bank;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Something other than a key that blocks a move.
 *
 * @param device that moves
 * @param to the position that it moves to
 * @param requires for each named device, the positions in which the move is allowed
 * @param note free text
 */
public record Interlock(String device, String to, Map<String, List<String>> requires, Optional<String> note) {
    public Interlock {
        requires = Collections.unmodifiableMap(new LinkedHashMap<>(requires));
    }
}
