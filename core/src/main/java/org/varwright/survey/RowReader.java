package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.quantity.Dimension;

/** Reads the cells of rows and keeps what can't be read, with its row. */
final class RowReader {
    private final String file;
    private final Titled table;
    private final Columns columns;
    private final Columns.Decimals decimals;
    private final List<Problem> problems = new ArrayList<>();
    private final List<Problem> notices = new ArrayList<>();
    private final Set<Integer> rowsWithProblems = new LinkedHashSet<>();

    RowReader(String file, Titled table, Columns columns) {
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

    void problem(CellTable.Row row, Message message, String... arguments) {
        add(row, Problem.of(message, place(row), arguments));
    }

    /** A cell that is looked at twice is reported once. */
    private void add(CellTable.Row row, Problem problem) {
        if (!problems.contains(problem)) {
            problems.add(problem);
        }
        rowsWithProblems.add(row.number());
    }

    boolean hasProblem(CellTable.Row row) {
        return rowsWithProblems.contains(row.number());
    }

    /** A row with more cells than the header has shifted values under wrong names. */
    boolean hasSurplus(CellTable.Row row) {
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

    Optional<Measured> measured(CellTable.Row row, Quantity quantity) {
        Integer column = columns.quantities().get(quantity);
        if (column == null) {
            return Optional.empty();
        }
        boolean number = row.numbers().contains(column);
        Cell.Result result = Cell.read(
                quantity,
                row.cell(column),
                columns.unit(quantity),
                number ? Cell.Decimal.POINT : decimals.decimal(),
                decimals.decided(),
                place(row));
        return switch (result) {
            case Cell.Result.Good good -> Optional.of(good.measured());
            case Cell.Result.Blank ignored -> Optional.empty();
            case Cell.Result.Bad bad -> {
                add(row, bad.problem());
                yield Optional.empty();
            }
        };
    }

    /**
     * Capacitance from test voltage and current: {@code C = I/(2π·f·V)} (SRV-1); what is missing for it is reported.
     *
     * @param bankHertz the frequency where the row gives none
     */
    Optional<Measured> fromVoltsAndAmperes(CellTable.Row row, double bankHertz) {
        Optional<Measured> volts = measured(row, Quantity.TEST_VOLTS);
        Optional<Measured> amperes = measured(row, Quantity.TEST_AMPERES);
        Optional<Measured> hertz = measured(row, Quantity.TEST_HERTZ);
        if (volts.isEmpty() && amperes.isEmpty()) {
            return Optional.empty();
        }
        double f = hertz.map(Measured::value).orElse(OptionalDouble.empty()).orElse(bankHertz);
        boolean complete = volts.isPresent()
                && amperes.isPresent()
                && volts.get() instanceof Measured.Value v
                && amperes.get() instanceof Measured.Value
                && v.si() > 0.0
                && f > 0.0
                && hertz.map(h -> h instanceof Measured.Value).orElse(true);
        if (!complete) {
            if (!hasProblem(row)) {
                problem(
                        row,
                        Message.ROW_TEST_INCOMPLETE,
                        volts.map(Measured::raw).orElse("nothing"),
                        amperes.map(Measured::raw).orElse("nothing"));
            }
            return Optional.empty();
        }
        double v = volts.map(Measured::value).orElse(OptionalDouble.empty()).orElse(0.0);
        double i = amperes.map(Measured::value).orElse(OptionalDouble.empty()).orElse(0.0);
        String raw = Dimension.CURRENT.format(i) + "/(2π·" + Dimension.FREQUENCY.format(f) + "·"
                + Dimension.VOLTAGE.format(v) + ")";
        return Optional.of(new Measured.Value(i / (2.0 * Math.PI * f * v), raw));
    }

    List<Problem> notices() {
        return notices;
    }

    void notice(CellTable.Row row, Message message, String... arguments) {
        notices.add(Problem.of(message, place(row), arguments));
    }

    private Place place(CellTable.Row row) {
        return new Place(file, 0, 0, "row " + row.number());
    }
}
