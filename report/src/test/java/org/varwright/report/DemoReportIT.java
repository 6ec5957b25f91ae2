package org.varwright.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.varwright.basis.Verdict;
import org.varwright.energize.ExpectedCurrent;
import org.varwright.fit.FitResult;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Plan;
import org.varwright.jobsheet.PaperSize;
import org.varwright.network.Supply;
import org.varwright.quantity.Dimension;
import org.varwright.report.pdf.Judge;
import org.varwright.survey.UnitSurvey;
import org.varwright.survey.UnitVerdict;
import org.varwright.unbalance.Assumptions;
import org.varwright.unbalance.SettingStudy;
import org.varwright.unbalance.Unbalance;
import org.varwright.unbalance.UnbalanceText;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** Each demo job from its files to paper and read back. */
class DemoReportIT {
    static Stream<String> jobs() {
        return DemoJobs.NAMES.stream();
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void everythingAPersonActsOnStandsInIt(String name) throws IOException {
        ReportInput input = DemoJobs.run(name);
        String text = text(Report.write(input, PaperSize.A4));
        Plan.Planned planned =
                assertInstanceOf(Plan.Planned.class, input.plan().orElseThrow(), "the demo must have a way in");
        int at = 0;
        for (OrderStep step : planned.order().steps()) {
            int found = text.indexOf(packed(step.text()), at);
            assertTrue(found >= 0, "step " + step.n() + " is missing or out of order: " + step.text());
            at = found;
        }
        for (UnitSurvey unit : input.survey().orElseThrow().units()) {
            if (unit.verdict() != UnitVerdict.NOT_MEASURED) {
                assertTrue(
                        text.contains(packed(unit.position().name())),
                        unit.position().name());
            }
            if (unit.verdict() != UnitVerdict.HEALTHY && unit.verdict() != UnitVerdict.NOT_MEASURED) {
                assertTrue(text.contains(packed(unit.reason())), unit.reason());
            }
        }
        long open = input.survey().orElseThrow().units().stream()
                .filter(u -> u.verdict() == UnitVerdict.MEASURE_AGAIN || u.verdict() == UnitVerdict.NOT_MEASURED)
                .count();
        assertTrue(open > 0, "the demo has readings that can't be right");
        assertTrue(text.contains(packed("This holds only if the " + open + " unit")), "what the fit leans on");
        FitResult fit = input.fit().orElseThrow();
        fit.moves().forEach(m -> assertTrue(text.contains(packed(m.serial())), m.serial()));
        assertTrue(!fit.rejected().isEmpty(), "the demo has a spare that does not fit");
        fit.rejected()
                .forEach(r -> assertTrue(text.contains(packed(r.serial() + "doesnotfit" + r.reason())), r.reason()));
        for (ExpectedCurrent current : input.energize().orElseThrow().currents()) {
            String row = current.name()
                    + (current.line() ? "line" : "leg")
                    + Dimension.CURRENT.format(current.amperes().expected());
            assertTrue(text.contains(packed(row)), row);
        }
        input.files().forEach(f -> assertTrue(text.contains(f.sha256()), f.name()));
    }

    /** What a failure does and what the sensors should be set to, as the command unbalance has it (its numbers are tested with it). */
    @ParameterizedTest
    @MethodSource("jobs")
    void settingsStandBesideWhatAFailureShows(String name) throws IOException {
        ReportInput input = DemoJobs.run(name);
        String text = text(Report.write(input, PaperSize.LETTER));
        Unbalance unbalance = Unbalance.of(
                input.bank(),
                Map.of(),
                new Supply.Balanced(input.bank().system().nominalVolts()),
                Assumptions.USUAL);
        for (SettingStudy study : unbalance.settings()) {
            String row = study.name()
                    + input.bank().protection().stream()
                            .filter(p -> p.stage().equals(study.protection().stage()))
                            .map(p -> UnbalanceSection.inFile(p, p.alarm()))
                            .findFirst()
                            .orElseThrow()
                    + UnbalanceText.setting(study, study.alarm());
            assertTrue(text.contains(packed(row)), row);
            study.remarks().forEach(r -> assertTrue(text.contains(packed(r)), r));
        }
        unbalance.checks().stream()
                .filter(c -> c.verdict() != Verdict.PASS)
                .forEach(c -> assertTrue(text.contains(packed(c.subject())), c.subject()));
        assertFalse(unbalance.settings().isEmpty(), "each demo bank has a sensor");
    }

    @Test
    void anIecBankIsReportedInIecWords() throws IOException {
        try (PDDocument file = Loader.loadPDF(Report.write(DemoJobs.run("hallin-moor-2"), PaperSize.A4))) {
            String text = new PDFTextStripper()
                    .getText(file)
                    .replace("closed-to-ground", "")
                    .replace("grounded-charged", "")
                    .replace("ungrounded-entry", "");
            for (String word : List.of("ground", "wye", "stage")) {
                assertFalse(text.toLowerCase(Locale.ROOT).contains(word), word + " in an IEC report");
            }
        }
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void itIsArchivalAndAccessible(String name) throws Exception {
        byte[] file = Report.write(DemoJobs.run(name), PaperSize.LETTER);
        assertEquals(List.of(), Judge.broken(file, PDFAFlavour.PDFA_2_A));
        assertEquals(List.of(), Judge.broken(file, PDFAFlavour.PDFUA_1));
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void nothingIsOutsideTheMarginsAndNoPageIsEmpty(String name) throws IOException {
        ReportInput input = DemoJobs.run(name);
        for (PaperSize paper : PaperSize.values()) {
            try (PDDocument file = Loader.loadPDF(Report.write(input, paper))) {
                assertEquals(List.of(), outside(file));
                for (int page = 1; page <= file.getNumberOfPages(); page++) {
                    PDFTextStripper stripper = new PDFTextStripper();
                    stripper.setStartPage(page);
                    stripper.setEndPage(page);
                    int lines = stripper.getText(file).split("\n").length;
                    assertTrue(lines > 4, "page " + page + " of " + paper + " holds " + lines + " lines");
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("jobs")
    void theSameJobIsTheSameBytes(String name) {
        assertArrayEquals(
                Report.write(DemoJobs.run(name), PaperSize.LETTER),
                Report.write(DemoJobs.runAnew(name), PaperSize.LETTER));
    }

    private static String text(byte[] pdf) throws IOException {
        try (PDDocument file = Loader.loadPDF(pdf)) {
            StringBuilder all = new StringBuilder();
            for (int page = 1; page <= file.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                all.append(stripper.getText(file));
            }
            return packed(all.toString());
        }
    }

    private static String packed(String text) {
        return text.replaceAll("[\\s\\u00a0]+", "");
    }

    private static List<String> outside(PDDocument file) throws IOException {
        List<String> found = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition letter) {
                PDRectangle box = getCurrentPage().getMediaBox();
                double margin = 14.0 / 25.4 * 72.0;
                if (letter.getX() < margin
                        || letter.getX() + letter.getWidth() > box.getWidth() - margin
                        || letter.getY() < 18.0
                        || letter.getY() > box.getHeight() - 18.0) {
                    found.add("page " + getCurrentPageNo() + ": " + letter.getUnicode() + " at " + letter.getX() + ", "
                            + letter.getY());
                }
            }
        };
        stripper.getText(file);
        return found;
    }
}
