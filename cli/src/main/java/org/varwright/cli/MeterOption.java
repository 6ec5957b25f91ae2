package org.varwright.cli;

import java.io.PrintWriter;
import java.nio.file.Path;
import org.varwright.bank.Bank;
import org.varwright.quantity.Dimension;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;
import picocli.CommandLine.Option;

/** The meter that readings were taken with; shared by the commands that judge them. */
final class MeterOption {
    @Option(
            names = "--meter",
            paramLabel = "PERCENT",
            defaultValue = "1 %",
            description = "Limits of error of the capacitance meter, part of the reading (default ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String meter;

    /** The survey of a readings file; rows that can't be used are named on {@code err}. */
    Survey survey(Bank bank, Path readings, PrintWriter err) {
        double limit = Typed.quantity("--meter", Dimension.FRACTION, meter);
        Survey survey = Survey.of(
                bank,
                ReadingsFile.read(bank, readings.toString(), InputFile.read(readings)),
                SurveySettings.of(bank.standard(), limit));
        RowProblems.print(err, survey.readings().problems());
        return survey;
    }
}
