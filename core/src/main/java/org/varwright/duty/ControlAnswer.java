package org.varwright.duty;

import java.util.List;
import org.varwright.basis.Check;

/**
 * The control's thresholds against what a stage does to what it senses.
 *
 * @param lines what it sees and where it switches, in words, one line each
 * @param checks each stage's step against the dead band, what is seen against the thresholds
 * @param symptoms what a wrong ratio looks like, in words
 */
public record ControlAnswer(List<String> lines, List<Check> checks, List<String> symptoms) {
    public static final ControlAnswer EMPTY = new ControlAnswer(List.of(), List.of(), List.of());

    public ControlAnswer {
        lines = List.copyOf(lines);
        checks = List.copyOf(checks);
        symptoms = List.copyOf(symptoms);
    }
}
