package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Isolation;

/**
 * A rectangle of the drawing that is one compartment's. Rows are counted in halves of a layer: {@code 2·layer} is the conductors' half,
 * {@code 2·layer + 1} that of what hangs on them.
 *
 * @param compartment whose it is
 * @param main whether the compartment's name and locks are written here; else only its name
 */
record Territory(Compartment compartment, int firstColumn, int lastColumn, int firstRow, int lastRow, boolean main) {
    /** One cell. */
    private record Cell(int column, int row) {}

    static List<Territory> of(Bank bank, Feeding feeding, Claims claims, Columns columns) {
        Map<Cell, String> cells = cells(feeding, claims, columns);
        Set<Cell> filled = filled(feeding, columns);
        Map<Cell, String> below = below(feeding, columns, cells);
        List<Territory> all = new ArrayList<>();
        for (Compartment compartment :
                bank.isolation().map(Isolation::compartments).orElse(List.of())) {
            all.addAll(rectangles(compartment, cells, filled, below));
        }
        return List.copyOf(all);
    }

    private static Map<Cell, String> cells(Feeding feeding, Claims claims, Columns columns) {
        Map<Cell, String> cells = new LinkedHashMap<>();
        claims.conductors().forEach((conductor, owner) -> {
            int row = 2 * feeding.layer(conductor);
            cells.putIfAbsent(new Cell(columns.head(conductor), row), owner);
            for (int c = 0; c < columns.all().size(); c++) {
                Column column = columns.all().get(c);
                if (!column.conductor().equals(conductor)) {
                    continue;
                }
                switch (column.hangs()) {
                    case Column.Hangs.Legs legs -> both(cells, c, row, owner);
                    case Column.Hangs.ToGround ground -> both(cells, c, row, owner);
                    case Column.Hangs.Source source -> cells.putIfAbsent(new Cell(c, row), owner);
                    case Column.Hangs.Visit visit -> {}
                    case Column.Hangs.Bond bond -> {}
                    case Column.Hangs.Tie tie -> {}
                    case Column.Hangs.Nothing nothing -> cells.putIfAbsent(new Cell(c, row), owner);
                }
            }
        });
        feeding.feeders().forEach((conductor, feeder) -> {
            String owner = claims.devices().get(feeder.device().name());
            if (owner != null) {
                both(cells, columns.head(conductor), 2 * feeding.layer(feeder.from()), owner);
            }
        });
        for (int c = 0; c < columns.all().size(); c++) {
            Column column = columns.all().get(c);
            int row = 2 * feeding.layer(column.conductor());
            switch (column.hangs()) {
                case Column.Hangs.Visit visit ->
                    cells.put(new Cell(c, row), visit.compartment().name());
                case Column.Hangs.Bond bond -> {
                    String owner = claims.devices().get(bond.device().name());
                    if (owner != null) {
                        both(cells, c, row, owner);
                    }
                }
                case Column.Hangs.Tie tie -> {
                    String owner = claims.devices().get(tie.device().name());
                    if (owner != null) {
                        cells.put(new Cell(c, row), owner);
                    }
                }
                case Column.Hangs.Legs legs -> {}
                case Column.Hangs.ToGround ground -> {}
                case Column.Hangs.Source source -> {}
                case Column.Hangs.Nothing nothing -> {}
            }
        }
        return cells;
    }

    private static void both(Map<Cell, String> cells, int column, int row, String owner) {
        cells.putIfAbsent(new Cell(column, row), owner);
        cells.putIfAbsent(new Cell(column, row + 1), owner);
    }

    /** Cells with something drawn in them. */
    private static Set<Cell> filled(Feeding feeding, Columns columns) {
        Set<Cell> filled = new LinkedHashSet<>();
        columns.heads().forEach((conductor, head) -> {
            int row = 2 * feeding.layer(conductor);
            filled.add(new Cell(head, row));
            if (row > 0) {
                filled.add(new Cell(head, row - 1));
            }
        });
        for (int c = 0; c < columns.all().size(); c++) {
            int row = 2 * feeding.layer(columns.all().get(c).conductor());
            filled.add(new Cell(c, row));
            filled.add(new Cell(c, row + 1));
        }
        return filled;
    }

    /** Cells that something hanging above may reach down into, with the compartment that has it; empty text for none. */
    private static Map<Cell, String> below(Feeding feeding, Columns columns, Map<Cell, String> cells) {
        Map<Cell, String> below = new LinkedHashMap<>();
        for (int c = 0; c < columns.all().size(); c++) {
            Column column = columns.all().get(c);
            boolean reaches =
                    column.hangs() instanceof Column.Hangs.Legs || column.hangs() instanceof Column.Hangs.ToGround;
            int row = 2 * feeding.layer(column.conductor()) + 1;
            for (int deeper = row + 1; reaches && deeper <= 2 * feeding.deepest() + 1; deeper++) {
                below.put(new Cell(c, deeper), cells.getOrDefault(new Cell(c, row), ""));
            }
        }
        return below;
    }

    private static List<Territory> rectangles(
            Compartment compartment, Map<Cell, String> cells, Set<Cell> filled, Map<Cell, String> below) {
        Set<Cell> left = new LinkedHashSet<>();
        cells.forEach((cell, owner) -> {
            if (owner.equals(compartment.name())) {
                left.add(cell);
            }
        });
        List<int[]> found = new ArrayList<>();
        while (!left.isEmpty()) {
            int[] box = grown(left.iterator().next(), left, cells, filled, below, compartment.name());
            left.removeIf(c -> inside(c, box));
            found.add(box);
        }
        int most = 0;
        for (int i = 1; i < found.size(); i++) {
            if (size(found.get(i)) > size(found.get(most))) {
                most = i;
            }
        }
        List<Territory> all = new ArrayList<>();
        for (int i = 0; i < found.size(); i++) {
            int[] b = found.get(i);
            all.add(new Territory(compartment, b[0], b[1], b[2], b[3], i == most));
        }
        return all;
    }

    private static int size(int[] b) {
        return (b[1] - b[0] + 1) * (b[3] - b[2] + 1);
    }

    private static boolean inside(Cell c, int[] b) {
        return c.column() >= b[0] && c.column() <= b[1] && c.row() >= b[2] && c.row() <= b[3];
    }

    /** The rectangle around a cell, grown over the compartment's other cells as long as it takes in nothing of anybody else's. */
    private static int[] grown(
            Cell from, Set<Cell> own, Map<Cell, String> cells, Set<Cell> filled, Map<Cell, String> below, String name) {
        int[] box = {from.column(), from.column(), from.row(), from.row()};
        boolean grew = true;
        while (grew) {
            grew = false;
            for (Cell cell : own) {
                int[] wider = {
                    Math.min(box[0], cell.column()),
                    Math.max(box[1], cell.column()),
                    Math.min(box[2], cell.row()),
                    Math.max(box[3], cell.row())
                };
                if (size(wider) > size(box) && isFree(wider, cells, filled, below, name)) {
                    box = wider;
                    grew = true;
                }
            }
        }
        return box;
    }

    private static boolean isFree(
            int[] box, Map<Cell, String> cells, Set<Cell> filled, Map<Cell, String> below, String name) {
        for (int column = box[0]; column <= box[1]; column++) {
            for (int row = box[2]; row <= box[3]; row++) {
                Cell cell = new Cell(column, row);
                String owner = cells.get(cell);
                if (!name.equals(owner) && (owner != null || filled.contains(cell))) {
                    return false;
                }
                if (!name.equals(below.getOrDefault(cell, name))) {
                    return false;
                }
            }
        }
        return true;
    }
}
