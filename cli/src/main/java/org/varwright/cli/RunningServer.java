package org.varwright.cli;

import java.util.concurrent.CountDownLatch;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.varwright.server.Server;

/** A server that runs until the process is told to stop. */
final class RunningServer {
    /** Held here, or the setting is lost with the logger. */
    private static final Logger ROOT = Logger.getLogger("");

    /** What goes wrong in it comes as an exception, too, and is told in words. */
    private static final Logger SQLITE = Logger.getLogger("org.sqlite");

    private RunningServer() {}

    /** Libraries say only what went wrong, not that they start. */
    static void quietLibraries() {
        ROOT.setLevel(Level.WARNING);
        SQLITE.setLevel(Level.OFF);
    }

    /** Waits for Ctrl-C, or for being interrupted. The server is stopped in either case. */
    static ExitCode untilStopped(Server server) {
        Runtime.getRuntime().addShutdownHook(new Thread(server::close, "stop"));
        try {
            new CountDownLatch(1).await();
        } catch (InterruptedException e) {
            // Told to stop: that is how it ends.
            server.close();
        }
        return ExitCode.DONE;
    }
}
