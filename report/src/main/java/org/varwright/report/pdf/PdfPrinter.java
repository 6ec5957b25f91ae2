package org.varwright.report.pdf;

import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FSFontUseCase;
import com.openhtmltopdf.outputdevice.helper.BaseRendererBuilder.FontStyle;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceControlPriority;
import com.openhtmltopdf.outputdevice.helper.ExternalResourceType;
import com.openhtmltopdf.pdfboxout.PdfBoxRenderer;
import com.openhtmltopdf.pdfboxout.PdfRendererBuilder;
import com.openhtmltopdf.util.XRLog;
import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.EnumSet;
import java.util.List;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.font.FontMappers;
import org.varwright.jobsheet.PaperSize;
import org.varwright.report.document.ReportDocument;

/** Sets a report document on pages and prints it as PDF/A-2a with tags for PDF/UA. */
public final class PdfPrinter {
    // Held here, since a logger that nobody holds forgets its level. What these warn of (no Helvetica on this machine)
    // is so by design.
    private static final List<Logger> QUIET = List.of(
            Logger.getLogger("org.apache.pdfbox"),
            Logger.getLogger("org.apache.fontbox"),
            Logger.getLogger("com.openhtmltopdf"));

    static {
        XRLog.setLoggingEnabled(false);
        QUIET.forEach(logger -> logger.setLevel(Level.SEVERE));
        // Else the library searches every typeface on the machine, and a report could differ from one machine to the
        // next.
        FontMappers.set(Fonts.loaded());
    }

    /** How the address of a photograph begins that is written into the page. */
    static final String JPEG_IN_PAGE = "data:image/jpeg;base64,";

    private PdfPrinter() {}

    /**
     * The report as a PDF file: the same bytes for the same document and paper.
     *
     * @param document what to print
     * @param paper size of the pages
     */
    public static byte[] print(ReportDocument document, PaperSize paper) {
        Fonts fonts = Fonts.loaded();
        Figures figures = new Figures();
        String html = HtmlPages.of(document, paper, fonts, figures);
        PdfRendererBuilder builder = new PdfRendererBuilder();
        builder.usePdfAConformance(PdfRendererBuilder.PdfAConformance.PDFA_2_A);
        builder.usePdfUaAccessibility(true);
        builder.useColorProfile(ICC_Profile.getInstance(ColorSpace.CS_sRGB).getData());
        builder.withProducer("Varwright");
        EnumSet<FSFontUseCase> everywhere = EnumSet.allOf(FSFontUseCase.class);
        builder.useFont(fonts::regular, Fonts.FAMILY, 400, FontStyle.NORMAL, true, everywhere);
        builder.useFont(fonts::bold, Fonts.FAMILY, 700, FontStyle.NORMAL, true, everywhere);
        // A report is whole in itself: nothing is ever fetched, whatever a text in it looks like. Photographs are in
        // the page itself.
        builder.useExternalResourceAccessControl(
                PdfPrinter::isInPage, ExternalResourceControlPriority.RUN_BEFORE_RESOLVING_URI);
        builder.useExternalResourceAccessControl(
                PdfPrinter::isInPage, ExternalResourceControlPriority.RUN_AFTER_RESOLVING_URI);
        builder.useObjectDrawerFactory(figures);
        builder.withHtmlContent(html, "about:blank");
        try (PdfBoxRenderer renderer = builder.buildPdfRenderer();
                PDDocument pages = renderer.createPDFKeepOpen()) {
            Imprint.apply(pages, document);
            ByteArrayOutputStream file = new ByteArrayOutputStream();
            pages.save(file);
            return file.toByteArray();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean isInPage(String uri, ExternalResourceType type) {
        return uri.startsWith(JPEG_IN_PAGE);
    }
}
