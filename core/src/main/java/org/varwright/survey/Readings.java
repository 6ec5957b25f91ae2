package org.varwright.survey;

import java.util.List;
import org.varwright.problem.Problem;

/**
 * What a table of readings says.
 *
 * @param file name as the person gave it
 * @param rows that can be used, in the order of the file
 * @param understood what each column was taken for
 * @param notices what was assumed
 * @param problems rows and cells that can't be used, each with its row; everything else is in {@code rows}
 */
public record Readings(
        String file, List<ReadingRow> rows, List<String> understood, List<Problem> notices, List<Problem> problems) {
    public Readings {
        rows = List.copyOf(rows);
        understood = List.copyOf(understood);
        notices = List.copyOf(notices);
        problems = List.copyOf(problems);
    }
}
