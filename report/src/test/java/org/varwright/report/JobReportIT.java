package org.varwright.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Color;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.graphics.image.PDImageXObject;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.Test;
import org.varwright.isolation.OrderStep;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobLog;
import org.varwright.job.Order;
import org.varwright.job.Walk;
import org.varwright.jobsheet.PaperSize;
import org.varwright.json.Json;
import org.varwright.quantity.CalendarDate;
import org.varwright.report.pdf.Judge;
import org.varwright.sheet.JobWorkbook;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** The report on a job out of its log, read back from PDF, workbook and JSON. */
class JobReportIT {
    private static final ZoneId ZONE = ZoneId.of("America/Denver");
    private static final byte[] PHOTO = photo();
    private static final String PHOTO_HASH = InputFile.of("", "", PHOTO).sha256();
    private static final Walk DONE = done();

    /** Worked out once for all tests. */
    private static final JobReport REPORT = report(DONE.job());

    private static String example(String name) {
        try {
            return Files.readString(Path.of("..", "examples", "demo", name));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] photo() {
        BufferedImage picture = new BufferedImage(600, 400, BufferedImage.TYPE_INT_RGB);
        for (int x = 0; x < 600; x++) {
            picture.setRGB(x, x / 2, Color.ORANGE.getRGB());
        }
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            ImageIO.write(picture, "jpeg", out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static Walk begun() {
        Walk walk = new Walk("tablet-a", JobLog.empty("spring"), 1_795_000_000_000L);
        walk.yes(new Fact.Opened(
                "alarm on stage 3",
                example("corbel-reach-3.bank.yaml"),
                Optional.of("CR-7 <b>"),
                Optional.of("find & replace"),
                Optional.of("neutral voltage alarm, 5.6 V")));
        walk.yes(new Fact.OrderMade(
                List.of("bay 3", "bay 4"), Fact.Origin.AsFound.inService(), Optional.empty(), "units to be measured"));
        return walk;
    }

    /** A whole job: stopped and resumed, a photo with a step, readings, two lifts, energized, closed. */
    private static Walk done() {
        Walk walk = begun();
        walk.step();
        walk.yes(new Fact.Stopped("lightning"));
        walk.yes(new Fact.Resumed("looked at everything, the storm is over"));
        walk.yes(new Fact.Attached("stage 3 gap.jpg", "image/jpeg", PHOTO_HASH, PHOTO.length));
        walk.yes(new Fact.Attached("huge.jpg", "image/jpeg", "0".repeat(64), 9));
        Fact.StepConfirmed full = walk.fullConfirmation();
        walk.yes(new Fact.StepConfirmed(
                full.order(),
                full.step(),
                full.second(),
                full.reading(),
                full.label(),
                full.ticked(),
                Optional.of(PHOTO_HASH)));
        walk.stepsUntil(Order.Phase.WORK);
        walk.yes(new Fact.SignedOn(Walk.PERSON, Optional.of("red 12")));
        walk.yes(new Fact.SignedOn(Walk.SECOND, Optional.of("red 13")));
        walk.yes(new Fact.MeterStated(Optional.empty(), "0.7 %", List.of()));
        walk.yes(new Fact.ReadingsImported("readings.csv", example("corbel-reach-3.readings.csv")));
        walk.yes(new Fact.SparesImported("spares.csv", example("corbel-reach-3.spares.csv")));
        walk.yes(new Fact.UnitMoved("CR19-0110", Optional.of("stage 3/B/u2"), Optional.empty()));
        walk.yes(new Fact.UnitMoved("CR19-0131", Optional.empty(), Optional.of("stage 3/B/u2")));
        walk.yes(new Fact.SignedOff(Walk.SECOND));
        walk.yes(new Fact.SignedOff(Walk.PERSON));
        walk.stepsUntil(Order.Phase.IN_SERVICE);
        walk.yes(new Fact.Measured("bus", "12.4 kV"));
        walk.yes(new Fact.Measured("stage 1/A", "8.9 A"));
        walk.yes(new Fact.Measured("stage 9/A", "8.9 A"));
        walk.yes(new Fact.AsLeft("43-C", "auto"));
        walk.yes(new Fact.Noted("mouse nest under stage 2, taken out"));
        walk.yes(new Fact.VisitAgreed(new CalendarDate(2099, 5, 12), "gaskets of stage 2", List.of()));
        walk.yes(new Fact.Signed("person in charge", walk.job().log().hash()));
        walk.yes(new Fact.Closed("replaced one unit"));
        return walk;
    }

    private static JobReport report(Job job) {
        return JobReport.of(job, ZONE, sha256 -> sha256.equals(PHOTO_HASH) ? Optional.of(PHOTO) : Optional.empty());
    }

    private static String packed(String text) {
        return text.replaceAll("[\\s\\u00a0]+", "");
    }

    private static String text(JobReport report) throws IOException {
        try (PDDocument file = Loader.loadPDF(JobDocument.pdf(report, PaperSize.LETTER))) {
            return packed(new PDFTextStripper().getText(file));
        }
    }

    @Test
    void whoConfirmedWhatAndWhenStandsInIt() throws IOException {
        Job job = DONE.job();
        String text = text(REPORT);
        Times times = new Times(ZONE);
        int at = 0;
        for (Order.Confirmation done : job.orders().getLast().confirmed()) {
            OrderStep step =
                    job.orders().getLast().work().steps().get(done.fact().step() - 1);
            at = text.indexOf(packed(step.text()), at);
            assertTrue(at >= 0, "step " + step.n() + " is missing or out of order");
            int who = text.indexOf(packed(times.second(done.event()) + " " + Walk.PERSON), at);
            assertTrue(who > at, "who and when of step " + step.n());
        }
        for (String said : List.of(
                "CR-7 <b>",
                "find & replace",
                "STOPPED: lightning",
                "Resumed: looked at everything",
                "second: T. Okafor",
                "photo: stage 3 gap.jpg",
                "label: CR-BK3",
                "waited since",
                "red 12",
                "CR19-0131 the store stage 3/B/u2",
                "mouse nest under stage 2",
                "43-C auto",
                "closed: replaced one unit",
                "in America/Denver",
                "huge.jpg, ",
                "not at hand when this report was made",
                "stage 9/A",
                "Next visit",
                "Agreed: 2099-05-12, gaskets of stage 2 (said by R. Imhof).",
                "Local codes, the owner\u2019s rules",
                "person in charge R. Imhof")) {
            assertTrue(text.contains(packed(said)), said);
        }
        assertTrue(text.contains(job.log().hash()), "hash of the log");
        job.log()
                .events()
                .forEach(e -> assertTrue(
                        text.contains(packed(e.event().id() + " " + times.second(e.event()))),
                        e.event().id()));
        assertFalse(text.contains(packed("What must be cleared up") + "CAUTION"), "nothing speaks against the log");
    }

    @Test
    void readingsAreJudgedAndCurrentsHeldAgainstThePrediction() throws IOException {
        JobReport report = REPORT;
        String text = text(report);
        report.results()
                .survey()
                .orElseThrow()
                .units()
                .forEach(u -> assertTrue(
                        text.contains(packed(u.position().name())), u.position().name()));
        assertEquals(1, report.results().energize().orElseThrow().comparison().size());
        assertEquals(0.007, report.results().survey().orElseThrow().settings().meterLimit(), 1e-15);
        assertTrue(text.contains(packed("Judged with a meter of \u00b10.7 %")));
        assertTrue(text.contains(packed("every meter not stated by name: \u00b10.7 % (" + Walk.PERSON + ", 20")));
        assertEquals(1, report.remarks().size(), report.remarks().toString());
    }

    /** A meter of 3 % makes the bands of the first energization wider than the usual 1 % does. */
    @Test
    void theWorstMeterOfTheJobIsInTheBands() {
        assertEquals(
                0.01, REPORT.results().energize().orElseThrow().uncertainty().capacitance());
        Walk walk = begun();
        walk.yes(new Fact.ReadingsImported("readings.csv", "position,capacitance\nstage 3/A/u1,10.5 uF\n"));
        walk.yes(new Fact.Measured("bus", "12.4 kV"));
        walk.yes(new Fact.MeterStated(Optional.empty(), "3 %", List.of()));
        JobReport report = report(walk.job());
        assertEquals(
                0.03, report.results().energize().orElseThrow().uncertainty().capacitance(), 1e-15);
    }

    @Test
    void itIsArchivalAndAccessibleWithItsPhotograph() throws Exception {
        byte[] file = JobDocument.pdf(REPORT, PaperSize.A4);
        assertEquals(List.of(), Judge.broken(file, PDFAFlavour.PDFA_2_A));
        assertEquals(List.of(), Judge.broken(file, PDFAFlavour.PDFUA_1));
        List<Integer> widths = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(file)) {
            for (var page : pdf.getPages()) {
                for (var name : page.getResources().getXObjectNames()) {
                    if (page.getResources().getXObject(name) instanceof PDImageXObject image) {
                        widths.add(image.getWidth());
                    }
                }
            }
        }
        assertEquals(List.of(600), widths);
    }

    @Test
    void theSameLogIsTheSameBytes() {
        JobReport again = report(Job.of(JobLog.read("again", DONE.job().log().text()), Walk.PLANNER));
        assertArrayEquals(JobDocument.pdf(REPORT, PaperSize.A4), JobDocument.pdf(again, PaperSize.A4));
        assertArrayEquals(JobWorkbook.write(REPORT), JobWorkbook.write(again));
    }

    @Test
    void whatSpeaksAgainstTheRecordStandsFirst() throws IOException {
        Walk walk = begun();
        walk.step();
        walk.yes(new Fact.Deviated(walk.order().id(), 2, "the handle does not move"));
        walk.yes(new Fact.Noted("nothing was forced"));
        String forged = walk.job().log().text().replace("does not move", "moves well");
        Job job = Job.of(JobLog.read("forged", forged), Walk.PLANNER);
        assertFalse(job.log().findings().isEmpty(), "the chain shows it");
        String text = text(report(job));
        assertTrue(text.contains(packed("CAUTION: the log itself is not whole")));
        assertTrue(text.contains(packed("OPEN, NO ORDER OF WORK TO GO BY")));
        assertTrue(text.contains(packed("DEVIATION at step 2: the handle moves well")));
        assertTrue(text.contains(packed("NOT confirmed")));
        assertTrue(text.contains(packed("The job is not closed.")));
        assertTrue(text.contains(packed("No bus voltage was given")));
    }

    @Test
    void whatIsRefusedAndWhatDisagreesIsShown() throws IOException {
        Walk a = begun();
        a.stepsUntil(Order.Phase.WORK);
        Walk b = new Walk("tablet-b", a.job().log(), 1_796_000_000_000L);
        a.yes(new Fact.SignedOn("Ida Quill", Optional.empty()));
        a.yes(new Fact.ReadingTaken("stage 3/A/u1", Map.of("capacitance", "10.1 uF")));
        b.yes(new Fact.ReadingTaken("stage 3/A/u1", Map.of("capacitance", "9.1 uF")));
        b.yes(new Fact.SignedOn("Ida Quill", Optional.empty()));
        Job job = Job.of(a.job().log().merge(b.job().log()), Walk.PLANNER);
        assertEquals(1, job.notCounted().size());
        String text = text(report(job));
        assertTrue(text.contains(packed("devices disagree, and nobody has said which holds")));
        assertTrue(text.contains(packed("readings of stage 3/A/u1, capacitance")));
        assertTrue(text.contains(packed("Kept, but not counted")));
        assertTrue(text.contains(packed("signed-on: NOT COUNTED")));
        assertTrue(text.contains("STILLON"));
        assertTrue(text.contains(packed("Still signed on: Ida Quill.")));
    }

    @Test
    void theWorkbookAndTheJsonSayTheSame() throws IOException {
        JobReport report = REPORT;
        try (XSSFWorkbook book = new XSSFWorkbook(new ByteArrayInputStream(JobWorkbook.write(report)))) {
            Sheet steps = book.getSheet("Steps");
            assertEquals(DONE.job().orders().getLast().work().steps().size(), steps.getPhysicalNumberOfRows() - 1);
            assertEquals(Walk.PERSON, steps.getRow(1).getCell(6).getStringCellValue());
            assertEquals(DONE.job().log().events().size(), book.getSheet("Log").getPhysicalNumberOfRows() - 1);
            assertEquals(
                    "CR19-0110", book.getSheet("Parts").getRow(1).getCell(0).getStringCellValue());
            assertEquals(4, book.getSheet("People").getPhysicalNumberOfRows() - 1);
        }
        Json.Obj json = (Json.Obj) Json.parse(JobReportJson.of(report).print());
        assertEquals(Json.of(DONE.job().log().hash()), ((Json.Obj) json.get("job")).get("hash"));
        assertEquals("2026-11-18", ((Json.Str) json.get("date")).value());
        assertTrue(((Json.Obj) json.get("survey")).members().containsKey("units"));
    }

    /** A bank with an empty place is not reckoned as if a nameplate stood there. */
    @Test
    void aPlaceLeftEmptyIsNotPredicted() {
        Walk walk = begun();
        walk.stepsUntil(Order.Phase.WORK);
        walk.yes(new Fact.UnitMoved("CR19-0110", Optional.of("stage 3/B/u2"), Optional.empty()));
        walk.yes(new Fact.Measured("bus", "12.4 kV"));
        JobReport report = report(walk.job());
        assertEquals(Optional.empty(), report.results().energize());
        assertTrue(report.remarks().getFirst().contains("stage 3/B/u2 is left without"), report.remarks()::toString);
    }

    @Test
    void aTableThatCanNotBeReadIsNamedAndTheRestStands() throws IOException {
        Walk walk = begun();
        walk.yes(new Fact.ReadingsImported("holiday.csv", "no,such\nthing,here\n"));
        walk.yes(new Fact.Measured("bus", "twelve"));
        JobReport report = report(walk.job());
        assertEquals(2, report.remarks().size(), report.remarks().toString());
        String text = text(report);
        assertTrue(text.contains(packed("Readings \u201choliday.csv\u201d are not used")));
        assertTrue(text.contains(packed("\u201ctwelve\u201d, is no voltage")));
    }
}
