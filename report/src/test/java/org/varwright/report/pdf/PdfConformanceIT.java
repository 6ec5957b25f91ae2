package org.varwright.report.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.ByteArrayOutputStream;
import java.util.List;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.varwright.jobsheet.PaperSize;
import org.varwright.report.document.Samples;
import org.verapdf.pdfa.flavours.PDFAFlavour;

/** The printed file against ISO 19005-2 level A (PDF/A-2a) and ISO 14289-1 (PDF/UA-1), judged by veraPDF. */
class PdfConformanceIT {
    @Test
    void everyKindOfBlockIsPdfA2a() throws Exception {
        assertEquals(
                List.of(), Judge.broken(PdfPrinter.print(Samples.everything(25), PaperSize.A4), PDFAFlavour.PDFA_2_A));
    }

    @Test
    void everyKindOfBlockIsPdfUa1() throws Exception {
        assertEquals(
                List.of(),
                Judge.broken(PdfPrinter.print(Samples.everything(25), PaperSize.LETTER), PDFAFlavour.PDFUA_1));
    }

    @Test
    void theJudgeSeesAFileThatIsNotPdfA() throws Exception {
        try (PDDocument file = Loader.loadPDF(PdfPrinter.print(Samples.everything(1), PaperSize.A4))) {
            file.getDocumentCatalog().setMetadata(null);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            file.save(bytes);
            assertFalse(Judge.broken(bytes.toByteArray(), PDFAFlavour.PDFA_2_A).isEmpty());
        }
    }
}
