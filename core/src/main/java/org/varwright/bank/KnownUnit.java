package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * What is known of the unit at one position.
 *
 * @param at its position
 * @param serial number
 * @param capacitanceFarads factory or earlier measurement [F]
 * @param made year
 * @param label what is written or coded on it
 * @param note free text
 */
public record KnownUnit(
        UnitPosition at,
        Optional<String> serial,
        OptionalDouble capacitanceFarads,
        OptionalInt made,
        Optional<String> label,
        Optional<String> note) {}
