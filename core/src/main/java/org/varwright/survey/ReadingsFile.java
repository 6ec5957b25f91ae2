package org.varwright.survey;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.UnitPosition;
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
        Decoded decoded = Decoded.of(fileName, content);
        CsvTable table = CsvTable.parse(fileName, decoded.text(), EXAMPLE);
        Columns columns = Columns.of(fileName, table);
        Place whole = new Place(fileName, 0, 0, "");
        if (columns.column(Columns.Word.POSITION).isEmpty()) {
            throw new VarwrightException(
                    Message.TABLE_COLUMN_MISSING, whole, "where the unit is", columns.listed(), "position");
        }
        if (columns.quantities().keySet().stream().allMatch(q -> q == Quantity.TEMPERATURE)) {
            throw new VarwrightException(Message.TABLE_NOTHING_TO_READ, whole, columns.listed());
        }
        if (table.rows().isEmpty()) {
            throw new VarwrightException(Message.TABLE_NO_ROWS, whole);
        }
        List<Problem> notices = new ArrayList<>(decoded.notices());
        notices.addAll(columns.notices());
        RowReader reader = new RowReader(fileName, table, columns);
        reader.decimalNotice().ifPresent(notices::add);
        Map<String, Optional<UnitPosition>> positions = new HashMap<>();
        List<ReadingRow> rows = new ArrayList<>();
        for (CsvTable.Row row : table.rows()) {
            read(bank, positions, reader, columns, row).ifPresent(rows::add);
        }
        return new Readings(fileName, rows, columns.understood(), notices, reader.problems());
    }

    private static Optional<ReadingRow> read(
            Bank bank,
            Map<String, Optional<UnitPosition>> positions,
            RowReader reader,
            Columns columns,
            CsvTable.Row row) {
        if (reader.hasSurplus(row)) {
            return Optional.empty();
        }
        Optional<String> written = columns.text(row, Columns.Word.POSITION);
        if (written.isEmpty()) {
            reader.problem(row, Message.ROW_NO_POSITION, bank.positionHint());
            return Optional.empty();
        }
        Optional<UnitPosition> position = positions.computeIfAbsent(written.get(), bank::position);
        if (position.isEmpty()) {
            reader.problem(row, Message.POSITION_UNKNOWN, written.get(), bank.positionHint());
            return Optional.empty();
        }
        Optional<String> between = columns.text(row, Columns.Word.TERMINALS);
        if (between.isPresent() && Terminals.parse(between.get()).isEmpty()) {
            reader.problem(row, Message.CELL_TERMINALS, between.get());
            return Optional.empty();
        }
        Optional<Measured> capacitance = reader.measured(row, Quantity.CAPACITANCE);
        if (capacitance.isEmpty()) {
            capacitance = reader.fromVoltsAndAmperes(row, bank.system().angularFrequency());
        }
        ReadingRow reading = new ReadingRow(
                row.number(),
                position.get(),
                columns.text(row, Columns.Word.SERIAL),
                between.flatMap(Terminals::parse),
                capacitance,
                reader.measured(row, Quantity.RESISTANCE),
                reader.measured(row, Quantity.INSULATION),
                reader.measured(row, Quantity.FUSE),
                reader.measured(row, Quantity.TEMPERATURE),
                columns.text(row, Columns.Word.INSTRUMENT),
                columns.text(row, Columns.Word.TAKEN),
                columns.text(row, Columns.Word.NOTE),
                columns.others(row));
        boolean nothing = reading.capacitance().isEmpty()
                && reading.resistance().isEmpty()
                && reading.insulation().isEmpty()
                && reading.fuse().isEmpty();
        if (nothing && !reader.hasProblem(row)) {
            reader.problem(row, Message.ROW_NO_VALUE, written.get());
        }
        return nothing ? Optional.empty() : Optional.of(reading);
    }
}
