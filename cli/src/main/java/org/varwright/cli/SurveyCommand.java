package org.varwright.cli;

import java.nio.file.Path;
import org.varwright.bank.Bank;
import org.varwright.basis.BasisText;
import org.varwright.quantity.Dimension;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveyJson;
import org.varwright.survey.SurveySettings;
import org.varwright.survey.SurveyText;
import org.varwright.survey.UnitVerdict;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code survey BANK READINGS.csv}. */
@Command(
        name = "survey",
        description = {
            "A verdict on every unit from its readings: healthy, watch, replace, measure again, with probability and reason.",
            "Exit 1 where a unit must be replaced or measured again."
        })
final class SurveyCommand extends BankCommand {
    @Parameters(index = "1", paramLabel = "READINGS.csv", description = "The readings; columns as in docs/readings.md.")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private Path readings;

    @Option(
            names = "--meter",
            paramLabel = "PERCENT",
            defaultValue = "1 %",
            description = "Limits of error of the capacitance meter, part of the reading (default ${DEFAULT-VALUE}).")
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private String meter;

    @Override
    Answer answer(BankArgument argument) {
        Survey survey = survey(argument.bank(err()), readings, meter);
        String text = SurveyText.of(survey) + (explain() ? BasisText.ofChecks(survey.checks()) : "");
        boolean good = survey.with(UnitVerdict.REPLACE).isEmpty()
                && survey.with(UnitVerdict.MEASURE_AGAIN).isEmpty();
        return new Answer(text, SurveyJson.of(survey), good ? ExitCode.DONE : ExitCode.NO);
    }

    /** The survey of a readings file, judged with a meter of these limits of error. */
    static Survey survey(Bank bank, Path readings, String meter) {
        double limit = Typed.quantity("--meter", Dimension.FRACTION, meter);
        return Survey.of(
                bank,
                ReadingsFile.read(bank, readings.toString(), InputFile.read(readings)),
                SurveySettings.of(bank.standard(), limit));
    }
}
