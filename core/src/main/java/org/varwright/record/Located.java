package org.varwright.record;

import org.varwright.unbalance.Locate;

/**
 * Which failures explain what a sensor showed in a record.
 *
 * @param sensor its name
 * @param channel name of its channel
 * @param fromSeconds begin of the stretch that was read [s]
 * @param toSeconds its end [s]
 * @param hasHealthy whether the record also shows it before anything changed
 * @param hasAngle whether the bus voltage gave its angle
 * @param locate the answer
 */
public record Located(
        String sensor,
        String channel,
        double fromSeconds,
        double toSeconds,
        boolean hasHealthy,
        boolean hasAngle,
        Locate locate) {}
