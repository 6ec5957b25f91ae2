package org.varwright.bank;

import java.util.OptionalDouble;

/**
 * What the bank compensates, without the bank.
 *
 * @param watts active power at full load, three-phase [W]
 * @param vars reactive power at full load, three-phase, positive where the load draws it [var]
 * @param lightWatts active power at light load [W]; given together with {@code lightVars}
 * @param lightVars reactive power at light load [var]
 * @param wantedPowerFactor that the bank should bring about at full load, 0.5 to 1
 */
public record Load(
        double watts,
        double vars,
        OptionalDouble lightWatts,
        OptionalDouble lightVars,
        OptionalDouble wantedPowerFactor) {}
