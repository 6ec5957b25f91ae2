package org.varwright.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.varwright.bank.Bank;
import org.varwright.bank.UnitPosition;
import org.varwright.bankfile.BankFile;
import org.varwright.bankfile.JobSheetFile;
import org.varwright.comtrade.Bytes;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.Source;
import org.varwright.discharge.Discharge;
import org.varwright.energize.BusVolts;
import org.varwright.energize.Energize;
import org.varwright.energize.Uncertainty;
import org.varwright.fit.AsFitted;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitOptions;
import org.varwright.fit.FitResult;
import org.varwright.interlock.Interlocking;
import org.varwright.interlock.Verifier;
import org.varwright.isolation.Access;
import org.varwright.isolation.PlanRequest;
import org.varwright.jobsheet.JobSheet;
import org.varwright.record.RecordInput;
import org.varwright.record.RecordStudy;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.SparesFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;

/** The invented jobs under {@code examples/demo}, worked out from their job sheets. */
final class DemoJobs {
    static final List<String> NAMES = List.of("corbel-reach-3", "lantern-mesa-1", "hallin-moor-2");

    private static final Map<String, ReportInput> DONE = new ConcurrentHashMap<>();
    private static final Path FOLDER = folder();
    private static final double METER_LIMIT = 0.01;

    private DemoJobs() {}

    /** The job worked out, once for all tests. */
    static ReportInput run(String name) {
        return DONE.computeIfAbsent(name, DemoJobs::runAnew);
    }

    static ReportInput runAnew(String name) {
        List<InputFile> files = new ArrayList<>();
        byte[] sheet = read("job sheet", name + ".job.yaml", files);
        JobSheet written = JobSheetFile.read(name + ".job.yaml", sheet).requireJob();
        Bank bank = BankFile.read(written.bank(), read("bank file", written.bank(), files))
                .requireBank();
        JobSheet job = JobSheetFile.read(name + ".job.yaml", sheet).requireFor(bank);
        String readings = job.readings().orElseThrow();
        String spares = job.spares().orElseThrow();
        Survey survey = Survey.of(
                bank,
                ReadingsFile.read(bank, readings, read("readings", readings, files)),
                SurveySettings.of(bank.standard(), METER_LIMIT));
        FitInput fitInput = FitInput.from(
                survey,
                SparesFile.read(bank, spares, read("spares", spares, files)).spares(),
                FitOptions.USUAL);
        FitResult fit = Fit.plan(fitInput);
        ReportInput input = ReportInput.of(bank, job, LocalDate.parse(job.date().orElseThrow()), files)
                .with(Discharge.of(bank, Optional.empty()))
                .with(Interlocking.examine(bank, 1L << 30, Verifier.Progress.SILENT))
                .with(Access.plan(bank, PlanRequest.to(job.access())))
                .with(survey)
                .with(fit);
        if (job.record().isPresent()) {
            String record = job.record().get();
            Bytes bytes = Bytes.of(read("disturbance record", record, files));
            input = input.with(new ReadRecord(
                            record,
                            RecordStudy.of(
                                    RecordInput.of(
                                            RecordReader.readCombined(Source.of(record, bytes), ReadOptions.ALL)),
                                    bank,
                                    List.of())))
                    .withFiles(files);
        }
        Optional<Map<UnitPosition, Double>> fitted = AsFitted.of(fitInput, fit);
        return fitted.isEmpty()
                ? input
                : input.with(Energize.of(
                        bank,
                        fitted.get(),
                        BusVolts.balanced(job.busVolts().orElseThrow()),
                        Uncertainty.USUAL,
                        List.of()));
    }

    private static byte[] read(String what, String name, List<InputFile> files) {
        try {
            byte[] content = Files.readAllBytes(FOLDER.resolve(name));
            files.add(InputFile.of(what, name, content));
            return content;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Path folder() {
        Path here = Path.of("examples", "demo");
        return Files.isDirectory(here) ? here : Path.of("..", "examples", "demo");
    }
}
