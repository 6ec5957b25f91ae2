package org.varwright.server;

import java.nio.file.Path;

/** A server in a process of its own, to be killed. Prints its address. */
final class ServerProcess {
    private ServerProcess() {}

    public static void main(String[] args) {
        System.out.println(Server.start(new ServerSettings(Path.of(args[0]), 0)).address());
    }
}
