package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * Text taken apart into cells (RFC 4180, with comma, semicolon or tab between cells).
 *
 * @param delimiter what stands between cells
 * @param rows every row of the text, empty ones included
 */
record Csv(char delimiter, List<CellTable.Row> rows) {
    /** Rows from the top in which the column names are looked for. */
    private static final int TOP_ROWS = 30;

    Csv {
        rows = List.copyOf(rows);
    }

    /**
     * Takes a text apart.
     *
     * @throws VarwrightException {@code TABLE_QUOTE_OPEN}
     */
    static Csv parse(String file, String text) {
        // a first line "sep=;" names the delimiter, as spreadsheets write it
        if (text.toLowerCase(Locale.ROOT).startsWith("sep=") && text.length() > 4 && text.charAt(4) >= ' ') {
            int end = text.indexOf('\n');
            return new Csv(text.charAt(4), rows(file, end < 0 ? "" : text.substring(end + 1), text.charAt(4), 1));
        }
        char delimiter = delimiterOf(text);
        return new Csv(delimiter, rows(file, text, delimiter, 0));
    }

    /** The candidate that cuts the most known column names out of one of the first rows; else the one that stands most often in the first. */
    private static char delimiterOf(String text) {
        char best = mostFrequent(text);
        int most = 0;
        String[] lines = text.substring(0, Math.min(text.length(), 20_000)).split("\r?\n|\r", TOP_ROWS + 1);
        for (char candidate : new char[] {';', '\t', ','}) {
            for (int i = 0; i < Math.min(TOP_ROWS, lines.length); i++) {
                int known = 0;
                for (String cell : lines[i].split(String.valueOf(candidate), -1)) {
                    known += Columns.isKnown(cell.replace("\"", "")) ? 1 : 0;
                }
                if (known > most) {
                    most = known;
                    best = candidate;
                }
            }
        }
        return best;
    }

    /** The candidate that stands most often in the first line that has any text, outside quotes; a comma where none does. */
    private static char mostFrequent(String text) {
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

    private static List<CellTable.Row> rows(String file, String text, char delimiter, int skipped) {
        List<CellTable.Row> rows = new ArrayList<>();
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
                rows.add(CellTable.Row.of(rows.size() + 1 + skipped, cells));
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
            rows.add(CellTable.Row.of(rows.size() + 1 + skipped, cells));
        }
        return rows;
    }

    private static String strip(StringBuilder cell) {
        return cell.toString().replace('\u00a0', ' ').replace('\u202f', ' ').strip();
    }
}
