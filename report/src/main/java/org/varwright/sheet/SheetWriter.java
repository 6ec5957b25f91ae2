package org.varwright.sheet;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.dhatim.fastexcel.Worksheet;
import org.jspecify.annotations.Nullable;

/** Fills one sheet row by row: column names in bold on top, numbers as numbers, text that can never be taken for a formula. */
final class SheetWriter {
    /** A text that starts so may become a formula once the sheet is saved as text and opened again. */
    private static final String FORMULA_STARTS = "=+-@\t\r";

    private static final int WIDEST = 90;

    private final Worksheet sheet;
    private final int[] widths;
    private int row;

    SheetWriter(Worksheet sheet, List<String> columns) {
        this.sheet = sheet;
        this.widths = new int[columns.size()];
        for (int column = 0; column < columns.size(); column++) {
            text(column, columns.get(column));
            sheet.style(0, column).bold().set();
        }
        sheet.freezePane(0, 1);
        row = 1;
    }

    /** One row: texts, numbers, and nothing for an empty optional. */
    void row(Object... cells) {
        for (int column = 0; column < cells.length; column++) {
            cell(column, cells[column]);
        }
        row++;
    }

    private void cell(int column, @Nullable Object cell) {
        switch (cell) {
            case null -> {}
            case Optional<?> optional -> cell(column, optional.orElse(null));
            case OptionalDouble optional -> cell(column, optional.isPresent() ? optional.getAsDouble() : null);
            case Double number -> number(column, number);
            case Integer number -> number(column, number);
            default -> text(column, cell.toString());
        }
    }

    private void number(int column, Number number) {
        if (Double.isFinite(number.doubleValue())) {
            sheet.value(row, column, number);
            widths[column] = Math.max(widths[column], 11);
        }
    }

    private void text(int column, String text) {
        if (!text.isEmpty()) {
            sheet.value(row, column, guarded(text));
            widths[column] = Math.max(widths[column], Math.min(WIDEST, text.length()));
        }
    }

    /** An apostrophe before anything that a spreadsheet might calculate, and no sign that XML has no place for. */
    static String guarded(String text) {
        StringBuilder plain = new StringBuilder(text.length() + 1);
        if (FORMULA_STARTS.indexOf(text.charAt(0)) >= 0) {
            plain.append('\'');
        }
        text.codePoints()
                .map(c -> c == '\t'
                                || c == '\n'
                                || (c >= 0x20 && c < 0xd800)
                                || (c >= 0xe000 && c < 0xfffe)
                                || c >= 0x10000
                        ? c
                        : ' ')
                .forEach(plain::appendCodePoint);
        return plain.toString();
    }

    void finish() {
        for (int column = 0; column < widths.length; column++) {
            sheet.width(column, Math.max(8, widths[column] + 2));
        }
    }
}
