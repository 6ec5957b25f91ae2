package org.varwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.job.Job;
import org.varwright.job.JobReadings;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.sheet.TableFile;
import org.varwright.survey.Readings;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** How readings are read and judged; shared by the commands that take a file of them. */
final class ReadingsOptions {
    static final double METER_LIMIT = SurveySettings.USUAL_METER_LIMIT;

    @Option(
            names = "--meter",
            paramLabel = "[NAME=]PERCENT",
            description = {
                "Limits of error of the capacitance meter, part of the reading (1 %% where it is not given).",
                "NAME=PERCENT for one instrument of several; repeat it for each."
            })
    private List<String> meters = new ArrayList<>();

    @Option(
            names = "--sheet",
            paramLabel = "NAME",
            description = "Sheet of the workbook; the one that looks like readings where it is not given.")
    private @Nullable String sheet;

    @Option(
            names = "--earlier",
            paramLabel = "FILE",
            description = "Readings of an earlier visit, CSV or XLSX; repeat it for each, oldest first.")
    private List<Path> earlier = new ArrayList<>();

    @Spec(Spec.Target.MIXEE)
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private CommandSpec spec;

    /**
     * Readings judged, and the spares at hand.
     *
     * @param meters who stated how far the meters may be off, a line each; none where that was an option
     */
    record Judged(Survey survey, List<Spare> spares, List<String> meters) {
        /** Who stated the meters, as text to be printed; nothing where nobody needed to. */
        String text() {
            return meters.isEmpty()
                    ? ""
                    : "\nLIMITS OF ERROR OF THE METERS\n"
                            + String.join(
                                    "",
                                    meters.stream().map(m -> "  " + m + "\n").toList());
        }
    }

    /** The readings of a file by the options, or those of a job log by what it says; what can't be used is named on {@code err}. */
    Judged judge(BankArgument argument, @Nullable Path readings, PrintWriter err) {
        Optional<Job> job = argument.job();
        if (job.isPresent()) {
            return judge(job.get(), readings, err);
        }
        if (readings == null) {
            throw new ParameterException(spec.commandLine(), "Missing required parameter: 'READINGS'");
        }
        Bank bank = argument.bank(err);
        return new Judged(survey(bank, readings, err), bank.spares(), List.of());
    }

    private Judged judge(Job job, @Nullable Path readings, PrintWriter err) {
        if (readings != null || sheet != null || !meters.isEmpty() || !earlier.isEmpty()) {
            throw new ParameterException(
                    spec.commandLine(),
                    "READINGS, --meter, --sheet and --earlier go with a bank file; a job log has its own readings, and"
                            + " its meters are stated by \"job meter\"");
        }
        JobReadings read = JobReadings.of(job);
        read.remarks().forEach(r -> err.println("varwright: " + r));
        Survey survey = read.found()
                .orElseThrow(() -> new VarwrightException(
                        Message.JOB_NOTHING_READ, new Place(job.log().job(), 0, 0, "")));
        RowProblems.print(err, survey.readings().problems());
        return new Judged(survey, read.spares(), job.meterLimits().sentences());
    }

    /** The survey of a readings file; rows that can't be used are named on {@code err}. */
    Survey survey(Bank bank, Path readings, PrintWriter err) {
        SurveySettings settings = settings(bank);
        List<Readings> before = new ArrayList<>();
        for (Path file : earlier) {
            Readings visit =
                    ReadingsFile.read(bank, TableFile.read(file.toString(), InputFile.read(file), Optional.empty()));
            RowProblems.print(err, visit.problems());
            before.add(visit);
        }
        Readings now = ReadingsFile.read(
                bank, TableFile.read(readings.toString(), InputFile.read(readings), Optional.ofNullable(sheet)));
        Survey survey = Survey.of(bank, now, settings, before);
        RowProblems.print(err, survey.readings().problems());
        return survey;
    }

    private SurveySettings settings(Bank bank) {
        double limit = METER_LIMIT;
        Map<String, Double> limits = new LinkedHashMap<>();
        for (String meter : meters) {
            int at = meter.lastIndexOf('=');
            double value = Typed.quantity("--meter", Dimension.FRACTION, meter.substring(at + 1));
            if (at < 0) {
                limit = value;
            } else {
                limits.put(meter.substring(0, at).strip(), value);
            }
        }
        return SurveySettings.of(bank.standard(), limit, limits);
    }
}
