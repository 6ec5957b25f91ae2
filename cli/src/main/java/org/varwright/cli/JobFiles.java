package org.varwright.cli;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;
import org.varwright.bankfile.BankFile;
import org.varwright.bankfile.JobSheetFile;
import org.varwright.bankfile.JobSheetReading;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.Recording;
import org.varwright.discharge.Discharge;
import org.varwright.energize.BusVolts;
import org.varwright.energize.Energize;
import org.varwright.energize.MeasuredValue;
import org.varwright.energize.Uncertainty;
import org.varwright.fit.AsFitted;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitOptions;
import org.varwright.fit.FitResult;
import org.varwright.interlock.Interlocking;
import org.varwright.isolation.Access;
import org.varwright.isolation.PlanRequest;
import org.varwright.jobsheet.JobSheet;
import org.varwright.record.RecordInput;
import org.varwright.record.RecordStudy;
import org.varwright.report.InputFile;
import org.varwright.report.ReadRecord;
import org.varwright.report.ReportInput;
import org.varwright.sheet.TableFile;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Spares;
import org.varwright.survey.SparesFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;

/** One job from its files: everything computed that they allow. */
final class JobFiles {
    private final Path folder;
    private final PrintWriter err;
    private final List<InputFile> files = new ArrayList<>();

    private JobFiles(Path folder, PrintWriter err) {
        this.folder = folder;
        this.err = err;
    }

    /**
     * Reads a job sheet and all that it names, and works everything out.
     *
     * @param sheet the job sheet; paths in it are relative to its folder
     * @param today date of the job where the sheet gives none
     * @param err where rows that can't be used are named
     * @throws org.varwright.problem.VarwrightException with every problem of a file that can't be used
     */
    static ReportInput run(Path sheet, LocalDate today, PrintWriter err) {
        byte[] content = org.varwright.cli.InputFile.read(sheet);
        JobFiles files = new JobFiles(sheet.resolveSibling(""), err);
        files.files.add(InputFile.of("job sheet", sheet.getFileName().toString(), content));
        JobSheetReading reading = JobSheetFile.read(sheet.toString(), content);
        return files.run(reading.requireJob(), Optional.of(reading), today);
    }

    /** The same for a job that is typed instead of written down; paths are as typed. */
    static ReportInput run(JobSheet job, LocalDate today, PrintWriter err) {
        return new JobFiles(Path.of(""), err).run(job, Optional.empty(), today);
    }

    private ReportInput run(JobSheet job, Optional<JobSheetReading> reading, LocalDate today) {
        Bank bank =
                BankFile.read(path(job.bank()), read("bank file", job.bank())).requireBank();
        reading.ifPresent(sheet -> sheet.requireFor(bank));
        ReportInput input = ReportInput.of(
                        bank, job, job.date().map(LocalDate::parse).orElse(today), files)
                .with(Discharge.of(bank, Optional.empty()));
        if (bank.isolation().isPresent()) {
            input = input.with(
                    Interlocking.examine(bank, InterlockCommand.USUAL_MEMORY_BYTES, InterlockCommand.progress(err)));
            if (!job.access().isEmpty()) {
                PlanRequest request = PlanRequest.to(job.access());
                input = input.with(Access.plan(
                        bank,
                        job.start().isEmpty()
                                ? request
                                : request.from(new PlanRequest.Start.Positions(job.start(), Set.of()))));
            }
        }
        if (job.record().isPresent()) {
            String name = job.record().get();
            read("disturbance record", name);
            Recording recording = new RecordOnDisk(folder.resolve(name)).read(ReadOptions.ALL);
            input = input.with(new ReadRecord(name, RecordStudy.of(RecordInput.of(recording), bank, List.of())));
        }
        Optional<Map<UnitPosition, Double>> fitted = Optional.of(Map.of());
        Uncertainty uncertainty = Uncertainty.USUAL;
        if (job.readings().isPresent()) {
            String name = job.readings().get();
            Survey survey = Survey.of(
                    bank,
                    ReadingsFile.read(bank, TableFile.read(name, read("readings", name), Optional.empty())),
                    SurveySettings.of(bank.standard(), ReadingsOptions.METER_LIMIT));
            RowProblems.print(err, survey.readings().problems());
            FitInput fitInput = FitInput.from(survey, spares(bank, job), FitOptions.USUAL);
            FitResult fit = Fit.plan(fitInput);
            input = input.with(survey).with(fit);
            fitted = AsFitted.of(fitInput, fit);
            uncertainty = uncertainty.withMeter(survey.largestMeterLimit());
        }
        if (job.busVolts().isPresent() && fitted.isPresent()) {
            List<MeasuredValue> measured = new ArrayList<>();
            job.measured()
                    .forEach((name, value) -> measured.add(new MeasuredValue(name, value.value(), value.dimension())));
            input = input.with(Energize.of(
                    bank, fitted.get(), BusVolts.balanced(job.busVolts().getAsDouble()), uncertainty, measured));
        } else if (job.busVolts().isPresent()) {
            err.println("varwright: no currents are predicted: a position is left without a good unit");
        }
        return input.withFiles(files);
    }

    private List<Spare> spares(Bank bank, JobSheet job) {
        if (job.spares().isEmpty()) {
            return bank.spares();
        }
        String name = job.spares().get();
        Spares spares = SparesFile.read(bank, TableFile.read(name, read("spares", name), Optional.empty()));
        RowProblems.print(err, spares.problems());
        return spares.spares();
    }

    private String path(String name) {
        return folder.resolve(name).toString();
    }

    private byte[] read(String what, String name) {
        byte[] content = org.varwright.cli.InputFile.read(folder.resolve(name));
        files.add(InputFile.of(what, name, content));
        return content;
    }

    /** Whether a file is a job log: its name says so, or its first line is an event. */
    static boolean isJobLog(Path file) {
        String name = file.toString();
        return name.endsWith(".jsonl")
                || (!name.endsWith(".yaml")
                        && new String(org.varwright.cli.InputFile.read(file), StandardCharsets.UTF_8)
                                .stripLeading()
                                .startsWith("{\"id\":"));
    }

    /** Whether a file is a job sheet: its name says so, or its first key does. */
    static boolean isJobSheet(Path file) {
        return file.toString().endsWith(".job.yaml")
                || new String(org.varwright.cli.InputFile.read(file), StandardCharsets.UTF_8)
                        .contains("format: varwright-job/");
    }
}
