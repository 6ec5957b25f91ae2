package org.varwright.record;

import org.varwright.unbalance.Locate;

/**
 * Which failures explain what a sensor showed in a record.
 *
 * @param sensor its name
 * @param channel name of its channel
 * @param seconds middle of the stretch that was read [s]
 * @param hasHealthy whether the record also shows it before anything changed
 * @param hasAngle whether the bus voltage gave its angle
 * @param locate the answer
 */
public record Located(
        String sensor, String channel, double seconds, boolean hasHealthy, boolean hasAngle, Locate locate) {}
