package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Tables of readings, as spreadsheets save them. */
public final class ReadingsFile {
    private static final String EXAMPLE = "position,serial,capacitance,resistance";

    private ReadingsFile() {}

    /**
     * Reads a table: one row a reading, the first row names the columns. What can't be used is in {@link Readings#problems()}, with its row.
     *
     * @param bank whose positions the rows name
     * @param fileName as the person gave it, for messages
     * @param content of the file
     * @throws VarwrightException where the file as a whole can't be read: too large, no text, empty, no column of positions or of values
     */
    public static Readings read(Bank bank, String fileName, byte[] content) {
        return read(bank, CellTable.ofText(fileName, content));
    }

    /**
     * Reads a table that has been taken apart already, such as a sheet of a workbook.
     *
     * @throws VarwrightException where the table as a whole can't be read
     */
    public static Readings read(Bank bank, CellTable cells) {
        String fileName = cells.name();
        Titled table = Titled.of(cells, Columns.Word.POSITION, EXAMPLE);
        Columns columns = Columns.of(fileName, table);
        Place whole = new Place(fileName, 0, 0, "");
        if (columns.column(Columns.Word.POSITION).isEmpty()) {
            throw new VarwrightException(
                    Message.TABLE_COLUMN_MISSING, whole, "where the unit is", columns.listed(), "position");
        }
        boolean voltsAndAmperes = columns.quantities().containsKey(Quantity.TEST_VOLTS)
                && columns.quantities().containsKey(Quantity.TEST_AMPERES);
        if (!voltsAndAmperes && columns.quantities().keySet().stream().allMatch(ReadingsFile::saysNothingAlone)) {
            throw new VarwrightException(Message.TABLE_NOTHING_TO_READ, whole, columns.listed());
        }
        if (table.rows().isEmpty()) {
            throw new VarwrightException(Message.TABLE_NO_ROWS, whole);
        }
        List<Problem> notices = new ArrayList<>(cells.notices());
        notices.addAll(table.notices());
        notices.addAll(columns.notices());
        RowReader reader = new RowReader(fileName, table, columns);
        reader.decimalNotice().ifPresent(notices::add);
        RowMeaning meaning = new RowMeaning(bank, reader, columns);
        List<ReadingRow> rows = new ArrayList<>();
        List<SpotRow> spots = new ArrayList<>();
        for (CellTable.Row row : table.rows()) {
            meaning.read(row, rows, spots);
        }
        notices.addAll(reader.notices());
        return new Readings(fileName, rows, spots, columns.understood(), notices, reader.problems());
    }

    /** Columns that only say how something else was read. */
    private static boolean saysNothingAlone(Quantity quantity) {
        return switch (quantity) {
            case TEMPERATURE, TEST_VOLTS, TEST_AMPERES, TEST_HERTZ -> true;
            case CAPACITANCE, RESISTANCE, INSULATION, FUSE, CASE_TEMPERATURE, INDUCTANCE, CONTACT, CURRENT -> false;
        };
    }
}
