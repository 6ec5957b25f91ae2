package org.varwright.duty;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The bank beside one load.
 *
 * @param load such as {@code full load}
 * @param watts [W]
 * @param vars without the bank [var]
 * @param powerFactor without the bank
 * @param wantedVars from the bank for the power factor wanted [var]; below 0 where none are wanted
 * @param allOnPowerFactor with every stage on
 * @param isLeading whether it is leading with every stage on
 * @param use combination to use; empty where no power factor is wanted
 * @param clear where resonance speaks against that one: the most that it doesn't speak against and that doesn't lead
 */
public record LoadAnswer(
        String load,
        double watts,
        double vars,
        double powerFactor,
        OptionalDouble wantedVars,
        double allOnPowerFactor,
        boolean isLeading,
        Optional<Use> use,
        Optional<Use> clear) {
    /**
     * What to have on.
     *
     * @param combination its name
     * @param vars that it gives [var]
     * @param powerFactor with it
     * @param isEnough whether the power factor wanted is reached
     * @param isToAvoid whether resonance speaks against it
     */
    public record Use(String combination, double vars, double powerFactor, boolean isEnough, boolean isToAvoid) {}
}
