package org.varwright.sheet;

import java.util.Optional;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.survey.CellTable;

/** A table of readings or spares in any file that a spreadsheet saves; what it is follows from its bytes, not from its name. */
public final class TableFile {
    private TableFile() {}

    /**
     * The cells of a file.
     *
     * @param file name as the person gave it, for messages
     * @param content of the file
     * @param sheet to read of a workbook; empty: the one that looks like readings
     * @throws VarwrightException {@code TABLE_…}, {@code WORKBOOK_…} where the file as a whole can't be read
     */
    public static CellTable read(String file, byte[] content, Optional<String> sheet) {
        Place whole = new Place(file, 0, 0, "");
        if (OldWorkbook.is(content)) {
            throw new VarwrightException(
                    OldWorkbook.isLocked(content) ? Message.WORKBOOK_LOCKED : Message.WORKBOOK_OLD, whole);
        }
        if (ZipParts.is(content)) {
            return WorkbookReader.read(file, ZipParts.of(file, content), sheet);
        }
        if (sheet.isPresent()) {
            throw new VarwrightException(Message.WORKBOOK_SHEET_FOR_TEXT, whole, sheet.get());
        }
        return CellTable.ofText(file, content);
    }
}
