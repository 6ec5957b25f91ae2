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
import org.varwright.quantity.Dimension;
import org.varwright.sheet.TableFile;
import org.varwright.survey.Readings;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;
import picocli.CommandLine.Option;

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
