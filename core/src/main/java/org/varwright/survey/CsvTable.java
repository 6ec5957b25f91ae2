package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * A table of text cells (RFC 4180, with comma, semicolon or tab between cells).
 *
 * @param delimiter what stands between cells
 * @param header first row
 * @param rows the others, without empty ones
 */
record CsvTable(char delimiter, List<String> header, List<Row> rows) {
    /**
     * One row.
     *
     * @param number as a spreadsheet counts it: 1 is the first row of the file
     * @param cells stripped
     */
    record Row(int number, List<String> cells) {
        Row {
            cells = List.copyOf(cells);
        }

        boolean isEmpty() {
            return cells.stream().allMatch(String::isEmpty);
        }

        String cell(int column) {
            return column < cells.size() ? cells.get(column) : "";
        }
    }

    CsvTable {
        header = List.copyOf(header);
        rows = List.copyOf(rows);
    }

    /**
     * Takes a text apart.
     *
     * @param example of a header, for the message
     * @throws VarwrightException {@code TABLE_EMPTY}, {@code TABLE_QUOTE_OPEN}
     */
    static CsvTable parse(String file, String text, String example) {
        String body = text;
        Optional<Character> named = Optional.empty();
        int skipped = 0;
        // a first line "sep=;" names the delimiter, as spreadsheets write it
        if (body.toLowerCase(Locale.ROOT).startsWith("sep=") && body.length() > 4 && body.charAt(4) >= ' ') {
            named = Optional.of(body.charAt(4));
            int end = body.indexOf('\n');
            body = end < 0 ? "" : body.substring(end + 1);
            skipped = 1;
        }
        char delimiter = named.orElse(delimiterOf(body));
        List<Row> all = rows(file, body, delimiter, skipped);
        int first = 0;
        while (first < all.size() && all.get(first).isEmpty()) {
            first++;
        }
        if (first == all.size()) {
            throw new VarwrightException(Message.TABLE_EMPTY, new Place(file, 0, 0, ""), example);
        }
        return new CsvTable(
                delimiter,
                all.get(first).cells(),
                all.subList(first + 1, all.size()).stream()
                        .filter(row -> !row.isEmpty())
                        .toList());
    }

    /** The candidate that stands most often in the first line that has any text, outside quotes; a comma where none does. */
    private static char delimiterOf(String text) {
        int start = 0;
        while (start < text.length() && Character.isWhitespace(text.charAt(start)) && text.charAt(start) != '\t') {
            start++;
        }
        char best = ',';
        int most = 0;
        for (char candidate : new char[] {';', '\t', ','}) {
            int count = 0;
            boolean quoted = false;
            for (int i = start; i < text.length(); i++) {
                char c = text.charAt(i);
                if (c == '"') {
                    quoted = !quoted;
                } else if (!quoted && (c == '\n' || c == '\r')) {
                    break;
                } else if (!quoted && c == candidate) {
                    count++;
                }
            }
            if (count > most) {
                most = count;
                best = candidate;
            }
        }
        return best;
    }

    private static List<Row> rows(String file, String text, char delimiter, int skipped) {
        List<Row> rows = new ArrayList<>();
        List<String> cells = new ArrayList<>();
        StringBuilder cell = new StringBuilder();
        boolean quoted = false;
        int quoteRow = 0;
        int i = 0;
        while (i < text.length()) {
            char c = text.charAt(i);
            if (quoted) {
                if (c == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"') {
                    cell.append('"');
                    i++;
                } else if (c == '"') {
                    quoted = false;
                } else {
                    cell.append(c);
                }
            } else if (c == '"' && cell.toString().isBlank()) {
                cell.setLength(0);
                quoted = true;
                quoteRow = rows.size() + 1 + skipped;
            } else if (c == delimiter) {
                cells.add(strip(cell));
                cell.setLength(0);
            } else if (c == '\n' || c == '\r') {
                if (c == '\r' && i + 1 < text.length() && text.charAt(i + 1) == '\n') {
                    i++;
                }
                cells.add(strip(cell));
                cell.setLength(0);
                rows.add(new Row(rows.size() + 1 + skipped, cells));
                cells.clear();
            } else {
                cell.append(c);
            }
            i++;
        }
        if (quoted) {
            throw new VarwrightException(Message.TABLE_QUOTE_OPEN, new Place(file, 0, 0, "row " + quoteRow));
        }
        if (!cell.isEmpty() || !cells.isEmpty()) {
            cells.add(strip(cell));
            rows.add(new Row(rows.size() + 1 + skipped, cells));
        }
        return rows;
    }

    private static String strip(StringBuilder cell) {
        return cell.toString().replace('\u00a0', ' ').replace('\u202f', ' ').strip();
    }
}
