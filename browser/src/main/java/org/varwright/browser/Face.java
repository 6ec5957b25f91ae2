package org.varwright.browser;

import org.teavm.jso.JSExport;
import org.varwright.task.Tasks;

/** What JavaScript may call. */
public final class Face {
    private Face() {}

    /**
     * Runs one task.
     *
     * @param request JSON text, see {@link Tasks#run(String)}
     * @return JSON text
     */
    @JSExport
    public static String run(String request) {
        return Tasks.run(request);
    }
}
