package org.varwright.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** The demo's own files: invented banks, readings and spares. */
final class DemoFiles {

    private DemoFiles() {}

    /** Not every bank has a record of its trip. */
    static boolean has(String name) {
        return DemoFiles.class.getResource("/demo/" + name) != null;
    }

    static byte[] bytes(String name) {
        try (InputStream in = DemoFiles.class.getResourceAsStream("/demo/" + name)) {
            if (in == null) {
                throw new IllegalStateException("the demo file " + name + " is missing from this build");
            }
            return in.readAllBytes();
        } catch (IOException e) {
            throw new IllegalStateException("the demo file " + name + " can't be read from this build", e);
        }
    }

    static String text(String name) {
        return new String(bytes(name), StandardCharsets.UTF_8);
    }
}
