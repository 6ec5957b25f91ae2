package org.varwright.sheet;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.Row;
import org.jspecify.annotations.Nullable;
import org.varwright.survey.CellTable;

/**
 * The cells of one row as text: what was typed or calculated, not what the column was wide enough to show.
 *
 * @param row for the readers in {@code core}
 * @param width columns up to the last one with anything in it
 */
record SheetRow(CellTable.Row row, int width) {
    /** Text that a number format puts behind the number: {@code 0.00" nF"}, {@code 0.0\ [$kΩ]}. */
    private static final Pattern LITERAL = Pattern.compile("\"([^\"]*)\"|\\\\(.)|\\[\\$([^\\]\\-]*)[^\\]]*]");

    private static final String LOOSE = "\"[^\"]*\"|\\\\.|\\[[^\\]]*]|_.|\\*.";
    private static final int LAST_SERIAL_DAY = 2_958_465;

    static SheetRow of(Row row, boolean date1904) {
        List<String> cells = new ArrayList<>();
        Set<Integer> numbers = new HashSet<>();
        int width = 0;
        for (int column = 0; column < row.getCellCount(); column++) {
            Cell cell = row.getCell(column);
            Shown shown = cell == null ? Shown.NOTHING : shown(cell, date1904);
            cells.add(shown.text());
            if (shown.number()) {
                numbers.add(column);
            }
            if (!shown.text().isEmpty()) {
                width = column + 1;
            }
        }
        return new SheetRow(new CellTable.Row(row.getRowNum(), cells.subList(0, width), numbers), width);
    }

    private record Shown(String text, boolean number) {
        static final Shown NOTHING = new Shown("", false);
    }

    private static Shown shown(Cell cell, boolean date1904) {
        CellType type = cell.getType();
        @Nullable String raw = cell.getRawValue();
        if (type == CellType.FORMULA && (raw == null || raw.isEmpty())) {
            // never calculated; an empty text as a result is a value
            return cell.getValue() instanceof String ? Shown.NOTHING : new Shown("=" + cell.getFormula(), false);
        }
        if (raw == null) {
            return Shown.NOTHING;
        }
        if (cell.getValue() instanceof BigDecimal number) {
            return number(number, cell.getDataFormatString(), date1904);
        }
        if (cell.getValue() instanceof Boolean truth) {
            return new Shown(truth ? "TRUE" : "FALSE", false);
        }
        String text = cell.getValue() instanceof String s ? s : raw;
        return new Shown(text.replace('\u00a0', ' ').replace('\u202f', ' ').strip(), false);
    }

    private static Shown number(BigDecimal number, @Nullable String format, boolean date1904) {
        String code = format == null ? "General" : format.split(";", -1)[0];
        String bare = code.replaceAll(LOOSE, "").toLowerCase(Locale.ROOT);
        if (!bare.contains("general") && bare.matches(".*[ymdhs].*")) {
            return new Shown(date(number, date1904, bare), false);
        }
        BigDecimal value = bare.contains("%") ? number.movePointRight(2) : number;
        StringBuilder unit = new StringBuilder(bare.contains("%") ? " %" : "");
        Matcher literals = LITERAL.matcher(code);
        while (literals.find()) {
            for (int group = 1; group <= 3; group++) {
                unit.append(literals.group(group) == null ? "" : literals.group(group));
            }
        }
        String behind = unit.toString().strip();
        // 17 digits are what a binary fraction is stored with, 12.7 as 12.699999999999999: shown as a person typed it
        BigDecimal typed = value.round(new java.math.MathContext(15)).stripTrailingZeros();
        String text = typed.toPlainString();
        return behind.isEmpty() ? new Shown(text, true) : new Shown(text + " " + behind, true);
    }

    private static String date(BigDecimal number, boolean date1904, String format) {
        double days = number.doubleValue();
        if (!(days >= 0.0 && days <= LAST_SERIAL_DAY)) {
            return number.toPlainString();
        }
        LocalDateTime start = date1904
                ? LocalDateTime.of(1904, 1, 1, 0, 0)
                // the spreadsheet's 1900 has a 29 February: right from 1 March 1900 on
                : LocalDateTime.of(1899, 12, 30, 0, 0);
        LocalDateTime when = start.plus(Math.round(days * 86_400.0), ChronoUnit.SECONDS);
        boolean hasDay = format.matches(".*[yd].*");
        boolean hasTime = format.matches(".*[hs].*");
        if (!hasDay) {
            return DateTimeFormatter.ofPattern("HH:mm:ss", Locale.ROOT).format(when);
        }
        return hasTime
                ? DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm", Locale.ROOT).format(when)
                : DateTimeFormatter.ISO_LOCAL_DATE.format(when);
    }
}
