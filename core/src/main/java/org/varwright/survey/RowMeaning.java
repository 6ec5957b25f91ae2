package org.varwright.survey;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.UnitPosition;
import org.varwright.problem.Message;
import org.varwright.quantity.Dimension;

/** What the cells of a row say of which part of the bank. */
final class RowMeaning {
    /** From this difference on a capacitance and the test values beside it are not the same. */
    private static final double BESIDE_PART = 0.01;

    private final Bank bank;
    private final RowReader reader;
    private final Columns columns;
    private final Spots spots;
    private final Map<String, Optional<UnitPosition>> positions = new HashMap<>();

    RowMeaning(Bank bank, RowReader reader, Columns columns) {
        this.bank = bank;
        this.reader = reader;
        this.columns = columns;
        this.spots = new Spots(bank);
    }

    /** Adds what a row says to {@code rows} or {@code others}; what can't be used goes to the reader's problems. */
    void read(CellTable.Row row, List<ReadingRow> rows, List<SpotRow> others) {
        if (reader.hasSurplus(row)) {
            return;
        }
        Optional<String> written = columns.text(row, Columns.Word.POSITION);
        if (written.isEmpty()) {
            reader.problem(row, Message.ROW_NO_POSITION, bank.positionHint());
            return;
        }
        Optional<UnitPosition> position = positions.computeIfAbsent(written.get(), bank::position);
        if (position.isEmpty() && !spots.isKnown(written.get())) {
            reader.problem(row, Message.POSITION_UNKNOWN, written.get(), bank.positionHint());
            return;
        }
        int before = rows.size() + others.size();
        if (position.isPresent()) {
            unit(row, position.get()).ifPresent(rows::add);
        } else {
            spot(row, written.get(), SpotRow.Kind.CAPACITANCE, Quantity.CAPACITANCE, others);
            unitOnly(row, written.get());
        }
        spot(row, written.get(), SpotRow.Kind.INDUCTANCE, Quantity.INDUCTANCE, others);
        spot(row, written.get(), SpotRow.Kind.CONTACT, Quantity.CONTACT, others);
        spot(row, written.get(), SpotRow.Kind.CURRENT, Quantity.CURRENT, others);
        if (rows.size() + others.size() == before && !reader.hasProblem(row)) {
            reader.problem(row, Message.ROW_NO_VALUE, written.get());
        }
    }

    private Optional<ReadingRow> unit(CellTable.Row row, UnitPosition position) {
        Optional<String> between = columns.text(row, Columns.Word.TERMINALS);
        Optional<Terminals.Understood> terminals = between.flatMap(Terminals::parse);
        Optional<InternalConnection> inside =
                bank.stage(position.stage()).flatMap(stage -> stage.unit().threePhase());
        if (between.isPresent() && terminals.isEmpty()) {
            reader.problem(row, Message.CELL_TERMINALS, between.get());
            return Optional.empty();
        }
        if (terminals.isPresent() && inside.isEmpty()) {
            reader.notice(row, Message.ROW_TERMINALS_OF_TWO, between.orElse(""));
            terminals = Optional.empty();
        }
        if (terminals.isPresent()
                && terminals.get().terminals().kind() == Terminals.Kind.TO_NEUTRAL
                && inside.filter(i -> i == InternalConnection.DELTA).isPresent()) {
            reader.problem(row, Message.CELL_NO_NEUTRAL, between.orElse(""));
            return Optional.empty();
        }
        terminals
                .filter(understood -> !understood.assumed().isEmpty())
                .ifPresent(understood ->
                        reader.notice(row, Message.ROW_TERMINALS_ASSUMED, between.orElse(""), understood.assumed()));
        ReadingRow reading = new ReadingRow(
                row.number(),
                position,
                columns.text(row, Columns.Word.SERIAL),
                terminals.map(Terminals.Understood::terminals),
                capacitance(row),
                reader.measured(row, Quantity.RESISTANCE),
                reader.measured(row, Quantity.INSULATION),
                reader.measured(row, Quantity.FUSE),
                reader.measured(row, Quantity.TEMPERATURE),
                reader.measured(row, Quantity.CASE_TEMPERATURE),
                columns.text(row, Columns.Word.INSTRUMENT),
                columns.text(row, Columns.Word.TAKEN),
                columns.text(row, Columns.Word.NOTE),
                columns.others(row));
        boolean nothing = reading.capacitance().isEmpty()
                && reading.resistance().isEmpty()
                && reading.insulation().isEmpty()
                && reading.fuse().isEmpty()
                && reading.caseTemperature().isEmpty();
        return nothing ? Optional.empty() : Optional.of(reading);
    }

    private Optional<Measured> capacitance(CellTable.Row row) {
        Optional<Measured> written = reader.measured(row, Quantity.CAPACITANCE);
        Optional<Measured> calculated =
                reader.fromVoltsAndAmperes(row, bank.system().frequencyHertz());
        if (written.isPresent()
                && written.get() instanceof Measured.Value value
                && calculated.isPresent()
                && calculated.get() instanceof Measured.Value other
                && Math.abs(other.si() - value.si()) > BESIDE_PART * value.si()) {
            reader.notice(row, Message.ROW_TEST_BESIDE, value.raw(), Dimension.CAPACITANCE.format(other.si()));
        }
        return written.or(() -> calculated);
    }

    private void spot(CellTable.Row row, String written, SpotRow.Kind kind, Quantity quantity, List<SpotRow> others) {
        Optional<Measured> measured =
                quantity == Quantity.CAPACITANCE ? capacitance(row) : reader.measured(row, quantity);
        if (measured.isEmpty()) {
            return;
        }
        Optional<Spot> spot = spots.find(written, kind);
        if (spot.isEmpty()) {
            reader.problem(
                    row,
                    Message.CELL_WRONG_PLACE,
                    quantity.word(),
                    measured.get().raw(),
                    written,
                    switch (kind) {
                        case CAPACITANCE -> "a unit, units of one group such as \"…/u1+u2\", a group or a leg";
                        case INDUCTANCE -> "a phase of a stage, such as \"" + example("A") + "\"";
                        case CURRENT -> "a leg or a phase of a stage, such as \"" + example("A") + "\"";
                        case CONTACT -> "a pole of a device under isolation, such as \"SWITCH/A\"";
                    });
            return;
        }
        others.add(new SpotRow(
                row.number(),
                spot.get(),
                kind,
                measured.get(),
                reader.measured(row, Quantity.TEMPERATURE),
                columns.text(row, Columns.Word.INSTRUMENT),
                columns.text(row, Columns.Word.TAKEN),
                columns.text(row, Columns.Word.NOTE),
                columns.others(row)));
    }

    private String example(String phase) {
        return bank.stages().getFirst().name() + "/" + phase;
    }

    /** Values that only a single unit has, read at something else. */
    private void unitOnly(CellTable.Row row, String written) {
        for (Quantity quantity :
                List.of(Quantity.RESISTANCE, Quantity.INSULATION, Quantity.FUSE, Quantity.CASE_TEMPERATURE)) {
            reader.measured(row, quantity)
                    .ifPresent(measured -> reader.problem(
                            row, Message.CELL_WRONG_PLACE, quantity.word(), measured.raw(), written, "a single unit"));
        }
    }
}
