package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.jobsheet.JobSheet;
import org.varwright.jobsheet.PaperSize;
import org.varwright.quantity.Dimension;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Facts.Fact;
import org.varwright.report.document.Section;

/** Which bank, why, who, when. */
final class CoverSection {
    private CoverSection() {}

    static Section of(ReportInput input, PaperSize paper) {
        Bank bank = input.bank();
        JobSheet job = input.job();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Bank", bank.name()));
        bank.label().ifPresent(label -> facts.add(new Fact("Label on the bank", label)));
        facts.add(new Fact("Site", bank.site().orElse("not given in the bank file")));
        facts.add(new Fact("System", system(bank.system(), bank)));
        facts.add(new Fact("Standard", standard(bank.standard())));
        job.number().ifPresent(number -> facts.add(new Fact("Job", number)));
        facts.add(new Fact("Alarm", job.alarm().orElse("none given in the job sheet")));
        facts.add(new Fact("Reason", job.reason().orElse("none given in the job sheet")));
        facts.add(new Fact(
                "Way in asked for", job.access().isEmpty() ? "none asked for" : String.join(", ", job.access())));
        facts.add(new Fact("People", people(job)));
        facts.add(new Fact("Date", input.date().toString()));
        facts.add(new Fact("Paper", paper.code()));
        bank.note().ifPresent(note -> facts.add(new Fact("Note on the bank", note)));
        return Section.of("Job", new Block.Facts(facts));
    }

    private static String people(JobSheet job) {
        if (job.people().isEmpty()) {
            return "none named in the job sheet; write them in under \u201cPeople locked on\u201d";
        }
        return String.join(
                "; ",
                job.people().stream()
                        .map(p -> p.name() + p.role().map(r -> " (" + r + ")").orElse(""))
                        .toList());
    }

    private static String standard(Standard standard) {
        return switch (standard) {
            case IEEE -> "IEEE limits and words";
            case IEC -> "IEC limits and words";
        };
    }

    private static String system(SupplySystem system, Bank bank) {
        StringBuilder text = new StringBuilder(Dimension.VOLTAGE.format(system.nominalVolts())).append(" line to line");
        system.maximumVolts()
                .ifPresent(v -> text.append(" (highest ")
                        .append(Dimension.VOLTAGE.format(v))
                        .append(")"));
        text.append(", ").append(Dimension.FREQUENCY.format(system.frequencyHertz()));
        system.shortCircuitVoltAmperes()
                .ifPresent(s -> text.append(", short circuit ").append(Dimension.APPARENT_POWER.format(s)));
        text.append(", neutral ")
                .append(
                        switch (system.grounding()) {
                            case SOLID -> "solidly " + bank.words().grounded();
                            case RESISTANCE -> bank.words().grounded() + " through a resistor";
                            case REACTANCE -> bank.words().grounded() + " through a reactor";
                            case ISOLATED -> "isolated";
                            case RESONANT -> "resonant " + bank.words().grounded();
                        });
        return text.toString();
    }
}
