package org.varwright.server;

import java.nio.file.Path;

/**
 * How the server runs.
 *
 * @param data folder that holds everything; made where it is missing
 * @param port on loopback; 0 for any free one
 */
public record ServerSettings(Path data, int port) {
    public ServerSettings {
        if (port < 0 || port > 65_535) {
            throw new IllegalArgumentException("port " + port + " is not between 0 and 65535");
        }
    }
}
