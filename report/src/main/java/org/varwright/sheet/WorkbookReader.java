package org.varwright.sheet;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.ReadingOptions;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.survey.CellTable;

/** Chooses a sheet of a workbook and gives its cells as text. */
final class WorkbookReader {
    /** Sheets longer or wider than this are no tables of readings. */
    private static final int MOST_ROWS = 20_000;

    private static final int MOST_COLUMNS = 400;

    private final String file;
    private final ReadableWorkbook workbook;

    private WorkbookReader(String file, ReadableWorkbook workbook) {
        this.file = file;
        this.workbook = workbook;
    }

    static CellTable read(String file, ZipParts parts, Optional<String> sheet) {
        // without cell formats a date can't be told from a number
        ReadingOptions options = new ReadingOptions(true, true);
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(parts.repacked()), options)) {
            return new WorkbookReader(file, workbook).read(sheet);
        } catch (VarwrightException e) {
            throw e;
        } catch (IOException | RuntimeException e) {
            // the library checks little of a damaged file before it uses it, and its parser throws what it likes
            throw broken(file);
        }
    }

    /** What the library says is for programmers, often with names of its classes; a person can do nothing with it. */
    private static VarwrightException broken(String file) {
        return ZipParts.broken(new Place(file, 0, 0, ""), "a part is damaged or missing");
    }

    private CellTable read(Optional<String> wanted) throws IOException {
        List<Sheet> sheets = workbook.getSheets().toList();
        Place whole = new Place(file, 0, 0, "");
        if (wanted.isPresent()) {
            Sheet sheet = sheets.stream()
                    .filter(s ->
                            s.getName().strip().equalsIgnoreCase(wanted.get().strip()))
                    .findFirst()
                    .orElseThrow(() ->
                            new VarwrightException(Message.WORKBOOK_SHEET_UNKNOWN, whole, wanted.get(), names(sheets)));
            return table(sheet, List.of());
        }
        List<Sheet> alikeSheets = new ArrayList<>();
        for (Sheet sheet : sheets) {
            if (table(sheet, List.of()).looksLikeReadings()) {
                alikeSheets.add(sheet);
            }
        }
        List<Sheet> visible = alikeSheets.stream()
                .filter(s -> s.getVisibility() == SheetVisibility.VISIBLE)
                .toList();
        if (visible.size() > 1) {
            throw new VarwrightException(Message.WORKBOOK_SHEETS_ALIKE, whole, names(visible));
        }
        Sheet chosen = !visible.isEmpty()
                ? visible.getFirst()
                : alikeSheets.size() == 1
                        ? alikeSheets.getFirst()
                        : sheets.stream().findFirst().orElseThrow(() -> ZipParts.broken(whole, "it has no sheets"));
        List<Sheet> others =
                sheets.stream().filter(s -> s.getIndex() != chosen.getIndex()).toList();
        List<Problem> notices = others.isEmpty()
                ? List.of()
                : List.of(Problem.of(Message.WORKBOOK_SHEET, whole, chosen.getName(), names(others)));
        return table(chosen, notices);
    }

    private static String names(List<Sheet> sheets) {
        return sheets.stream().map(s -> "\"" + s.getName() + "\"").collect(Collectors.joining(", "));
    }

    private CellTable table(Sheet sheet, List<Problem> before) throws IOException {
        Place place = new Place(file + " [" + sheet.getName() + "]", 0, 0, "");
        List<Problem> notices = new ArrayList<>(before);
        if (sheet.getVisibility() != SheetVisibility.VISIBLE) {
            notices.add(Problem.of(Message.WORKBOOK_SHEET_HIDDEN, place, sheet.getName()));
        }
        List<CellTable.Row> rows = new ArrayList<>();
        List<String> hidden = new ArrayList<>();
        try (Stream<Row> stream = sheet.openStream()) {
            Iterator<Row> each = stream.iterator();
            while (each.hasNext()) {
                Row row = each.next();
                if (rows.size() == MOST_ROWS) {
                    throw new VarwrightException(Message.WORKBOOK_TOO_LARGE, place, MOST_ROWS + " rows");
                }
                SheetRow cells = SheetRow.of(row, workbook.isDate1904());
                if (cells.width() > MOST_COLUMNS) {
                    throw new VarwrightException(Message.WORKBOOK_TOO_LARGE, place, MOST_COLUMNS + " columns");
                }
                rows.add(cells.row());
                if (row.isHidden() && cells.width() > 0) {
                    hidden.add(String.format(Locale.ROOT, "%d", row.getRowNum()));
                }
            }
        }
        if (!hidden.isEmpty()) {
            notices.add(Problem.of(Message.WORKBOOK_ROWS_HIDDEN, place, String.join(", ", hidden)));
        }
        return CellTable.ofSheet(file, sheet.getName(), rows, notices);
    }
}
