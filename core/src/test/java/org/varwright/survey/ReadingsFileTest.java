package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Any file that a spreadsheet can save, and things that only look like one. */
class ReadingsFileTest {
    private static final UnitType TYPE =
            BankSketch.type("U300", 300e3, 7960, 60, new Tolerance(0.0, 0.1), 4, 12, false, Optional.empty());
    private static final Bank BANK = new BankSketch()
            .stage("stage 2", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2), TYPE)
            .known("stage 2/A/u1", "TF-1", 12.7e-6)
            .build();

    private static Readings read(String text) {
        return read(text.getBytes(StandardCharsets.UTF_8));
    }

    private static Readings read(byte[] bytes) {
        return ReadingsFile.read(BANK, "r.csv", bytes);
    }

    private static double farads(Readings readings, int row) {
        return readings.rows().get(row).capacitance().orElseThrow().value().orElseThrow();
    }

    private static List<String> codes(List<Problem> problems) {
        return problems.stream()
                .map(p -> p.place().path() + " " + p.message().name())
                .toList();
    }

    private static void refused(Message message, byte[] bytes) {
        VarwrightException thrown = assertThrows(VarwrightException.class, () -> read(bytes));
        assertEquals(message, thrown.problems().getFirst().message());
    }

    @Test
    void everyDelimiterAndDecimalMarkReadsTheSame() {
        for (String table : List.of(
                "position,capacitance,resistance\nstage 2/A/u1,12.71,4.1\nstage 2/A/u2,12.68,4.2\n",
                "position;capacitance;resistance\nstage 2/A/u1;12,71;4,1\nstage 2/A/u2;12,68;4,2\n",
                "position\tcapacitance\tresistance\r\nstage 2/A/u1\t12,71\t4,1\r\nstage 2/A/u2\t12,68\t4,2\r\n",
                "sep=;\nposition;capacitance;resistance\nstage 2/A/u1;12.71;4.1\nstage 2/A/u2;12.68;4.2\n",
                "position,capacitance,resistance\n\"stage 2/A/u1\",\"12,71\",\"4,1\"\nstage 2/A/u2,\"12,68\",\"4,2\"\n",
                "\ufeffposition,Capacitance (nF),R in kΩ\nstage 2/A/u1,12710,4100\nstage 2/A/u2,12680,4200\n",
                "POSITION,cap_uF,discharge resistance [MΩ]\nstage 2/A/u1,12.71,4.1\nstage 2/A/u2,12.68,4.2\n",
                "position,capacitance,resistance\nstage 2 / a / U1,12.71 µF,4100 kohm\nstage 2/A/u2,12680 nF,4.2 MΩ",
                "\n\nposition,capacitance,resistance,,\nstage 2/A/u1,12.71,4.1,,\n\nstage 2/A/u2,12.68,4.2,,\n,,,,\n")) {
            Readings readings = read(table);
            assertEquals(List.of(), readings.problems(), table);
            assertEquals(2, readings.rows().size(), table);
            assertEquals(12.71e-6, farads(readings, 0), 1e-15, table);
            assertEquals(12.68e-6, farads(readings, 1), 1e-15, table);
            assertEquals(
                    4.1e6,
                    readings.rows().get(0).resistance().orElseThrow().value().orElseThrow(),
                    1e-3,
                    table);
        }
    }

    @Test
    void windows1252IsReadAndSaid() {
        byte[] bytes = "position;capacitance (µF);note\nstage 2/A/u1;12,71;Prüfer O’Hara – 25 °C\n"
                .getBytes(Charset.forName("windows-1252"));
        Readings readings = read(bytes);
        assertEquals(12.71e-6, farads(readings, 0), 1e-15);
        assertEquals(
                Optional.of("Prüfer O’Hara – 25 °C"), readings.rows().getFirst().note());
        assertTrue(readings.notices().stream().anyMatch(n -> n.message() == Message.TABLE_WINDOWS_1252));
    }

    @Test
    void utf16IsReadAndSaid() {
        byte[] bytes = "\ufeffposition\tcapacitance\nstage 2/A/u1\t12,71\n".getBytes(StandardCharsets.UTF_16LE);
        Readings readings = read(bytes);
        assertEquals(12.71e-6, farads(readings, 0), 1e-15);
        assertTrue(readings.notices().stream().anyMatch(n -> n.message() == Message.TABLE_UTF16));
    }

    @Test
    void rowsThatCannotBeUsedAreReportedAndTheRestIsUsed() {
        Readings readings = read("""
                position,capacitance,temperature
                stage 2/A/u1,12.71,20
                stage 9/A/u1,12.70,20
                ,12.70,20
                stage 2/A/u2,NaN,20
                stage 2/B/u1,about 12,20
                stage 2/B/u2,-12.7,20
                stage 2/C/u1,12.7 MΩ,20
                stage 2/C/u2,12,7,20,x
                stage 2/C/u2,,20
                stage 2/C/u2,12.69,250
                """);
        assertEquals(
                List.of(
                        "row 3 POSITION_UNKNOWN",
                        "row 4 ROW_NO_POSITION",
                        "row 5 CELL_NOT_A_NUMBER",
                        "row 6 CELL_NOT_A_NUMBER",
                        "row 7 CELL_NEGATIVE",
                        "row 8 CELL_WRONG_UNIT",
                        "row 9 ROW_CELLS",
                        "row 10 ROW_NO_VALUE",
                        "row 11 CELL_OUT_OF_RANGE"),
                codes(readings.problems()));
        assertEquals(
                List.of(2, 11), readings.rows().stream().map(ReadingRow::row).toList());
        assertTrue(readings.problems().getFirst().print().contains("positions of this bank run from \"stage 2/A/u1\""));
    }

    /** Found by the law over damaged tables: 1e-308 µF was taken, and the unit was judged by NaN. */
    @Test
    void aValueThatNoMeterShowsIsNoReading() {
        Readings readings = read("""
                position,capacitance
                stage 2/A/u1,1e-308 µF
                stage 2/A/u2,0
                """);
        assertEquals(List.of("row 2 CELL_OUT_OF_RANGE"), codes(readings.problems()));
        assertEquals(List.of(3), readings.rows().stream().map(ReadingRow::row).toList(), "nothing at all is a reading");
    }

    @Test
    void meterEndsAndBlanks() {
        Readings readings = read("""
                position,capacitance,resistance
                stage 2/A/u1,OL,>200 MΩ
                stage 2/A/u2,<0.01 nF,-
                stage 2/B/u1,0,∞
                """);
        assertEquals(List.of(), readings.problems());
        assertEquals(
                Optional.of(new Measured.OverRange("OL")),
                readings.rows().get(0).capacitance());
        assertEquals(
                Optional.of(new Measured.Above(2e8, ">200 MΩ")),
                readings.rows().get(0).resistance());
        assertTrue(readings.rows().get(1).capacitance().orElseThrow() instanceof Measured.Below);
        assertEquals(Optional.empty(), readings.rows().get(1).resistance());
        assertEquals(0.0, farads(readings, 2));
    }

    @Test
    void aCommaThatMayMeanEitherIsNotGuessed() {
        Readings readings =
                read("position;capacitance;insulation\nstage 2/A/u1;12.71;\"5,120\"\nstage 2/A/u2;12.7;900.5\n");
        assertEquals(List.of("row 2 CELL_AMBIGUOUS"), codes(readings.problems()));
        assertEquals(2, readings.rows().size());
        // 1.234,5 and 1,234.5 leave no doubt
        assertEquals(
                1234.5e6,
                read("position;insulation\nstage 2/A/u1;1.234,5\n")
                        .rows()
                        .getFirst()
                        .insulation()
                        .orElseThrow()
                        .value()
                        .orElseThrow(),
                1e-3);
        assertEquals(
                1234.5e6,
                read("position;insulation\nstage 2/A/u1;1,234.5\n")
                        .rows()
                        .getFirst()
                        .insulation()
                        .orElseThrow()
                        .value()
                        .orElseThrow(),
                1e-3);
    }

    @Test
    void whatWasUnderstoodIsPrintedBackAndUnknownColumnsAreKept() {
        Readings readings = read("At;S/N;Cap. old;cap (nF);read by\nstage 2/A/u1;TF-1;x;12710;R. Imhof\n");
        assertEquals(
                List.of("\"At\" is position", "\"S/N\" is serial", "\"cap (nF)\" is capacitance in nF"),
                readings.understood());
        assertEquals("R. Imhof", readings.rows().getFirst().other().get("read by"));
        assertEquals(
                "12710", readings.rows().getFirst().capacitance().orElseThrow().raw());
        assertEquals(
                2,
                readings.notices().stream()
                        .filter(n -> n.message() == Message.TABLE_COLUMN_KEPT)
                        .count());
    }

    @Test
    void unreadableFilesAreRefused() {
        refused(Message.TABLE_EMPTY, new byte[0]);
        refused(Message.TABLE_EMPTY, " \n ,, \n".getBytes(StandardCharsets.UTF_8));
        refused(Message.TABLE_TOO_LARGE, new byte[50_000_000]);
        refused(Message.TABLE_IS_WORKBOOK, new byte[] {'P', 'K', 3, 4, 20, 0});
        refused(Message.TABLE_NOT_TEXT, "position,capacitance\n\0\0".getBytes(StandardCharsets.UTF_8));
        refused(
                Message.TABLE_QUOTE_OPEN,
                "position,capacitance\n\"stage 2/A/u1,12.7\n".getBytes(StandardCharsets.UTF_8));
        refused(Message.TABLE_COLUMN_MISSING, "place of it,capacitance\nx,1\n".getBytes(StandardCharsets.UTF_8));
        refused(
                Message.TABLE_NOTHING_TO_READ,
                "position,temperature\nstage 2/A/u1,20\n".getBytes(StandardCharsets.UTF_8));
        refused(
                Message.TABLE_COLUMN_TWICE,
                "position,cap,capacitance\nstage 2/A/u1,1,2\n".getBytes(StandardCharsets.UTF_8));
        refused(Message.TABLE_NO_ROWS, "position,capacitance\n".getBytes(StandardCharsets.UTF_8));
    }

    /** Whatever bytes stand in a file, it is read or refused with a message. */
    @Test
    void noBytesBreakTheReader() {
        byte[] sound = "position;serial;capacitance (µF);resistance\nstage 2/A/u1;\"TF-1\";12,71;4,1\n"
                .getBytes(StandardCharsets.UTF_8);
        int refusals = 0;
        for (long seed = 1; seed <= 3000; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            byte[] bytes = sound.clone();
            for (int i = random.nextInt(1, 6); i > 0; i--) {
                bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
            }
            try {
                Readings readings = read(bytes);
                assertTrue(
                        readings.rows().size() + readings.problems().size() >= 1, "seed " + seed + " dropped its row");
                readings.problems().forEach(Problem::print);
            } catch (VarwrightException e) {
                refusals++;
            }
        }
        assertTrue(refusals > 0, "no damage was ever noticed");
    }

    @Test
    void sparesAreReadAndWhatDoesNotFitTheFileIsReported() {
        Spares spares = SparesFile.read(BANK, "s.csv", """
                serial;unit;capacitance;note
                S-1;U300;12,69;tested
                S-2;u300;;
                S-1;U300;12,70;
                S-4;U400;12,70;
                ;U300;12,70;
                TF-1;U300;12,70;
                S-7;;12,70;
                S-8;U300;x;
                """.getBytes(StandardCharsets.UTF_8));
        assertEquals(
                List.of(
                        "row 4 SPARE_SERIAL_TWICE",
                        "row 5 SPARE_UNIT_UNKNOWN",
                        "row 6 SPARE_NO_SERIAL",
                        "row 7 SPARE_IN_SERVICE",
                        "row 8 SPARE_NO_UNIT",
                        "row 9 CELL_NOT_A_NUMBER"),
                codes(spares.problems()));
        assertEquals(
                List.of("S-1", "S-2"),
                spares.spares().stream().map(s -> s.serial()).toList());
        assertEquals(12.69e-6, spares.spares().getFirst().capacitanceFarads().orElseThrow(), 1e-15);
        assertTrue(spares.spares().get(1).capacitanceFarads().isEmpty());
    }
}
