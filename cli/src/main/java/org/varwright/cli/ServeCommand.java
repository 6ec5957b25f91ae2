package org.varwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.varwright.server.Server;
import org.varwright.server.ServerSettings;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** {@code serve --data DIR}. */
@Command(
        name = "serve",
        mixinStandardHelpOptions = true,
        description = {
            "The app on own data: keeps banks, jobs and attachments in one folder and answers on this machine only",
            "(127.0.0.1). Prints the address to open in a browser; runs until it is stopped with Ctrl-C.",
            "docs/server.md describes the API."
        })
final class ServeCommand implements Callable<Integer> {
    @Option(
            names = "--data",
            required = true,
            paramLabel = "DIR",
            description = "The folder that holds everything; made where it is missing. One server a folder.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path data;

    @Option(
            names = "--port",
            paramLabel = "N",
            defaultValue = "8740",
            description = "The port (default: ${DEFAULT-VALUE}); 0 takes a free one.")
    private int port;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() {
        if (port < 0 || port > 65_535) {
            throw new ParameterException(spec.commandLine(), "--port " + port + " is not allowed; give 0 to 65535");
        }
        RunningServer.quietLibraries();
        PrintWriter out = spec.commandLine().getOut();
        try (Server server = Server.start(new ServerSettings(data, port))) {
            out.println(server.address());
            out.flush();
            return RunningServer.untilStopped(server).code();
        }
    }
}
