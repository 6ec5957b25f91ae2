package org.varwright.survey;

import java.util.List;
import org.varwright.problem.Problem;

/**
 * What a table of readings says.
 *
 * @param file name as the person gave it
 * @param rows of single units that can be used, in the order of the file
 * @param spots values read at groups, legs, reactors and switch poles, likewise
 * @param understood what each column was taken for
 * @param notices what was assumed
 * @param problems rows and cells that can't be used, each with its row; everything else is in {@code rows} and {@code spots}
 */
public record Readings(
        String file,
        List<ReadingRow> rows,
        List<SpotRow> spots,
        List<String> understood,
        List<Problem> notices,
        List<Problem> problems) {
    public Readings {
        rows = List.copyOf(rows);
        spots = List.copyOf(spots);
        understood = List.copyOf(understood);
        notices = List.copyOf(notices);
        problems = List.copyOf(problems);
    }
}
