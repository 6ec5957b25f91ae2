package org.varwright.report.pdf;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Calendar;
import java.util.GregorianCalendar;
import java.util.zip.CRC32;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDDocumentInformation;
import org.apache.pdfbox.pdmodel.common.PDMetadata;
import org.varwright.report.document.ReportDocument;

/** What a PDF file says about itself, from the document alone: the same file for the same report on any day. */
final class Imprint {
    private Imprint() {}

    static void apply(PDDocument pages, ReportDocument document) throws IOException {
        String title = document.title() + ": " + document.subject();
        Calendar made = midnight(document.date());
        PDDocumentInformation information = new PDDocumentInformation();
        information.setTitle(title);
        information.setSubject(document.subject());
        information.setCreator("Varwright");
        information.setProducer("Varwright");
        information.setCreationDate(made);
        information.setModificationDate(made);
        pages.setDocumentInformation(information);
        PDMetadata metadata = new PDMetadata(pages);
        metadata.importXMPMetadata(xmp(document, title));
        pages.getDocumentCatalog().setMetadata(metadata);
        // The file's two ids are a digest of this number and of the lines above.
        CRC32 digest = new CRC32();
        digest.update(document.toString().getBytes(StandardCharsets.UTF_8));
        pages.setDocumentId(digest.getValue());
    }

    private static byte[] xmp(ReportDocument document, String title) {
        // %1 language, %2 title, %3 subject, %4 date
        String text = Resources.text("imprint.xmp")
                .formatted(escaped(document.language()), escaped(title), escaped(document.subject()), document.date());
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String escaped(String text) {
        return new Markup(Fonts.loaded()::printable).text(text).finish();
    }

    private static Calendar midnight(LocalDate date) {
        return GregorianCalendar.from(date.atStartOfDay(ZoneOffset.UTC));
    }
}
