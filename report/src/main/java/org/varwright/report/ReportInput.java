package org.varwright.report;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.discharge.Discharge;
import org.varwright.energize.Energize;
import org.varwright.fit.FitResult;
import org.varwright.interlock.Interlocking;
import org.varwright.isolation.Plan;
import org.varwright.jobsheet.JobSheet;
import org.varwright.survey.Survey;

/**
 * What a report is made from. What is absent was not part of the job, and the report says so.
 *
 * @param bank the bank
 * @param job who, why, where
 * @param date printed on every page: nothing here reads a clock
 * @param files what the job was read from
 * @param interlocking what the locks enforce
 * @param plan the order of work, or that there is none
 * @param survey verdicts on the units
 * @param fit what goes where
 * @param energize what to expect at first energization, and what was read
 * @param discharge waiting times
 * @param record what a disturbance record of the event said
 */
public record ReportInput(
        Bank bank,
        JobSheet job,
        LocalDate date,
        List<InputFile> files,
        Optional<Interlocking> interlocking,
        Optional<Plan> plan,
        Optional<Survey> survey,
        Optional<FitResult> fit,
        Optional<Energize> energize,
        Optional<Discharge> discharge,
        Optional<ReadRecord> record) {
    public ReportInput {
        files = List.copyOf(files);
    }

    /** A job of which nothing but the bank is known yet. */
    public static ReportInput of(Bank bank, JobSheet job, LocalDate date, List<InputFile> files) {
        return new ReportInput(
                bank,
                job,
                date,
                files,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** The same with these files named at the end. */
    public ReportInput withFiles(List<InputFile> read) {
        return new ReportInput(bank, job, date, read, interlocking, plan, survey, fit, energize, discharge, record);
    }

    public ReportInput with(Interlocking result) {
        return new ReportInput(
                bank, job, date, files, Optional.of(result), plan, survey, fit, energize, discharge, record);
    }

    public ReportInput with(Plan result) {
        return new ReportInput(
                bank, job, date, files, interlocking, Optional.of(result), survey, fit, energize, discharge, record);
    }

    public ReportInput with(Survey result) {
        return new ReportInput(
                bank, job, date, files, interlocking, plan, Optional.of(result), fit, energize, discharge, record);
    }

    public ReportInput with(FitResult result) {
        return new ReportInput(
                bank, job, date, files, interlocking, plan, survey, Optional.of(result), energize, discharge, record);
    }

    public ReportInput with(Energize result) {
        return new ReportInput(
                bank, job, date, files, interlocking, plan, survey, fit, Optional.of(result), discharge, record);
    }

    public ReportInput with(Discharge result) {
        return new ReportInput(
                bank, job, date, files, interlocking, plan, survey, fit, energize, Optional.of(result), record);
    }

    public ReportInput with(ReadRecord result) {
        return new ReportInput(
                bank, job, date, files, interlocking, plan, survey, fit, energize, discharge, Optional.of(result));
    }
}
