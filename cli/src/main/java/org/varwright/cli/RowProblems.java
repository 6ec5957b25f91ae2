package org.varwright.cli;

import java.io.PrintWriter;
import java.util.List;
import org.varwright.problem.Problem;

/** Rows of a table that could not be used. */
final class RowProblems {
    private RowProblems() {}

    /** Names every such row on standard error; the rest of the table is used. */
    static void print(PrintWriter err, List<Problem> problems) {
        problems.forEach(problem -> err.println("varwright: not used: " + problem.print()));
    }
}
