package org.varwright.survey;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;

/**
 * What the readings say of one unit.
 *
 * @param position of the unit
 * @param serial as read, else as the bank file has it
 * @param rows of the table that it stands on
 * @param capacitanceFarads as read, corrected for temperature where that was read [F]; empty where none can be used
 * @param referenceFarads what it was held against [F]
 * @param reference likewise, with its kind
 * @param verdict what to do
 * @param probability of the explanation given, 0 to 1; 1 where a limit decides, such as an open discharge resistor
 * @param sectionsShorted in the explanation given; 0 where none
 * @param elementsOut in the explanation given; 0 where none
 * @param voltagePerHealthy on the most stressed section left inside, multiple of healthy
 * @param voltagePerRated the same, multiple of rated, at nominal voltage
 * @param finding short name of an impossible reading, such as {@code leads-open}; empty where none
 * @param reason one plain sentence
 * @param remarks what else was seen, each one sentence
 * @param posterior every explanation with its probability; empty where nothing could be judged
 * @param checks resistance, insulation, fuse against their limits
 * @param basis how the probability came about (SRV-4)
 */
public record UnitSurvey(
        UnitPosition position,
        Optional<String> serial,
        List<Integer> rows,
        OptionalDouble capacitanceFarads,
        OptionalDouble referenceFarads,
        Optional<Reference> reference,
        UnitVerdict verdict,
        double probability,
        int sectionsShorted,
        int elementsOut,
        double voltagePerHealthy,
        double voltagePerRated,
        Optional<String> finding,
        String reason,
        List<String> remarks,
        Optional<Posterior> posterior,
        List<Check> checks,
        Basis basis) {
    public UnitSurvey {
        rows = List.copyOf(rows);
        remarks = List.copyOf(remarks);
        checks = List.copyOf(checks);
    }

    /** Reading over reference; empty where there is none. */
    public OptionalDouble ratio() {
        return capacitanceFarads.isPresent() && referenceFarads.isPresent()
                ? OptionalDouble.of(capacitanceFarads.getAsDouble() / referenceFarads.getAsDouble())
                : OptionalDouble.empty();
    }
}
