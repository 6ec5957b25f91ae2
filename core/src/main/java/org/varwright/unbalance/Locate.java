package org.varwright.unbalance;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.basis.Basis;

/**
 * Which failures explain a sensor's reading.
 *
 * @param bank the bank
 * @param sighting what was read
 * @param senses what the sensor measures
 * @param ratio secondary over primary; 1 where values are primary
 * @param candidates most probable first, down to 1 %
 * @param isExplained whether any candidate comes within 3 standard deviations of the reading
 * @param nextMeasurements what would tell the candidates apart, best first
 * @param notes what to bear in mind
 * @param basis how it came about
 */
public record Locate(
        Bank bank,
        Sighting sighting,
        Protection.Senses senses,
        double ratio,
        List<Candidate> candidates,
        boolean isExplained,
        List<String> nextMeasurements,
        List<String> notes,
        Basis basis) {
    /** How a measurement begins that can't be taken once the bank is out. */
    public static final String WITH_THE_BANK_ON = "With the bank on: ";

    public Locate {
        candidates = List.copyOf(candidates);
        nextMeasurements = List.copyOf(nextMeasurements);
        notes = List.copyOf(notes);
    }
}
