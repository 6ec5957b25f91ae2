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
    private static final String XMP = """
            <?xpacket begin="\ufeff" id="W5M0MpCehiHzreSzNTczkc9d"?>
            <x:xmpmeta xmlns:x="adobe:ns:meta/">
              <rdf:RDF xmlns:rdf="http://www.w3.org/1999/02/22-rdf-syntax-ns#">
                <rdf:Description rdf:about=""
                    xmlns:dc="http://purl.org/dc/elements/1.1/"
                    xmlns:xmp="http://ns.adobe.com/xap/1.0/"
                    xmlns:pdf="http://ns.adobe.com/pdf/1.3/"
                    xmlns:pdfaid="http://www.aiim.org/pdfa/ns/id/"
                    xmlns:pdfuaid="http://www.aiim.org/pdfua/ns/id/"
                    xmlns:pdfaExtension="http://www.aiim.org/pdfa/ns/extension/"
                    xmlns:pdfaSchema="http://www.aiim.org/pdfa/ns/schema#"
                    xmlns:pdfaProperty="http://www.aiim.org/pdfa/ns/property#">
                  <pdfaid:part>2</pdfaid:part>
                  <pdfaid:conformance>A</pdfaid:conformance>
                  <pdfuaid:part>1</pdfuaid:part>
                  <dc:format>application/pdf</dc:format>
                  <dc:language><rdf:Bag><rdf:li>%1$s</rdf:li></rdf:Bag></dc:language>
                  <dc:title><rdf:Alt><rdf:li xml:lang="x-default">%2$s</rdf:li></rdf:Alt></dc:title>
                  <dc:description><rdf:Alt><rdf:li xml:lang="x-default">%3$s</rdf:li></rdf:Alt></dc:description>
                  <xmp:CreatorTool>Varwright</xmp:CreatorTool>
                  <xmp:CreateDate>%4$sT00:00:00Z</xmp:CreateDate>
                  <xmp:ModifyDate>%4$sT00:00:00Z</xmp:ModifyDate>
                  <pdf:Producer>Varwright</pdf:Producer>
                  <pdfaExtension:schemas>
                    <rdf:Bag>
                      <rdf:li rdf:parseType="Resource">
                        <pdfaSchema:schema>PDF/UA identification</pdfaSchema:schema>
                        <pdfaSchema:namespaceURI>http://www.aiim.org/pdfua/ns/id/</pdfaSchema:namespaceURI>
                        <pdfaSchema:prefix>pdfuaid</pdfaSchema:prefix>
                        <pdfaSchema:property>
                          <rdf:Seq>
                            <rdf:li rdf:parseType="Resource">
                              <pdfaProperty:name>part</pdfaProperty:name>
                              <pdfaProperty:valueType>Integer</pdfaProperty:valueType>
                              <pdfaProperty:category>internal</pdfaProperty:category>
                              <pdfaProperty:description>Part of the standard that the file follows</pdfaProperty:description>
                            </rdf:li>
                          </rdf:Seq>
                        </pdfaSchema:property>
                      </rdf:li>
                    </rdf:Bag>
                  </pdfaExtension:schemas>
                </rdf:Description>
              </rdf:RDF>
            </x:xmpmeta>
            <?xpacket end="w"?>
            """;

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
        String text = XMP.formatted(
                escaped(document.language()), escaped(title), escaped(document.subject()), document.date());
        return text.getBytes(StandardCharsets.UTF_8);
    }

    private static String escaped(String text) {
        return new Markup(Fonts.loaded()::printable).text(text).finish();
    }

    private static Calendar midnight(LocalDate date) {
        return GregorianCalendar.from(date.atStartOfDay(ZoneOffset.UTC));
    }
}
