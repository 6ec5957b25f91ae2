package org.varwright.report;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Standard;
import org.varwright.jobsheet.PaperSize;

/** A report read back from its PDF. */
class ReportIT {
    @Test
    void namesFromTheFileComeOutAsText() throws IOException {
        String text = text(Banks.input(Standard.IEEE), PaperSize.LETTER);
        assertTrue(text.contains("Bank " + Banks.HOSTILE_NAME), text);
        assertTrue(text.contains("Site " + Banks.HOSTILE_SITE), text);
        assertTrue(text.contains("Reason alarm & <i>visit</i>"), text);
        assertTrue(text.contains("Ida <Quill> (in charge); Bo \u00c1vila"), text);
        assertTrue(text.contains("neutral voltage alarm, stage 2, 8.1 V"), text);
    }

    @Test
    void whoDecidesStandsBeforeTheUsualCautions() throws IOException {
        String text = text(Banks.input(Standard.IEEE), PaperSize.LETTER);
        int decides = text.indexOf("Local codes, the owner\u2019s rules, the maker\u2019s instructions");
        int usual = text.indexOf("Treat every conductor as live");
        assertTrue(decides > 0 && usual > decides, text);
        assertTrue(text.contains("The neutral of this bank floats"), text);
    }

    @Test
    void wordsFollowTheStandard() throws IOException {
        String ieee = text(Banks.input(Standard.IEEE), PaperSize.LETTER);
        String iec = text(Banks.input(Standard.IEC), PaperSize.A4);
        assertTrue(ieee.contains("ungrounded wye") && ieee.contains("solidly grounded"), ieee);
        assertTrue(iec.contains("unearthed star") && iec.contains("solidly earthed"), iec);
        assertFalse(iec.contains("ground"), iec);
    }

    @Test
    void filesStandWithTheirDigest() throws IOException {
        // Source of the digest: sha256sum (GNU coreutils) of the bytes 01 02 03.
        String text = text(Banks.input(Standard.IEEE), PaperSize.A4).replace(" ", "");
        assertTrue(text.contains("039058c6f2c0cb492c533b0a4d14ef77cc0f78abccced5287d84a1a2011cfb81"), text);
    }

    @Test
    void aRecordOfTheEventHasItsSection() throws IOException {
        String text = text(DemoJobs.run("corbel-reach-3"), PaperSize.LETTER);
        assertTrue(text.contains("Disturbance record"), text);
        assertTrue(text.contains("a unit out (fuse operated) in stage 3/B"), text);
        assertTrue(text.contains("Not answered by the record"), text);
    }

    @Test
    void theSameInputIsTheSameBytes() {
        assertArrayEquals(
                Report.write(Banks.input(Standard.IEC), PaperSize.A4),
                Report.write(Banks.input(Standard.IEC), PaperSize.A4));
    }

    private static String text(ReportInput input, PaperSize paper) throws IOException {
        try (PDDocument file = Loader.loadPDF(Report.write(input, paper))) {
            return new PDFTextStripper().getText(file).replaceAll("\\s+", " ");
        }
    }
}
