package org.varwright.bench;

import java.io.IOException;

/**
 * One part of {@code docs/performance.md}.
 *
 * @param name on the command line, to measure it alone
 * @param heading over it
 * @param measure takes the measurements and says them in Markdown, without the heading
 */
record Section(String name, String heading, Measure measure) {
    /** Measures and says what came of it. Throws where two engines disagree: figures of different answers can't be compared. */
    @FunctionalInterface
    interface Measure {
        String text() throws IOException;
    }

    String text() throws IOException {
        return "## " + heading + "\n" + measure.text().strip() + "\n";
    }
}
