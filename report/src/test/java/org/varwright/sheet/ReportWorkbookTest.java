package org.varwright.sheet;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.jobsheet.JobSheet;
import org.varwright.report.ReportInput;
import org.varwright.survey.Readings;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;

/** The written workbook, read by another library (Apache POI) and by our own reader. */
class ReportWorkbookTest {
    private static final Bank BANK = new BankSketch()
            .stage(
                    "s",
                    Connection.WYE_UNGROUNDED,
                    new LegLayout(1, 1, 2),
                    BankSketch.type("U300", 300e3, 7960, 60, new Tolerance(0.0, 0.1), 4, 12, false, Optional.empty()))
            .build();

    private static final String TABLE = """
            position,serial,capacitance,resistance,note
            s/A/u1,"=HYPERLINK(""x"")",12.7,4.1,+SUM(A1)
            s/A/u2,@X,16.9,4.2,
            s/B/u1,-1,12.8,4.2,
            s/B/u2,B2,OL,4.2,
            s/C/u1,C1,12.75,4.3,
            s/Q/u9,=1+1,12.75,4.3,
            """;

    private static ReportInput input() {
        Readings readings = ReadingsFile.read(BANK, "r.csv", TABLE.getBytes(StandardCharsets.UTF_8));
        JobSheet job = new JobSheet(
                "b.yaml",
                Optional.of("r.csv"),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.empty(),
                Map.of(),
                Optional.of("=cmd|' /C calc'!A0"),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Map.of());
        return ReportInput.of(BANK, job, LocalDate.of(2026, 5, 11), List.of())
                .with(Survey.of(BANK, readings, SurveySettings.of(BANK.standard(), 0.01)));
    }

    @Test
    void theSameJobGivesTheSameBytes() {
        assertArrayEquals(ReportWorkbook.write(input()), ReportWorkbook.write(input()));
    }

    @Test
    void noCellIsAFormulaOrBecomesOne() throws IOException {
        int guarded = 0;
        try (XSSFWorkbook workbook = new XSSFWorkbook(new ByteArrayInputStream(ReportWorkbook.write(input())))) {
            for (Sheet sheet : workbook) {
                for (Row row : sheet) {
                    for (Cell cell : row) {
                        assertTrue(
                                cell.getCellType() != CellType.FORMULA,
                                cell.getAddress().formatAsString());
                        if (cell.getCellType() == CellType.STRING) {
                            String text = cell.getStringCellValue();
                            assertTrue(text.isEmpty() || "=+-@\t\r".indexOf(text.charAt(0)) < 0, text);
                            guarded += text.startsWith("'") ? 1 : 0;
                        }
                    }
                }
            }
        }
        assertTrue(guarded >= 4, "guarded: " + guarded);
    }

    @Test
    void numbersAreNumbersAndWhatCouldNotBeUsedIsThere() throws IOException {
        try (XSSFWorkbook workbook = new XSSFWorkbook(new ByteArrayInputStream(ReportWorkbook.write(input())))) {
            Row second = workbook.getSheet("Units").getRow(2);
            assertEquals("s/A/u2", second.getCell(0).getStringCellValue());
            assertEquals(16.9, second.getCell(2).getNumericCellValue(), 1e-9);
            assertEquals("replace", second.getCell(6).getStringCellValue());
            assertTrue(workbook.getSheet("Not used")
                    .getRow(1)
                    .getCell(0)
                    .getStringCellValue()
                    .endsWith("row 7"));
            assertTrue(workbook.getSheet("Checks").getLastRowNum() >= 1);
        }
    }

    /** The sheet of units is a table of readings that our reader takes back. */
    @Test
    void theUnitsCanBeReadAgain() {
        Readings again = ReadingsFile.read(
                BANK, TableFile.read("report.xlsx", ReportWorkbook.write(input()), Optional.of("Units")));
        assertEquals(
                List.of(12.7, 16.9, 12.8, 12.75),
                again.rows().stream()
                        .flatMap(row -> row.capacitance().stream())
                        .map(value -> Math.rint(1e9 * value.value().orElseThrow()) / 1e3)
                        .toList());
        assertEquals(
                4.1e6,
                again.rows().getFirst().resistance().orElseThrow().value().orElseThrow(),
                1e-3);
    }
}
