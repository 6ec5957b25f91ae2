package org.varwright.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.basis.BasisText;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitJson;
import org.varwright.fit.FitOptions;
import org.varwright.fit.FitResult;
import org.varwright.fit.FitText;
import org.varwright.picture.FitPhasors;
import org.varwright.sheet.TableFile;
import org.varwright.survey.Spares;
import org.varwright.survey.SparesFile;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code fit BANK READINGS}. */
@Command(
        name = "fit",
        description = {
            "What to take out, which spare goes where and what to move, with the fewest lifts and the least unbalance.",
            "Exit 1 where spares are missing or a limit is broken whatever is tried, 3 where units must be measured again first."
        })
final class FitCommand extends BankCommand {
    @Parameters(
            index = "1",
            arity = "0..1",
            paramLabel = "READINGS",
            description = "The readings that say which units must go. A job log has its own.")
    private @Nullable Path readings;

    @Option(
            names = "--spares",
            paramLabel = "SPARES",
            description = "The spares on the truck; those of the job log or bank file where it is not given.")
    private @Nullable Path spares;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private ReadingsOptions readingsOptions;

    @Option(
            names = "--keep",
            paramLabel = "POSITION",
            description = "What if this unit is not to be touched; repeat it for each.")
    private List<String> keep = new ArrayList<>();

    @Option(
            names = "--swap",
            paramLabel = "A=B",
            description = "What if these two (positions or serial numbers) change places.")
    private List<String> swap = new ArrayList<>();

    @Option(
            names = "--without",
            paramLabel = "SERIAL",
            description = "What if this spare can't be used; repeat it for each.")
    private List<String> without = new ArrayList<>();

    @Option(names = "--least-unbalance", description = "Least unbalance first, fewest lifts second.")
    private boolean leastUnbalance;

    @Option(
            names = "--extra-lifts",
            defaultValue = "2",
            paramLabel = "N",
            description = "Lifts beyond the replacements that are tried exhaustively (default ${DEFAULT-VALUE}).")
    private int extraLifts;

    @Mixin
    @SuppressWarnings("NullAway.Init") // picocli sets it
    private PictureOption picture;

    @Override
    Answer answer(BankArgument argument) {
        ReadingsOptions.Judged judged = readingsOptions.judge(argument, readings, err());
        Bank bank = judged.survey().bank();
        List<Spare> list = judged.spares();
        if (spares != null) {
            Spares read =
                    SparesFile.read(bank, TableFile.read(spares.toString(), InputFile.read(spares), Optional.empty()));
            RowProblems.print(err(), read.problems());
            list = read.spares();
        }
        List<FitOptions.Exchange> swaps = new ArrayList<>();
        NamedValues.of("--swap", swap).forEach((first, second) -> swaps.add(new FitOptions.Exchange(first, second)));
        FitOptions options = new FitOptions(
                keep,
                swaps,
                without,
                leastUnbalance ? FitOptions.Aim.LEAST_UNBALANCE : FitOptions.Aim.FEWEST_LIFTS,
                extraLifts);
        FitResult result = Fit.plan(FitInput.from(judged.survey(), list, options));
        picture.write(width -> FitPhasors.of(result).svg(width));
        String text = FitText.of(result)
                + judged.text()
                + (explain() ? BasisText.ofChecks(result.checks()) + BasisText.of(result.bases()) : "");
        return new Answer(text, FitJson.of(result), code(result));
    }

    /** A plan that hangs on readings to be taken again is undecided, whatever it comes to. */
    private static ExitCode code(FitResult result) {
        if (result.outcome() != FitResult.Outcome.COMPLETE) {
            return ExitCode.NO;
        }
        return result.provisional().isEmpty() ? ExitCode.DONE : ExitCode.UNDECIDED;
    }
}
