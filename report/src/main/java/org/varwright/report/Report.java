package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.discharge.Resistance;
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
        List<Section> sections = new ArrayList<>();
        sections.add(CoverSection.of(input, paper));
        sections.add(CautionSection.of(bank));
        sections.add(BankSection.of(bank));
        sections.add(PeopleSection.of(input.job()));
        sections.add(DischargeSection.of(bank, input.discharge()));
        sections.add(CheckSection.checks(checks(input)));
        sections.add(ClosingSection.signatures());
        sections.add(ClosingSection.files(input));
        sections.add(CheckSection.bases(bases(input)));
        String running = bank.name()
                + bank.site().map(s -> " \u00b7 " + s).orElse("")
                + input.job().number().map(n -> " \u00b7 job " + n).orElse("");
        return new ReportDocument("Order of work and report", bank.name(), running, FOOT, input.date(), "en", sections);
    }

    private static List<Check> checks(ReportInput input) {
        List<Check> checks = new ArrayList<>();
        input.discharge().ifPresent(d -> checks.addAll(d.checks()));
        return checks;
    }

    private static List<Basis> bases(ReportInput input) {
        List<Basis> bases = new ArrayList<>();
        checks(input).forEach(c -> bases.add(c.basis()));
        input.discharge()
                .ifPresent(d -> d.stages().forEach(s -> {
                    bases.add(s.opening().basis());
                    if (s.resistance() instanceof Resistance.Known known) {
                        bases.add(known.basis());
                    }
                    bases.add(s.waitBasis());
                }));
        return bases;
    }
}
