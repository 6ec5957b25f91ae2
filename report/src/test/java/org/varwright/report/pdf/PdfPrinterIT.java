package org.varwright.report.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDFont;
import org.apache.pdfbox.text.PDFTextStripper;
import org.apache.pdfbox.text.TextPosition;
import org.junit.jupiter.api.Test;
import org.varwright.jobsheet.PaperSize;
import org.varwright.report.document.Samples;

/** What a reader gets back out of the printed file. */
class PdfPrinterIT {
    @Test
    void paperIsTheOneAskedFor() throws IOException {
        try (PDDocument a4 = printed(PaperSize.A4, 3);
                PDDocument letter = printed(PaperSize.LETTER, 3)) {
            for (PDPage page : a4.getPages()) {
                assertSize(210.0 / 25.4 * 72.0, 297.0 / 25.4 * 72.0, page.getMediaBox());
            }
            for (PDPage page : letter.getPages()) {
                assertSize(612.0, 792.0, page.getMediaBox());
            }
        }
    }

    @Test
    void markupInNamesComesOutAsText() throws IOException {
        try (PDDocument file = printed(PaperSize.A4, 1)) {
            String text = flat(new PDFTextStripper().getText(file));
            assertTrue(text.contains(flat("Name " + Samples.HOSTILE)), text);
            assertEquals(
                    "Order of work and report: Bank " + Samples.HOSTILE,
                    file.getDocumentInformation().getTitle());
        }
    }

    @Test
    void everyGlyphIsThereAndWhatHasNoneIsSpelledByItsCode() throws IOException {
        try (PDDocument file = printed(PaperSize.A4, 1)) {
            String text = flat(new PDFTextStripper().getText(file));
            assertTrue(text.contains(Samples.ALL_GLYPHS), text);
            assertTrue(text.contains("Elsewhere [U+4E2D] and [U+0007]"), text);
        }
    }

    @Test
    void everyStepIsPrintedOnceAndInOrder() throws IOException {
        try (PDDocument file = printed(PaperSize.LETTER, 40)) {
            String text = flat(new PDFTextStripper().getText(file));
            int at = 0;
            for (int i = 1; i <= 40; i++) {
                String step = "Open the disconnector 89-" + i + " and";
                int found = text.indexOf(step, at);
                assertTrue(found >= at, "step " + i + " is missing after place " + at);
                assertEquals(-1, text.indexOf(step, found + 1), "step " + i + " is printed twice");
                at = found;
            }
        }
    }

    @Test
    void everyFontIsEmbedded() throws IOException {
        try (PDDocument file = printed(PaperSize.A4, 3)) {
            int fonts = 0;
            for (PDPage page : file.getPages()) {
                for (COSName name : page.getResources().getFontNames()) {
                    PDFont font = page.getResources().getFont(name);
                    assertTrue(font.isEmbedded(), font.getName());
                    fonts++;
                }
            }
            assertTrue(fonts > 0);
        }
    }

    @Test
    void nothingIsPrintedOutsideTheMargins() throws IOException {
        for (PaperSize paper : PaperSize.values()) {
            try (PDDocument file = printed(paper, 40)) {
                for (Outside outside : outside(file, 12.0f * 72.0f / 25.4f)) {
                    assertEquals("", outside.toString());
                }
            }
        }
    }

    @Test
    void everyPageSaysWhichItIs() throws IOException {
        try (PDDocument file = printed(PaperSize.A4, 40)) {
            int pages = file.getNumberOfPages();
            assertTrue(pages > 4);
            for (int i = 1; i <= pages; i++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(i);
                stripper.setEndPage(i);
                String text = flat(stripper.getText(file));
                assertTrue(text.contains("Page " + i + " of " + pages), text);
                assertTrue(text.contains("2026-05-04"), text);
            }
        }
    }

    @Test
    void tableHeadsAreRepeatedOnEveryPage() throws IOException {
        try (PDDocument file = printed(PaperSize.A4, 40)) {
            String text = flat(new PDFTextStripper().getText(file));
            int heads = text.split("State after", -1).length - 1;
            assertTrue(heads >= 4, heads + " heads");
        }
    }

    @Test
    void theSameDocumentIsTheSameBytes() {
        assertArrayEquals(
                PdfPrinter.print(Samples.everything(9), PaperSize.A4),
                PdfPrinter.print(Samples.everything(9), PaperSize.A4));
    }

    @Test
    void theFileSaysItsLanguageAndHoldsNothingThatRuns() throws IOException {
        try (PDDocument file = printed(PaperSize.A4, 3)) {
            assertEquals("en", file.getDocumentCatalog().getLanguage());
            assertNotNull(file.getDocumentCatalog().getDocumentOutline());
            assertFalse(new String(
                            PdfPrinter.print(Samples.everything(3), PaperSize.A4),
                            java.nio.charset.StandardCharsets.ISO_8859_1)
                    .contains("/JavaScript"));
        }
    }

    private static PDDocument printed(PaperSize paper, int steps) throws IOException {
        return Loader.loadPDF(PdfPrinter.print(Samples.everything(steps), paper));
    }

    private static void assertSize(double width, double height, PDRectangle box) {
        assertEquals(width, box.getWidth(), 0.1);
        assertEquals(height, box.getHeight(), 0.1);
    }

    private static String flat(String text) {
        return text.replaceAll("\\s+", " ");
    }

    /** A letter beyond the margin. */
    private record Outside(int page, String letter, float x, float y) {}

    private static List<Outside> outside(PDDocument file, float margin) throws IOException {
        List<Outside> found = new ArrayList<>();
        PDFTextStripper stripper = new PDFTextStripper() {
            @Override
            protected void processTextPosition(TextPosition letter) {
                PDRectangle box = getCurrentPage().getMediaBox();
                boolean across = letter.getX() < margin || letter.getX() + letter.getWidth() > box.getWidth() - margin;
                boolean down = letter.getY() < 18 || letter.getY() > box.getHeight() - 18;
                if (across || down) {
                    found.add(new Outside(getCurrentPageNo(), letter.getUnicode(), letter.getX(), letter.getY()));
                }
            }
        };
        stripper.getText(file);
        return found;
    }
}
