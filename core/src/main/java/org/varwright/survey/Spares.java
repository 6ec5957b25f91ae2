package org.varwright.survey;

import java.util.List;
import org.varwright.bank.Spare;
import org.varwright.problem.Problem;

/**
 * What a table of spares says.
 *
 * @param file name as the person gave it
 * @param spares that can be used, in the order of the file
 * @param understood what each column was taken for
 * @param notices what was assumed
 * @param problems rows that can't be used, each with its row
 */
public record Spares(
        String file, List<Spare> spares, List<String> understood, List<Problem> notices, List<Problem> problems) {
    public Spares {
        spares = List.copyOf(spares);
        understood = List.copyOf(understood);
        notices = List.copyOf(notices);
        problems = List.copyOf(problems);
    }
}
