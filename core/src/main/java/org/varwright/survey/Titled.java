package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/**
 * A table with its column names found: they may stand under a title, or in two rows (a merged heading over another, units under the names).
 *
 * @param delimiter what stands between the cells of a text file
 * @param headerRow number of the (last) row of column names
 * @param header column names
 * @param rows the rows below, without empty ones
 * @param notices rows above that were not read
 */
record Titled(char delimiter, int headerRow, List<String> header, List<CellTable.Row> rows, List<Problem> notices) {
    /** Rows from the top in which the column names are looked for. */
    static final int TOP_ROWS = 30;

    Titled {
        header = List.copyOf(header);
        rows = List.copyOf(rows);
        notices = List.copyOf(notices);
    }

    /**
     * Finds the column names of a table.
     *
     * @param key the column that every such table has
     * @param example of column names, for the message
     * @throws VarwrightException {@code TABLE_EMPTY}
     */
    static Titled of(CellTable table, Columns.Word key, String example) {
        List<CellTable.Row> all =
                table.rows().stream().filter(row -> !row.isEmpty()).toList();
        if (all.isEmpty()) {
            throw new VarwrightException(Message.TABLE_EMPTY, new Place(table.name(), 0, 0, ""), example);
        }
        int first = 0;
        for (int i = 0; i < Math.min(TOP_ROWS, all.size()); i++) {
            if (all.get(i).cells().stream().anyMatch(cell -> Columns.is(key, cell))) {
                first = i;
                break;
            }
        }
        CellTable.Row names = all.get(first);
        List<String> header = new ArrayList<>(names.cells());
        int last = first;
        int above = first;
        boolean quantities = header.stream().anyMatch(Columns::isQuantity);
        if (first + 1 < all.size() && continues(all.get(first + 1), header, key)) {
            last = first + 1;
            header = joined(header, all.get(last).cells());
        } else if (!quantities && first > 0) {
            List<String> both = joined(all.get(first - 1).cells(), header);
            if (both.stream().anyMatch(Columns::isQuantity)) {
                header = both;
                above = first - 1;
            }
        }
        List<Problem> notices = new ArrayList<>();
        for (CellTable.Row row : all.subList(0, above)) {
            notices.add(Problem.of(
                    Message.TABLE_ROW_ABOVE,
                    new Place(table.name(), 0, 0, "row " + row.number()),
                    row.cells().stream().filter(cell -> !cell.isEmpty()).collect(Collectors.joining(" | "))));
        }
        return new Titled(
                table.delimiter(), all.get(last).number(), header, all.subList(last + 1, all.size()), notices);
    }

    /** Whether a row goes on with the column names: nothing in the key column, and units or column names in all others. */
    private static boolean continues(CellTable.Row row, List<String> header, Columns.Word key) {
        for (int column = 0; column < row.cells().size(); column++) {
            String cell = row.cell(column);
            boolean isKey = column < header.size() && Columns.is(key, header.get(column));
            if (!cell.isEmpty() && (isKey || !(Columns.isKnown(cell) || Columns.isUnit(cell)))) {
                return false;
            }
        }
        return true;
    }

    private static List<String> joined(List<String> upper, List<String> lower) {
        List<String> both = new ArrayList<>();
        for (int column = 0; column < Math.max(upper.size(), lower.size()); column++) {
            String above = column < upper.size() ? upper.get(column) : "";
            String below = column < lower.size() ? lower.get(column) : "";
            both.add(
                    above.isEmpty() || (Columns.isKnown(below) && !Columns.isUnit(below))
                            ? below
                            : below.isEmpty() ? above : above + " (" + below.replaceAll("[()\\[\\]]", "") + ")");
        }
        return both;
    }
}
