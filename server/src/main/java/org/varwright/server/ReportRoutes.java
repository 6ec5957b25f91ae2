package org.varwright.server;

import io.javalin.http.Context;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;
import org.varwright.job.Job;
import org.varwright.job.Sha256;
import org.varwright.jobsheet.PaperSize;
import org.varwright.problem.VarwrightException;
import org.varwright.report.JobDocument;
import org.varwright.report.JobReport;
import org.varwright.report.JobReportJson;
import org.varwright.sheet.JobWorkbook;

/** The report on a job. One is made at a time: each takes memory, and this machine is one person's. */
final class ReportRoutes {
    private static final int PATIENCE_SECONDS = 120;

    private final ToldJobs jobs;
    private final Attachments attachments;
    private final Semaphore one = new Semaphore(1, true);

    ReportRoutes(ToldJobs jobs, Attachments attachments) {
        this.jobs = jobs;
        this.attachments = attachments;
    }

    /** What is asked for. */
    private record Wanted(Job job, ZoneId zone, Optional<PaperSize> paper) {
        PaperSize paperFor(JobReport report) {
            return paper.orElseGet(
                    () -> report.results().job().paperFor(report.bank().standard()));
        }
    }

    /** Makes the bytes of one kind of report. */
    private interface Kind {
        byte[] write(Wanted wanted, JobReport report);
    }

    void pdf(Context context) {
        answer(context, "pdf", "application/pdf", (wanted, report) -> JobDocument.pdf(report, wanted.paperFor(report)));
    }

    void workbook(Context context) {
        answer(
                context,
                "xlsx",
                "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
                (wanted, report) -> JobWorkbook.write(report));
    }

    void json(Context context) {
        answer(
                context,
                "json",
                "application/json;charset=utf-8",
                (wanted, report) -> JobReportJson.of(report).print().getBytes(StandardCharsets.UTF_8));
    }

    private void answer(Context context, String ending, String mediaType, Kind kind) {
        String name = Bodies.name(context, "job");
        ZoneId zone = zone(context.queryParam("zone"));
        Optional<PaperSize> paper = paper(context.queryParam("paper"));
        if (Tags.isHeldAlready(
                context,
                Sha256.of(String.join(
                        " ",
                        jobs.hash(name),
                        ending,
                        zone.getId(),
                        paper.map(PaperSize::code).orElse(""))))) {
            return;
        }
        byte[] bytes = made(new Wanted(jobs.job(name), zone, paper), kind);
        context.header("Content-Disposition", "inline; filename=\"" + name + "." + ending + "\"");
        if (ending.equals("pdf")) {
            // A browser's own viewer of PDF is a plugin with styles of its own; nothing in the file can run.
            context.header(
                    "Content-Security-Policy",
                    "default-src 'none'; object-src 'self'; style-src 'unsafe-inline'; frame-ancestors 'none'");
        }
        context.contentType(mediaType).result(bytes);
    }

    private byte[] made(Wanted wanted, Kind kind) {
        try {
            if (!one.tryAcquire(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                throw Refusal.of(503, "other reports are being made; ask again in a minute");
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw Refusal.of(503, "the server is being stopped");
        }
        try {
            return kind.write(wanted, JobReport.of(wanted.job(), wanted.zone(), this::photo));
        } catch (VarwrightException e) {
            throw Refusal.unusable(e);
        } finally {
            one.release();
        }
    }

    private Optional<byte[]> photo(String sha256) {
        if (!Attachments.HASH.matcher(sha256).matches()) {
            return Optional.empty();
        }
        return attachments.find(sha256).map(ReportRoutes::bytes);
    }

    private static byte[] bytes(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static ZoneId zone(@Nullable String typed) {
        try {
            return typed == null ? ZoneId.systemDefault() : ZoneId.of(typed);
        } catch (DateTimeException e) {
            throw Refusal.of(400, "\"" + typed + "\" is no time zone; give one such as America/Denver");
        }
    }

    private static Optional<PaperSize> paper(@Nullable String typed) {
        if (typed == null) {
            return Optional.empty();
        }
        return Optional.of(Arrays.stream(PaperSize.values())
                .filter(size -> size.name().equals(typed.toUpperCase(Locale.ROOT)))
                .findFirst()
                .orElseThrow(() -> Refusal.of(400, "paper is a4 or letter, not \"" + typed + "\"")));
    }
}
