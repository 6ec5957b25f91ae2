package org.varwright.job;

import java.util.List;

/**
 * Events of different devices that disagree. Both stay until a person says which holds.
 *
 * @param about what they disagree about, in words
 * @param events their ids
 */
public record Conflict(String about, List<String> events) {
    public Conflict {
        events = List.copyOf(events);
    }
}
