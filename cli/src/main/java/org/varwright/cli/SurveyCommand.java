package org.varwright.cli;

import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.varwright.basis.BasisText;
import org.varwright.picture.RankedDeviations;
import org.varwright.picture.SurveyMap;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveyJson;
import org.varwright.survey.SurveyText;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code survey BANK READINGS}. */
@Command(
        name = "survey",
        description = {
            "A verdict on every unit from its readings: healthy, watch, replace, measure again, with probability and reason.",
            "Of a job log: what was found before the first lift, by the limits of the meters that are stated in it.",
            "Exit 1 where a unit must be replaced or measured again, or a limit is broken."
        })
final class SurveyCommand extends BankCommand {
    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "READINGS",
            description = "The readings, CSV or XLSX; columns as in docs/readings.md. A job log has its own.")
    private @Nullable Path readings;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private ReadingsOptions options;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private PictureOption picture;

    @Option(
            names = "--ranked",
            paramLabel = "FILE.svg",
            description = "Draw the deviations ranked as well, into this file; -o draws every unit at its place.")
    private @Nullable Path ranked;

    @Override
    Answer answer(BankArgument argument) {
        ReadingsOptions.Judged judged = options.judge(argument, readings, err());
        Survey survey = judged.survey();
        picture.write(width -> SurveyMap.draw(survey, width));
        picture.write(ranked, width -> RankedDeviations.of(survey).svg(width));
        String text = SurveyText.of(survey) + judged.text() + (explain() ? BasisText.ofChecks(survey.checks()) : "");
        boolean good = survey.isGood();
        return new Answer(text, SurveyJson.of(survey), good ? ExitCode.DONE : ExitCode.NO);
    }
}
