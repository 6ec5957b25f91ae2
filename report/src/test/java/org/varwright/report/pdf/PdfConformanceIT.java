package org.varwright.report.pdf;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.util.List;
import java.util.TreeSet;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.junit.jupiter.api.Test;
import org.varwright.jobsheet.PaperSize;
import org.varwright.report.document.Samples;
import org.verapdf.gf.foundry.VeraGreenfieldFoundryProvider;
import org.verapdf.pdfa.Foundries;
import org.verapdf.pdfa.PDFAParser;
import org.verapdf.pdfa.PDFAValidator;
import org.verapdf.pdfa.flavours.PDFAFlavour;
import org.verapdf.pdfa.results.TestAssertion;
import org.verapdf.pdfa.results.ValidationResult;

/** The printed file against ISO 19005-2 level A (PDF/A-2a) and ISO 14289-1 (PDF/UA-1), judged by veraPDF. */
class PdfConformanceIT {
    @Test
    void everyKindOfBlockIsPdfA2a() throws Exception {
        assertEquals(List.of(), broken(PdfPrinter.print(Samples.everything(25), PaperSize.A4), PDFAFlavour.PDFA_2_A));
    }

    @Test
    void everyKindOfBlockIsPdfUa1() throws Exception {
        assertEquals(
                List.of(), broken(PdfPrinter.print(Samples.everything(25), PaperSize.LETTER), PDFAFlavour.PDFUA_1));
    }

    @Test
    void theJudgeSeesAFileThatIsNotPdfA() throws Exception {
        try (PDDocument file = Loader.loadPDF(PdfPrinter.print(Samples.everything(1), PaperSize.A4))) {
            file.getDocumentCatalog().setMetadata(null);
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            file.save(bytes);
            assertFalse(broken(bytes.toByteArray(), PDFAFlavour.PDFA_2_A).isEmpty());
        }
    }

    private static List<String> broken(byte[] file, PDFAFlavour flavour) throws Exception {
        VeraGreenfieldFoundryProvider.initialise();
        try (PDFAParser parser = Foundries.defaultInstance().createParser(new ByteArrayInputStream(file), flavour);
                PDFAValidator validator = Foundries.defaultInstance().createValidator(flavour, false)) {
            ValidationResult result = validator.validate(parser);
            TreeSet<String> rules = new TreeSet<>();
            for (TestAssertion assertion : result.getTestAssertions()) {
                rules.add(assertion.getRuleId().getClause() + "-"
                        + assertion.getRuleId().getTestNumber() + " " + assertion.getMessage() + " at "
                        + assertion.getLocation().getContext());
            }
            if (!result.isCompliant()) {
                rules.add("not compliant");
            }
            return List.copyOf(rules);
        }
    }
}
