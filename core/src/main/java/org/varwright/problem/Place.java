package org.varwright.problem;

/**
 * Where in an input something stands.
 *
 * @param file name of the input as the person gave it; empty where there is none
 * @param line 1-based; 0 where not known
 * @param column 1-based; 0 where not known
 * @param path path inside the document, such as {@code unit-types[0].rating}, or a row such as {@code row 12}; empty where there is none
 */
public record Place(String file, int line, int column, String path) {
    public static final Place NOWHERE = new Place("", 0, 0, "");

    /** {@code file:line:column path}, without the parts that are not known. */
    public String print() {
        StringBuilder text = new StringBuilder(file);
        if (line > 0) {
            text.append(text.isEmpty() ? "" : ":").append(line);
            if (column > 0) {
                text.append(':').append(column);
            }
        }
        if (!path.isEmpty()) {
            text.append(text.isEmpty() ? "" : " ").append(path);
        }
        return text.toString();
    }
}
