package org.varwright.sheet;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.poi.hssf.usermodel.HSSFWorkbook;
import org.apache.poi.poifs.crypt.EncryptionInfo;
import org.apache.poi.poifs.crypt.EncryptionMode;
import org.apache.poi.poifs.crypt.Encryptor;
import org.apache.poi.poifs.filesystem.POIFSFileSystem;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.survey.CellTable;
import org.varwright.survey.Measured;
import org.varwright.survey.ReadingRow;
import org.varwright.survey.Readings;
import org.varwright.survey.ReadingsFile;

/** Workbooks written by another library (Apache POI) than the one that reads them. */
class TableFileTest {
    private static final Bank BANK = new BankSketch()
            .stage(
                    "stage 2",
                    Connection.WYE_UNGROUNDED,
                    new LegLayout(1, 1, 2),
                    BankSketch.type("U300", 300e3, 7960, 60, new Tolerance(0.0, 0.1), 4, 12, false, Optional.empty()))
            .build();

    private static byte[] workbook(Consumer<Workbook> fill) throws IOException {
        try (Workbook workbook = new XSSFWorkbook()) {
            fill.accept(workbook);
            return bytes(workbook);
        }
    }

    private static byte[] bytes(Workbook workbook) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        workbook.write(out);
        return out.toByteArray();
    }

    /** Puts texts and numbers into a row, from the first column on. */
    private static Row put(Sheet sheet, int number, Object... cells) {
        Row row = sheet.createRow(number - 1);
        for (int i = 0; i < cells.length; i++) {
            Cell cell = row.createCell(i);
            switch (cells[i]) {
                case Double value -> cell.setCellValue(value);
                case String text when text.startsWith("=") -> cell.setCellFormula(text.substring(1));
                case String text -> cell.setCellValue(text);
                default -> throw new IllegalArgumentException(cells[i].toString());
            }
        }
        return row;
    }

    private static CellTable table(byte[] content) {
        return TableFile.read("r.xlsx", content, Optional.empty());
    }

    private static Readings readings(byte[] content) {
        return ReadingsFile.read(BANK, table(content));
    }

    private static double micro(ReadingRow row) {
        return 1e6 * row.capacitance().orElseThrow().value().orElseThrow();
    }

    private static List<Message> codes(List<Problem> problems) {
        return problems.stream().map(Problem::message).toList();
    }

    private static void refused(Message message, byte[] content, Optional<String> sheet) {
        VarwrightException thrown =
                assertThrows(VarwrightException.class, () -> TableFile.read("r.xlsx", content, sheet));
        assertEquals(message, thrown.problems().getFirst().message(), thrown.getMessage());
    }

    @Test
    void numbersTextsFormulasAndDatesAreReadAsTheyWereMeant() throws IOException {
        Readings readings = readings(workbook(workbook -> {
            Sheet sheet = workbook.createSheet("Readings");
            put(sheet, 1, "Position", "Capacitance (µF)", "Discharge resistance", "Taken", "Note");
            Row first = put(sheet, 2, "stage 2/A/u1", 12.71, "4.1 MΩ", "", "");
            CellStyle day = workbook.createCellStyle();
            day.setDataFormat(workbook.createDataFormat().getFormat("d mmm yyyy"));
            first.getCell(3).setCellValue(LocalDate.of(2026, 5, 11));
            first.getCell(3).setCellStyle(day);
            // a number that is text, with a decimal comma
            put(sheet, 3, "stage 2/A/u2", "12,68", 4.2);
            Row formula = put(sheet, 4, "stage 2/B/u1", "=127.3/10", 4.3);
            workbook.getCreationHelper().createFormulaEvaluator().evaluateFormulaCell(formula.getCell(1));
            // nanofarad by the cell's number format alone
            Row nano = put(sheet, 5, "stage 2/B/u2", 12690.0, 4.0);
            CellStyle nf = workbook.createCellStyle();
            nf.setDataFormat(workbook.createDataFormat().getFormat("0.0\" nF\""));
            nano.getCell(1).setCellStyle(nf);
            put(sheet, 6, "stage 2/C/u1", Math.nextDown(12.7), 4.0);
        }));
        assertEquals(List.of(), readings.problems());
        double[] expected = {12.71, 12.68, 12.73, 12.69, 12.7};
        for (int i = 0; i < expected.length; i++) {
            assertEquals(expected[i], micro(readings.rows().get(i)), 1e-9, "row " + (i + 2));
        }
        assertEquals(Optional.of("2026-05-11"), readings.rows().getFirst().taken());
        assertEquals(
                List.of(2, 3, 4, 5, 6),
                readings.rows().stream().map(ReadingRow::row).toList());
        assertEquals(
                "12.7",
                readings.rows().getLast().capacitance().map(Measured::raw).orElse(""));
    }

    /** A number cell of three decimals is no thousands, whatever the texts beside it use. */
    @Test
    void aNumberCellIsNeverAmbiguous() throws IOException {
        Readings readings = readings(workbook(workbook -> {
            Sheet sheet = workbook.createSheet("Readings");
            put(sheet, 1, "position", "capacitance");
            put(sheet, 2, "stage 2/A/u1", 12.712);
            put(sheet, 3, "stage 2/A/u2", "12,7");
            put(sheet, 4, "stage 2/B/u1", "12,6");
        }));
        assertEquals(List.of(), readings.problems());
        assertEquals(12.712, micro(readings.rows().getFirst()), 1e-9);
    }

    @Test
    void whatCannotBeUsedIsReportedWithItsRow() throws IOException {
        Readings readings = readings(workbook(workbook -> {
            Sheet sheet = workbook.createSheet("Readings");
            put(sheet, 1, "position", "capacitance");
            put(sheet, 2, "stage 2/A/u1", "=1/0");
            workbook.getCreationHelper().createFormulaEvaluator().evaluateAll();
            put(sheet, 3, "stage 2/A/u2", "=12.7+0");
            put(sheet, 4, "stage 2/B/u1", "");
            sheet.getRow(3).getCell(1).setCellValue(true);
            put(sheet, 5, "stage 2/B/u2", "about 12");
            put(sheet, 7, "", 12.7);
            put(sheet, 9, "stage 2/C/u1", 12.7);
        }));
        assertEquals(1, readings.rows().size());
        assertEquals(
                List.of("row 2", "row 3", "row 4", "row 5", "row 7"),
                readings.problems().stream().map(p -> p.place().path()).toList());
        assertEquals(
                List.of(
                        Message.CELL_NOT_A_NUMBER,
                        Message.CELL_FORMULA,
                        Message.CELL_NOT_A_NUMBER,
                        Message.CELL_NOT_A_NUMBER,
                        Message.ROW_NO_POSITION),
                codes(readings.problems()));
        assertTrue(readings.problems().getFirst().print().startsWith("r.xlsx [Readings] row 2: "));
    }

    @Test
    void titlesMergedHeadingsAndAUnitRowStandAboveTheReadings() throws IOException {
        Readings readings = readings(workbook(workbook -> {
            Sheet sheet = workbook.createSheet("Readings");
            put(sheet, 1, "Site readings, May 2026");
            sheet.addMergedRegion(new CellRangeAddress(0, 0, 0, 3));
            put(sheet, 3, "Position", "Readings", "", "Remark");
            sheet.addMergedRegion(new CellRangeAddress(2, 3, 0, 0));
            sheet.addMergedRegion(new CellRangeAddress(2, 2, 1, 2));
            put(sheet, 4, "", "capacitance (nF)", "discharge resistance (kΩ)", "");
            put(sheet, 5, "stage 2/A/u1", 12710.0, 4100.0, "ok");
        }));
        assertEquals(List.of(), readings.problems());
        assertEquals(12.71, micro(readings.rows().getFirst()), 1e-9);
        assertEquals(
                4.1e6,
                readings.rows().getFirst().resistance().orElseThrow().value().orElseThrow(),
                1e-3);
        assertTrue(codes(readings.notices()).contains(Message.TABLE_ROW_ABOVE));
        Readings units = readings(workbook(workbook -> {
            Sheet sheet = workbook.createSheet("Readings");
            put(sheet, 1, "position", "capacitance", "resistance");
            put(sheet, 2, "", "[nF]", "kΩ");
            put(sheet, 3, "stage 2/A/u1", 12710.0, 4100.0);
        }));
        assertEquals(List.of(), units.problems());
        assertEquals(12.71, micro(units.rows().getFirst()), 1e-9);
    }

    @Test
    void hiddenRowsAreReadAndSaid() throws IOException {
        Readings readings = readings(workbook(workbook -> {
            Sheet sheet = workbook.createSheet("Readings");
            put(sheet, 1, "position", "capacitance");
            put(sheet, 2, "stage 2/A/u1", 12.7).setZeroHeight(true);
            put(sheet, 3, "stage 2/A/u2", 12.8);
        }));
        assertEquals(2, readings.rows().size());
        Problem notice = readings.notices().stream()
                .filter(p -> p.message() == Message.WORKBOOK_ROWS_HIDDEN)
                .findFirst()
                .orElseThrow();
        assertEquals(List.of("2"), notice.arguments());
    }

    @Test
    void theSheetThatLooksLikeReadingsIsReadAndSaid() throws IOException {
        byte[] content = workbook(workbook -> {
            put(workbook.createSheet("Cover"), 1, "Bank survey");
            Sheet sheet = workbook.createSheet("May");
            put(sheet, 1, "position", "capacitance");
            put(sheet, 2, "stage 2/A/u1", 12.7);
            Sheet old = workbook.createSheet("2024");
            put(old, 1, "position", "capacitance");
            put(old, 2, "stage 2/A/u1", 12.6);
            workbook.setSheetHidden(2, true);
        });
        Readings chosen = readings(content);
        assertEquals("r.xlsx [May]", chosen.file());
        assertEquals(12.7, micro(chosen.rows().getFirst()), 1e-9);
        Problem notice = chosen.notices().getFirst();
        assertEquals(Message.WORKBOOK_SHEET, notice.message());
        assertEquals(List.of("May", "\"Cover\", \"2024\""), notice.arguments());
        Readings named = ReadingsFile.read(BANK, TableFile.read("r.xlsx", content, Optional.of("2024")));
        assertEquals(12.6, micro(named.rows().getFirst()), 1e-9);
        assertTrue(codes(named.notices()).contains(Message.WORKBOOK_SHEET_HIDDEN));
        refused(Message.WORKBOOK_SHEET_UNKNOWN, content, Optional.of("June"));
        byte[] twins = workbook(workbook -> {
            put(workbook.createSheet("one"), 1, "position", "capacitance");
            put(workbook.createSheet("two"), 1, "position", "capacitance");
        });
        refused(Message.WORKBOOK_SHEETS_ALIKE, twins, Optional.empty());
    }

    @Test
    void textNamedAsAWorkbookIsReadAsText() {
        byte[] text = "position,capacitance\nstage 2/A/u1,12.7\n".getBytes(StandardCharsets.UTF_8);
        assertEquals(12.7, micro(readings(text).rows().getFirst()), 1e-9);
        refused(Message.WORKBOOK_SHEET_FOR_TEXT, text, Optional.of("Sheet1"));
        refused(Message.TABLE_IS_MARKUP, "<html><table>".getBytes(StandardCharsets.UTF_8), Optional.empty());
    }

    @Test
    void whatIsNoWorkbookOfThisKindIsNamed() throws Exception {
        try (Workbook old = new HSSFWorkbook()) {
            old.createSheet("one");
            refused(Message.WORKBOOK_OLD, bytes(old), Optional.empty());
        }
        byte[] plain = workbook(workbook -> put(workbook.createSheet("one"), 1, "position", "capacitance"));
        try (POIFSFileSystem files = new POIFSFileSystem()) {
            Encryptor encryptor = new EncryptionInfo(EncryptionMode.agile).getEncryptor();
            encryptor.confirmPassword("secret");
            try (var stream = encryptor.getDataStream(files)) {
                stream.write(plain);
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            files.writeFilesystem(out);
            refused(Message.WORKBOOK_LOCKED, out.toByteArray(), Optional.empty());
        }
        refused(
                Message.WORKBOOK_KIND,
                zip("mimetype", "application/vnd.oasis.opendocument.spreadsheet".getBytes(StandardCharsets.US_ASCII)),
                Optional.empty());
        refused(Message.WORKBOOK_KIND, zip("xl/workbook.bin", new byte[] {1}), Optional.empty());
        refused(Message.WORKBOOK_KIND, zip("word/document.xml", new byte[] {1}), Optional.empty());
        refused(Message.WORKBOOK_BROKEN, Arrays.copyOf(plain, plain.length / 2), Optional.empty());
    }

    /** A few kilobytes that unpack to hundreds of megabytes; entities that multiply; a single row of a million columns. */
    @Test
    void bombsAreRefused() throws IOException {
        byte[] zeros = new byte[ZipParts.MOST_BYTES + 1];
        byte[] bomb = zip("xl/worksheets/sheet1.xml", zeros);
        assertTrue(bomb.length < 200_000);
        refused(Message.WORKBOOK_TOO_LARGE, bomb, Optional.empty());
        refused(Message.TABLE_TOO_LARGE, Arrays.copyOf(bomb, ZipParts.MOST_PACKED_BYTES + 1), Optional.empty());
        byte[] wide = workbook(workbook -> {
            Row row = put(workbook.createSheet("one"), 1, "position", "capacitance");
            row.createCell(16_000).setCellValue("x");
        });
        refused(Message.WORKBOOK_TOO_LARGE, wide, Optional.empty());
        StringBuilder laughs = new StringBuilder("<?xml version=\"1.0\"?><!DOCTYPE sst [<!ENTITY a0 \"ha\">");
        for (int i = 1; i < 30; i++) {
            laughs.append("<!ENTITY a")
                    .append(i)
                    .append(" \"&a")
                    .append(i - 1)
                    .append(";&a")
                    .append(i - 1)
                    .append(";\">");
        }
        laughs.append(
                "]><sst xmlns=\"http://schemas.openxmlformats.org/spreadsheetml/2006/main\"><si><t>&a29;</t></si></sst>");
        byte[] plain = workbook(workbook -> {
            put(workbook.createSheet("one"), 1, "position", "capacitance");
            put(workbook.getSheetAt(0), 2, "stage 2/A/u1", 12.7);
        });
        byte[] entities =
                replaced(plain, "xl/sharedStrings.xml", laughs.toString().getBytes(StandardCharsets.UTF_8));
        refused(Message.WORKBOOK_BROKEN, entities, Optional.empty());
    }

    /** Whatever bytes stand in a workbook, it is read or refused with a message; no row is dropped in silence. */
    @Test
    void noDamageBreaksTheReader() throws IOException {
        byte[] sound = workbook(workbook -> {
            Sheet sheet = workbook.createSheet("Readings");
            put(sheet, 1, "position", "capacitance (µF)", "resistance");
            put(sheet, 2, "stage 2/A/u1", 12.71, "4,1");
            put(sheet, 3, "stage 2/A/u2", "=12.7", 4.2);
            put(sheet, 4, "stage 9/A/u2", 12.7, 4.2);
        });
        int refusals = 0;
        int read = 0;
        for (long seed = 1; seed <= 400; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            byte[] damaged = seed % 2 == 0
                    ? flipped(random, sound)
                    : replaced(
                            sound,
                            "xl/worksheets/sheet1.xml",
                            flipped(random, part(sound, "xl/worksheets/sheet1.xml")));
            try {
                Readings readings = readings(damaged);
                read++;
                readings.problems().forEach(Problem::print);
            } catch (VarwrightException e) {
                refusals++;
                assertFalse(
                        String.valueOf(e.getMessage()).matches("(?s).*(Exception|org\\.|com\\.).*"),
                        "seed " + seed + ": " + e.getMessage());
            }
        }
        assertTrue(refusals > 0 && read > 0, refusals + " refused, " + read + " read");
    }

    private static byte[] flipped(SplittableRandom random, byte[] bytes) {
        byte[] damaged = bytes.clone();
        for (int i = random.nextInt(1, 5); i > 0; i--) {
            damaged[random.nextInt(damaged.length)] = (byte) random.nextInt(256);
        }
        return damaged;
    }

    private static byte[] zip(String name, byte[] part) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipOutputStream zip = new ZipOutputStream(out)) {
            zip.putNextEntry(new ZipEntry(name));
            zip.write(part);
            zip.closeEntry();
        }
        return out.toByteArray();
    }

    private static byte[] part(byte[] workbook, String name) throws IOException {
        try (var zip = new java.util.zip.ZipInputStream(new java.io.ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                if (entry.getName().equals(name)) {
                    return zip.readAllBytes();
                }
            }
        }
        throw new IllegalArgumentException(name);
    }

    private static byte[] replaced(byte[] workbook, String name, byte[] part) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (var zip = new java.util.zip.ZipInputStream(new java.io.ByteArrayInputStream(workbook));
                ZipOutputStream copy = new ZipOutputStream(out)) {
            for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
                copy.putNextEntry(new ZipEntry(entry.getName()));
                copy.write(entry.getName().equals(name) ? part : zip.readAllBytes());
                copy.closeEntry();
            }
        }
        return out.toByteArray();
    }
}
