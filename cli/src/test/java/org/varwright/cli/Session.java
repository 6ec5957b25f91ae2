package org.varwright.cli;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;

/**
 * What one command line gave.
 *
 * @param code exit code
 * @param out standard output
 * @param err standard error
 */
record Session(int code, String out, String err) {
    static final Path EXAMPLES = Path.of("..", "examples");
    static final Path DEMO = EXAMPLES.resolve("demo");

    static Session run(String... args) {
        StringWriter out = new StringWriter();
        StringWriter err = new StringWriter();
        PrintWriter outWriter = new PrintWriter(out);
        PrintWriter errWriter = new PrintWriter(err);
        int code = Main.run(outWriter, errWriter, args);
        outWriter.flush();
        errWriter.flush();
        return new Session(code, out.toString(), err.toString());
    }
}
