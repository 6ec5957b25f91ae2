package org.varwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.varwright.job.Job;
import org.varwright.job.Planner;
import org.varwright.jobsheet.JobSheet;
import org.varwright.jobsheet.PaperSize;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.report.JobDocument;
import org.varwright.report.JobReport;
import org.varwright.report.JobReportJson;
import org.varwright.report.Photos;
import org.varwright.report.Report;
import org.varwright.report.ReportInput;
import org.varwright.sheet.JobWorkbook;
import org.varwright.sheet.ReportWorkbook;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code report JOB -o FILE.pdf}. */
@Command(
        name = "report",
        mixinStandardHelpOptions = true,
        description = {
            "The whole job as PDF (or workbook, or JSON): bank, cautions, order of work, readings with verdicts, what to fit, expected currents.",
            "JOB is a job log (.job.jsonl): then the report is the record of who confirmed what and when. Or it is a job",
            "sheet (.job.yaml), or a bank file with the options below: then it is planned from what they say.",
            "Exit 1 where the order of work is refused, or where the log is not whole; 3 where the order is undecided; the",
            "report is written and says so."
        })
final class ReportCommand implements Callable<Integer> {
    @Parameters(index = "0", paramLabel = "JOB", description = "Job log, job sheet, or bank file.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path job;

    @Option(
            names = "-o",
            required = true,
            paramLabel = "FILE",
            description = "Where it goes: FILE.pdf, FILE.xlsx or FILE.json.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path target;

    @Option(
            names = "--paper",
            paramLabel = "SIZE",
            description = "A4 or Letter; Letter with IEEE and A4 with IEC where it is not given.")
    private @Nullable PaperSize paper;

    @Option(
            names = "--access",
            arity = "1..*",
            paramLabel = "COMPARTMENT",
            description = "Compartments that people must get into.")
    private List<String> access = new ArrayList<>();

    @Option(names = "--readings", paramLabel = "READINGS", description = "The readings taken.")
    private @Nullable String readings;

    @Option(names = "--spares", paramLabel = "SPARES", description = "The spares on the truck.")
    private @Nullable String spares;

    @Option(
            names = "--record",
            paramLabel = "RECORD",
            description = "A disturbance record of the event: .cff, or .cfg beside its .dat.")
    private @Nullable String record;

    @Option(
            names = "--bus",
            paramLabel = "VOLTS",
            description = "Bus voltage, line to line, for the expected currents.")
    private @Nullable String bus;

    @Option(
            names = "--attachments",
            paramLabel = "DIR",
            description = "With a job log: the folder of its attachments; photographs in it are shown.")
    private @Nullable Path attachments;

    @Spec
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    @Override
    public Integer call() {
        String name = target.toString().toLowerCase(java.util.Locale.ROOT);
        if (!name.endsWith(".pdf") && !name.endsWith(".json") && !name.endsWith(".xlsx")) {
            throw new VarwrightException(Message.REPORT_KIND, new Place(target.toString(), 0, 0, ""));
        }
        if (JobFiles.isJobLog(job)) {
            return ofLog(name).code();
        }
        if (attachments != null) {
            throw new ParameterException(spec.commandLine(), "--attachments goes with a job log (.job.jsonl)");
        }
        ReportInput input = JobFiles.isJobSheet(job)
                ? JobFiles.run(
                        job,
                        LocalDate.now(ZoneId.systemDefault()),
                        spec.commandLine().getErr())
                : JobFiles.run(
                        typed(),
                        LocalDate.now(ZoneId.systemDefault()),
                        spec.commandLine().getErr());
        PaperSize size = paper == null ? input.job().paperFor(input.bank().standard()) : paper;
        OutputFile.write(
                target,
                name.endsWith(".pdf")
                        ? Report.write(input, size)
                        : name.endsWith(".xlsx")
                                ? ReportWorkbook.write(input)
                                : (JobJson.of(input).print() + "\n").getBytes(StandardCharsets.UTF_8));
        spec.commandLine().getOut().println("report: " + target);
        return input.plan().map(IsolateCommand::code).orElse(ExitCode.DONE).code();
    }

    private ExitCode ofLog(String name) {
        if (!access.isEmpty() || readings != null || spares != null || bus != null) {
            throw new ParameterException(
                    spec.commandLine(),
                    "--access, --readings, --spares and --bus go with a bank file; a job log has its own");
        }
        Photos photos = attachments == null ? Photos.NONE : new AttachmentFolder(attachments);
        Job told = Job.of(new JobFile(job).log(), Planner.keeping());
        JobReport report = JobReport.of(told, ZoneId.systemDefault(), photos);
        PaperSize size =
                paper == null ? report.results().job().paperFor(report.bank().standard()) : paper;
        OutputFile.write(
                target,
                name.endsWith(".pdf")
                        ? JobDocument.pdf(report, size)
                        : name.endsWith(".xlsx")
                                ? JobWorkbook.write(report)
                                : (JobReportJson.of(report).print() + "\n").getBytes(StandardCharsets.UTF_8));
        report.remarks().forEach(r -> spec.commandLine().getErr().println("varwright: " + r));
        spec.commandLine().getOut().println("report: " + target);
        return told.log().findings().isEmpty() ? ExitCode.DONE : ExitCode.NO;
    }

    private JobSheet typed() {
        return new JobSheet(
                job.toString(),
                Optional.ofNullable(readings),
                Optional.ofNullable(spares),
                Optional.ofNullable(record),
                access,
                bus == null
                        ? OptionalDouble.empty()
                        : OptionalDouble.of(Typed.quantity("--bus", Dimension.VOLTAGE, bus)),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Map.of());
    }
}
