package org.varwright.record;

import java.util.List;

/**
 * A status channel as its changes.
 *
 * @param number in the record, from 1
 * @param name as in the record
 * @param atBegin its state when the record begins
 * @param changes when it changed [s], in order
 */
public record StatusTrack(int number, String name, boolean atBegin, List<Double> changes) {
    public StatusTrack {
        changes = List.copyOf(changes);
    }
}
