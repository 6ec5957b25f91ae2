package org.varwright.bank;

import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A unit that could be fitted.
 *
 * @param serial number, unique
 * @param unit its type; not always one that the bank uses
 * @param capacitanceFarads measured [F]; empty where only the nameplate is known
 * @param note free text
 */
public record Spare(String serial, UnitType unit, OptionalDouble capacitanceFarads, Optional<String> note) {}
