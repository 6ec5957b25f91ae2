package org.varwright.report.document;

import java.time.LocalDate;
import java.util.List;

/**
 * A report, ready to be set on pages.
 *
 * @param title what the document is
 * @param subject what it is about: the bank
 * @param running what every page says at its top
 * @param foot what every page says at its bottom, beside the page number
 * @param date when it was made, given by the caller: nothing here reads a clock
 * @param language of the text, such as {@code en}
 * @param sections in reading order
 */
public record ReportDocument(
        String title,
        String subject,
        String running,
        String foot,
        LocalDate date,
        String language,
        List<Section> sections) {
    public ReportDocument {
        sections = List.copyOf(sections);
    }
}
