package org.varwright.job;

/**
 * An event and the very line that holds it.
 *
 * @param line as written by its device; never written anew
 * @param hash SHA-256 of the line
 */
public record LoggedEvent(JobEvent event, String line, String hash) {
    static LoggedEvent of(JobEvent event) {
        String line = event.line();
        return new LoggedEvent(event, line, Sha256.of(line));
    }

    /**
     * The event that a line holds.
     *
     * @throws org.varwright.problem.VarwrightException {@code JSON_SYNTAX}, {@code JOB_FIELD}, {@code JOB_EVENT_ID}
     */
    public static LoggedEvent parse(String file, int lineNumber, String line) {
        return new LoggedEvent(new EventReader(file, lineNumber).read(line), line, Sha256.of(line));
    }
}
