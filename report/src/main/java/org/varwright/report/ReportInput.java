package org.varwright.report;

import java.time.LocalDate;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.jobsheet.JobSheet;

/**
 * What a report is made from. What is absent was not part of the job, and the report says so.
 *
 * @param bank the bank
 * @param job who, why, where
 * @param date printed on every page: nothing here reads a clock
 * @param files what the job was read from
 */
public record ReportInput(Bank bank, JobSheet job, LocalDate date, List<InputFile> files) {
    public ReportInput {
        files = List.copyOf(files);
    }
}
