package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.basis.Check;
import org.varwright.jobsheet.PaperSize;
import org.varwright.report.document.ReportDocument;
import org.varwright.report.document.Section;
import org.varwright.report.pdf.PdfPrinter;

/** The report on one job: what an owner gets and what goes to site. */
public final class Report {
    private static final String FOOT = "Planning information, never a permission to touch";

    private Report() {}

    /**
     * The report as a PDF/A file: the same bytes for the same input.
     *
     * @param input what is known of the job
     * @param paper to print on
     */
    public static byte[] write(ReportInput input, PaperSize paper) {
        return PdfPrinter.print(document(input, paper), paper);
    }

    /** The report before it is set on pages. */
    public static ReportDocument document(ReportInput input, PaperSize paper) {
        Bank bank = input.bank();
        BankStudies studies = BankStudies.of(bank);
        List<Check> checks = Results.checks(input, studies);
        List<Section> sections = new ArrayList<>();
        sections.add(CoverSection.of(input, paper));
        sections.add(CautionSection.of(bank));
        sections.add(SummarySection.of(input, checks));
        sections.add(BankSection.of(bank));
        sections.add(DrawingSection.of(bank, input.job()));
        RecordSection.of(input.record()).ifPresent(sections::add);
        sections.add(InterlockSection.of(input.interlocking()));
        sections.add(OrderSections.in(bank, input.plan()));
        OrderSections.faults(input.plan()).ifPresent(sections::add);
        sections.add(PeopleSection.of(input.job()));
        sections.add(SurveySections.verdicts(input.survey()));
        sections.add(SurveySections.unjudged(input.survey()));
        sections.add(FitSections.lifts(input.fit()));
        sections.add(FitSections.spares(input.fit()));
        sections.add(CountSection.of(bank, input.plan()));
        sections.add(OrderSections.back(bank, input.plan()));
        sections.add(EnergizeSection.of(input.energize()));
        sections.add(DischargeSection.of(bank, input.discharge()));
        sections.add(DutySection.of(bank, studies.duty()));
        sections.add(SwitchingSection.of(studies.inrush()));
        sections.add(FuseSection.of(studies.fuses()));
        sections.add(UnbalanceSection.of(studies.unbalance()));
        sections.add(CheckSection.checks(checks));
        sections.add(OpenPointSection.of(input, checks));
        sections.add(ClosingSection.signatures());
        sections.add(ClosingSection.files(input));
        sections.add(CheckSection.bases(Results.bases(input, checks)));
        String running = bank.name()
                + bank.site().map(s -> " \u00b7 " + s).orElse("")
                + input.job().number().map(n -> " \u00b7 job " + n).orElse("");
        return new ReportDocument("Order of work and report", bank.name(), running, FOOT, input.date(), "en", sections);
    }
}
