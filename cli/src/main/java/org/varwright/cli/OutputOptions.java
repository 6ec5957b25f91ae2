package org.varwright.cli;

import java.io.PrintWriter;
import picocli.CommandLine.Option;

/** How an answer is printed; shared by all commands. */
final class OutputOptions {
    @Option(names = "--json", description = "Print JSON for machines instead of text.")
    private boolean json;

    @Option(names = "--explain", description = "Print how every number came about: formula, terms, source.")
    private boolean explain;

    boolean explain() {
        return explain;
    }

    int print(PrintWriter out, Answer answer) {
        out.println(json ? answer.json().print() : answer.text().stripTrailing());
        return answer.code().code();
    }
}
