package org.varwright.survey;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/**
 * A table of cells, whatever kind of file it came from.
 *
 * @param file name as the person gave it, for messages
 * @param sheet of a workbook; empty for a text file
 * @param delimiter what stands between the cells of a text file; a blank where nothing does
 * @param rows in the order of the file
 * @param notices what was assumed on the way
 */
public record CellTable(String file, Optional<String> sheet, char delimiter, List<Row> rows, List<Problem> notices) {
    /** What stands between the cells of a workbook. */
    private static final char NOTHING = ' ';

    public CellTable {
        rows = List.copyOf(rows);
        notices = List.copyOf(notices);
    }

    /**
     * One row.
     *
     * @param number as a spreadsheet counts it: 1 is the first row of the file
     * @param cells stripped
     * @param numbers columns, from 0, whose cell is a number by its kind and not by how it is written: it has a decimal point and no other sign
     */
    public record Row(int number, List<String> cells, Set<Integer> numbers) {
        public Row {
            cells = List.copyOf(cells);
            numbers = Set.copyOf(numbers);
        }

        static Row of(int number, List<String> cells) {
            return new Row(number, cells, Set.of());
        }

        boolean isEmpty() {
            return cells.stream().allMatch(String::isEmpty);
        }

        String cell(int column) {
            return column < cells.size() ? cells.get(column) : "";
        }
    }

    /**
     * The table of a text file.
     *
     * @param file name as the person gave it
     * @param content of the file
     * @throws VarwrightException {@code TABLE_…} where it is no text, too large, or can't be taken apart
     */
    public static CellTable ofText(String file, byte[] content) {
        Decoded decoded = Decoded.of(file, content);
        if (decoded.text().stripLeading().startsWith("<")) {
            throw new VarwrightException(Message.TABLE_IS_MARKUP, new Place(file, 0, 0, ""));
        }
        Csv csv = Csv.parse(file, decoded.text());
        return new CellTable(file, Optional.empty(), csv.delimiter(), csv.rows(), decoded.notices());
    }

    /** The table of one sheet of a workbook. */
    public static CellTable ofSheet(String file, String sheet, List<Row> rows, List<Problem> notices) {
        return new CellTable(file, Optional.of(sheet), NOTHING, rows, notices);
    }

    /** Whether some row near the top names positions or serial numbers and something measured beside them: looks like readings or spares. */
    public boolean looksLikeReadings() {
        return rows.stream()
                .filter(row -> !row.isEmpty())
                .limit(Titled.TOP_ROWS)
                .map(Row::cells)
                .anyMatch(cells -> cells.stream()
                                .anyMatch(cell -> Columns.is(Columns.Word.POSITION, cell)
                                        || Columns.is(Columns.Word.SERIAL, cell))
                        && cells.stream().anyMatch(Columns::isQuantity));
    }

    /** The file, with the sheet where there is one. */
    String name() {
        return sheet.map(s -> file + " [" + s + "]").orElse(file);
    }
}
