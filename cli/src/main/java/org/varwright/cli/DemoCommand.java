package org.varwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.OptionalInt;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code demo}: the app with invented banks and jobs under way; {@code demo --steps}: the same job at the terminal. */
@Command(
        name = "demo",
        mixinStandardHelpOptions = true,
        description = {
            "Starts the app on this machine with invented banks and jobs under way, prints its address, and runs until it is",
            "stopped with Ctrl-C. What is done in it stays in the folder; the next start goes on from there.",
            "With --steps: runs the whole job at the terminal instead, says each step, and writes the report."
        })
final class DemoCommand implements Callable<Integer> {
    @Option(names = "--steps", description = "The whole job at the terminal, one command after another.")
    private boolean isStepByStep;

    @Option(
            names = "--bank",
            paramLabel = "NAME",
            description = "With --steps: ${COMPLETION-CANDIDATES} (default CORBEL_REACH_3): a steel enclosure, an open"
                    + " rack, an IEC bank.")
    private @Nullable DemoBank bank;

    @Option(
            names = "-o",
            paramLabel = "FOLDER",
            defaultValue = "varwright-demo",
            description = "Where files go (default ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path folder;

    @Option(
            names = "--port",
            paramLabel = "N",
            description = "The port (default: the first free one from 8740 on); 0 takes any free one.")
    private @Nullable Integer port;

    @Option(names = "--fresh", description = "Begins anew: the demo's data of earlier starts are deleted first.")
    private boolean isFresh;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() {
        PrintWriter out = spec.commandLine().getOut();
        if (isStepByStep) {
            if (port != null || isFresh) {
                throw new ParameterException(
                        spec.commandLine(), "--port and --fresh are of the app; leave --steps away");
            }
            return new DemoScenes(bank == null ? DemoBank.CORBEL_REACH_3 : bank, folder, out).play();
        }
        if (bank != null) {
            throw new ParameterException(
                    spec.commandLine(), "--bank goes with --steps; the app has all of the invented banks");
        }
        if (port != null && (port < 0 || port > 65_535)) {
            throw new ParameterException(spec.commandLine(), "--port " + port + " is not allowed; give 0 to 65535");
        }
        return new DemoApp(folder.resolve("app"), out)
                .run(port == null ? OptionalInt.empty() : OptionalInt.of(port), isFresh)
                .code();
    }
}
