package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;

/** Reads the cells of rows and keeps what can't be read, with its row. */
final class RowReader {
    private final String file;
    private final CsvTable table;
    private final Columns columns;
    private final Columns.Decimals decimals;
    private final List<Problem> problems = new ArrayList<>();
    private final Set<Integer> rowsWithProblems = new LinkedHashSet<>();

    RowReader(String file, CsvTable table, Columns columns) {
        this.file = file;
        this.table = table;
        this.columns = columns;
        this.decimals = columns.decimals(table);
    }

    Optional<Problem> decimalNotice() {
        return decimals.anyComma()
                ? Optional.of(Problem.of(Message.TABLE_DECIMAL_COMMA, new Place(file, 0, 0, "")))
                : Optional.empty();
    }

    List<Problem> problems() {
        return problems;
    }

    void problem(CsvTable.Row row, Message message, String... arguments) {
        problems.add(Problem.of(message, place(row), arguments));
        rowsWithProblems.add(row.number());
    }

    boolean hasProblem(CsvTable.Row row) {
        return rowsWithProblems.contains(row.number());
    }

    /** A row with more cells than the header has shifted values under wrong names. */
    boolean hasSurplus(CsvTable.Row row) {
        boolean surplus = row.cells().size() > table.header().size()
                && row.cells().subList(table.header().size(), row.cells().size()).stream()
                        .anyMatch(cell -> !cell.isEmpty());
        if (surplus) {
            problem(
                    row,
                    Message.ROW_CELLS,
                    String.valueOf(row.cells().size()),
                    String.valueOf(table.header().size()));
        }
        return surplus;
    }

    Optional<Measured> measured(CsvTable.Row row, Quantity quantity) {
        Integer column = columns.quantities().get(quantity);
        if (column == null) {
            return Optional.empty();
        }
        Cell.Result result = Cell.read(
                quantity, row.cell(column), columns.unit(quantity), decimals.decimal(), decimals.decided(), place(row));
        return switch (result) {
            case Cell.Result.Good good -> Optional.of(good.measured());
            case Cell.Result.Blank ignored -> Optional.empty();
            case Cell.Result.Bad bad -> {
                problems.add(bad.problem());
                rowsWithProblems.add(row.number());
                yield Optional.empty();
            }
        };
    }

    /** Capacitance from test voltage and current: {@code C = I/(ω·V)} (SRV-1). */
    Optional<Measured> fromVoltsAndAmperes(CsvTable.Row row, double angularFrequency) {
        Optional<Measured> volts = measured(row, Quantity.TEST_VOLTS);
        Optional<Measured> amperes = measured(row, Quantity.TEST_AMPERES);
        if (volts.isPresent()
                && amperes.isPresent()
                && volts.get() instanceof Measured.Value v
                && amperes.get() instanceof Measured.Value i
                && v.si() > 0.0) {
            return Optional.of(new Measured.Value(i.si() / (angularFrequency * v.si()), v.raw() + ", " + i.raw()));
        }
        return Optional.empty();
    }

    private Place place(CsvTable.Row row) {
        return new Place(file, 0, 0, "row " + row.number());
    }
}
