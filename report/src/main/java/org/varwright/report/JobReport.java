package org.varwright.report;

import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.job.Job;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * A job out of its log, with all that follows from what was read and measured.
 *
 * @param job what the log tells
 * @param bank as the job describes it now
 * @param zone in which times are printed
 * @param results survey, fit, energization and the rest, as the reports of job sheets have them
 * @param remarks what could not be used and why, one sentence each
 * @param photos pictures of steps and attachments, where they are at hand
 */
public record JobReport(Job job, Bank bank, ZoneId zone, ReportInput results, List<String> remarks, Photos photos) {
    public JobReport {
        remarks = List.copyOf(remarks);
    }

    /**
     * Works everything out.
     *
     * @param zone in which times are printed
     * @param photos the attachments at hand
     * @throws VarwrightException {@code JOB_NOT_OPEN} where the log does not say which bank it is
     */
    public static JobReport of(Job job, ZoneId zone, Photos photos) {
        Bank bank = job.bank()
                .orElseThrow(() -> new VarwrightException(
                        Message.JOB_NOT_OPEN, new Place(job.log().job(), 0, 0, "")));
        return new JobResults(job, bank, zone).report(photos);
    }

    /** The times of its events, as they are printed. */
    public Times times() {
        return new Times(zone);
    }

    /** The day of the last event: nothing here reads a clock. */
    public LocalDate date() {
        return results.date();
    }
}
