package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Tables of spare units, as spreadsheets save them. */
public final class SparesFile {
    private static final String EXAMPLE = "serial,unit,capacitance";

    private SparesFile() {}

    /**
     * Reads a table of spares: {@code serial, unit, capacitance}. Rows that can't be used are in {@link Spares#problems()}, each with its row.
     *
     * @param bank whose unit types the rows name
     * @param fileName as the person gave it, for messages
     * @param content of the file
     * @throws VarwrightException where the file as a whole can't be read
     */
    public static Spares read(Bank bank, String fileName, byte[] content) {
        return read(bank, CellTable.ofText(fileName, content));
    }

    /**
     * Reads a table that has been taken apart already, such as a sheet of a workbook.
     *
     * @throws VarwrightException where the table as a whole can't be read
     */
    public static Spares read(Bank bank, CellTable cells) {
        String fileName = cells.name();
        Titled table = Titled.of(cells, Columns.Word.SERIAL, EXAMPLE);
        Columns columns = Columns.of(fileName, table);
        Place whole = new Place(fileName, 0, 0, "");
        if (columns.column(Columns.Word.SERIAL).isEmpty()) {
            throw new VarwrightException(
                    Message.TABLE_COLUMN_MISSING, whole, "which unit it is", columns.listed(), "serial");
        }
        if (columns.column(Columns.Word.UNIT).isEmpty()) {
            throw new VarwrightException(
                    Message.TABLE_COLUMN_MISSING, whole, "of which unit type it is", columns.listed(), "unit");
        }
        List<Problem> notices = new ArrayList<>(cells.notices());
        notices.addAll(table.notices());
        notices.addAll(columns.notices());
        RowReader reader = new RowReader(fileName, table, columns);
        reader.decimalNotice().ifPresent(notices::add);
        List<Spare> spares = new ArrayList<>();
        Map<String, Integer> rowOfSerial = new LinkedHashMap<>();
        for (CellTable.Row row : table.rows()) {
            read(bank, reader, columns, row, rowOfSerial).ifPresent(spares::add);
        }
        return new Spares(fileName, spares, columns.understood(), notices, reader.problems());
    }

    private static Optional<Spare> read(
            Bank bank, RowReader reader, Columns columns, CellTable.Row row, Map<String, Integer> rowOfSerial) {
        if (reader.hasSurplus(row)) {
            return Optional.empty();
        }
        Optional<String> serial = columns.text(row, Columns.Word.SERIAL);
        if (serial.isEmpty()) {
            reader.problem(row, Message.SPARE_NO_SERIAL);
            return Optional.empty();
        }
        Integer before = rowOfSerial.putIfAbsent(serial.get(), row.number());
        if (before != null) {
            reader.problem(row, Message.SPARE_SERIAL_TWICE, serial.get(), String.valueOf(before));
            return Optional.empty();
        }
        Optional<KnownUnit> inService = bank.units().stream()
                .filter(unit -> unit.serial().equals(serial))
                .findFirst();
        if (inService.isPresent()) {
            reader.problem(
                    row,
                    Message.SPARE_IN_SERVICE,
                    serial.get(),
                    inService.get().at().name());
            return Optional.empty();
        }
        String known = bank.unitTypes().stream().map(UnitType::name).collect(Collectors.joining(", "));
        Optional<String> typeName = columns.text(row, Columns.Word.UNIT);
        if (typeName.isEmpty()) {
            reader.problem(row, Message.SPARE_NO_UNIT, serial.get(), known);
            return Optional.empty();
        }
        Optional<UnitType> type = bank.unitTypes().stream()
                .filter(t -> t.name().equalsIgnoreCase(typeName.get()))
                .findFirst();
        if (type.isEmpty()) {
            reader.problem(row, Message.SPARE_UNIT_UNKNOWN, typeName.get(), known);
            return Optional.empty();
        }
        OptionalDouble farads =
                reader.measured(row, Quantity.CAPACITANCE).map(Measured::value).orElse(OptionalDouble.empty());
        return reader.hasProblem(row)
                ? Optional.empty()
                : Optional.of(new Spare(serial.get(), type.get(), farads, columns.text(row, Columns.Word.NOTE)));
    }
}
