package org.varwright.duty;

import java.util.List;
import java.util.Optional;
import org.varwright.basis.Check;

/**
 * A spare that would mislead: the same kvar on its plate as the unit wanted, but for another voltage or frequency.
 *
 * @param serial of the spare; empty for a type in the bank file of which no spare is on the list
 * @param type name of its type
 * @param stage in which it would mislead
 * @param differs in words, such as {@code 13.28 kV, not 7.2 kV}
 * @param farads of the spare: measured, else by its plate [F]
 * @param wantedFarads of the unit that belongs there, by its plate [F]
 * @param vars that the spare would give there at nominal voltage [var]
 * @param wantedVars that the unit that belongs there gives [var]
 * @param voltsPerRated voltage there over the spare's rated
 * @param amperesPerRated current there over the spare's rated
 * @param effect on the stage with it fitted in the first position; empty where that can't be solved
 * @param check its capacitance against the tolerance of the unit that belongs there
 */
public record WrongSpare(
        String serial,
        String type,
        String stage,
        String differs,
        double farads,
        double wantedFarads,
        double vars,
        double wantedVars,
        double voltsPerRated,
        double amperesPerRated,
        Optional<Effect> effect,
        Check check) {
    /**
     * What it does to the stage.
     *
     * @param position in which it is fitted
     * @param highestUnitPerRated highest voltage on any unit over its own rated, the spare's by the spare's plate, at nominal bus voltage
     * @param sensors what each sensor shows, in words
     */
    public record Effect(String position, double highestUnitPerRated, List<String> sensors) {
        public Effect {
            sensors = List.copyOf(sensors);
        }
    }
}
