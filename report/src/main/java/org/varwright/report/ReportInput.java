package org.varwright.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.discharge.Discharge;
import org.varwright.jobsheet.JobSheet;

/**
 * What a report is made from. What is absent was not part of the job, and the report says so.
 *
 * @param bank the bank
 * @param job who, why, where
 * @param date printed on every page: nothing here reads a clock
 * @param files what the job was read from
 * @param discharge waiting times
 */
public record ReportInput(
        Bank bank, JobSheet job, LocalDate date, List<InputFile> files, Optional<Discharge> discharge) {
    public ReportInput {
        files = List.copyOf(files);
    }

    /** A job of which nothing but the bank is known yet. */
    public static ReportInput of(Bank bank, JobSheet job, LocalDate date, List<InputFile> files) {
        return new ReportInput(bank, job, date, files, Optional.empty());
    }

    public ReportInput with(Discharge result) {
        return new ReportInput(bank, job, date, files, Optional.of(result));
    }
}
