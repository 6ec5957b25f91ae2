package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.basis.Check;
import org.varwright.jobsheet.PaperSize;
import org.varwright.report.document.ReportDocument;
import org.varwright.report.document.Section;
import org.varwright.report.pdf.PdfPrinter;

/** The report on a job out of its log, before it is set on pages. */
public final class JobDocument {
    private static final String FOOT = "A record of what was confirmed, never a permission to touch";

    private JobDocument() {}

    /** The report as a PDF/A file: the same bytes for the same log, zone, photos and paper. */
    public static byte[] pdf(JobReport report, PaperSize paper) {
        return PdfPrinter.print(of(report), paper);
    }

    /** Its sections. */
    public static ReportDocument of(JobReport report) {
        Bank bank = report.bank();
        ReportInput results = report.results();
        List<Check> checks = new ArrayList<>();
        results.survey().ifPresent(s -> checks.addAll(s.checks()));
        results.fit().ifPresent(f -> checks.addAll(f.checks()));
        results.energize().ifPresent(e -> checks.addAll(e.checks()));
        results.discharge().ifPresent(d -> checks.addAll(d.checks()));
        List<Section> sections = new ArrayList<>();
        sections.add(JobCoverSection.of(report));
        JobCoverSection.disagreements(report).ifPresent(sections::add);
        sections.add(CautionSection.of(bank));
        sections.add(BankSection.of(bank));
        JobCoverSection.drawing(report).ifPresent(sections::add);
        JobNotesSection.records(report).ifPresent(sections::add);
        sections.add(JobPeopleSection.of(report));
        sections.addAll(JobOrderSections.of(report));
        sections.add(SurveySections.verdicts(
                results.survey(),
                report.job()
                        .meterLimits()
                        .sentences(e -> e.by() + ", " + report.times().minute(e))));
        sections.add(SurveySections.unjudged(results.survey()));
        sections.add(FitSections.lifts(results.fit()));
        sections.add(JobPartsSection.of(report));
        sections.add(EnergizeSection.of(results.energize()));
        sections.add(JobPartsSection.asLeft(report));
        sections.add(JobNotesSection.notes(report));
        sections.add(JobNotesSection.attachments(report));
        PhotoSection.of(report).ifPresent(sections::add);
        sections.add(JobOpenSection.of(report, checks));
        sections.add(CheckSection.checks(checks));
        sections.add(JobLogSection.signatures(report));
        sections.add(JobLogSection.events(report));
        sections.add(ClosingSection.files(results));
        sections.add(CheckSection.bases(Results.bases(results, checks)));
        String running = bank.name()
                + bank.site().map(s -> " \u00b7 " + s).orElse("")
                + results.job().number().map(n -> " \u00b7 job " + n).orElse("");
        return new ReportDocument("Report on a job", bank.name(), running, FOOT, report.date(), "en", sections);
    }
}
