package org.varwright.cli;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import org.varwright.basis.Basis;
import org.varwright.basis.BasisText;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.fuse.FuseOptions;
import org.varwright.fuse.FusePlot;
import org.varwright.fuse.Fuses;
import org.varwright.fuse.FusesJson;
import org.varwright.fuse.FusesText;
import org.varwright.fuse.LinkTable;
import org.varwright.plot.Chart;
import org.varwright.plot.Width;
import org.varwright.quantity.Dimension;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** {@code fuses BANK}. */
@Command(
        name = "fuses",
        description = {
            "Whether every fuse suits its place: rating, voltage, stored energy, a shorted unit, speed; which standard link would.",
            "Exit 1 where a check fails, 3 where nothing can be judged."
        })
final class FusesCommand extends BankCommand {
    @Option(names = "--stage", paramLabel = "STAGE", description = "Only the fuses of this stage.")
    private @Nullable String stage;

    @Option(
            names = "--link",
            paramLabel = "LINK",
            description =
                    "Judge this standard link in place of those fitted, such as 40T (units' where units have fuses).")
    private @Nullable String link;

    @Option(
            names = "--fuse-resistance",
            paramLabel = "OHMS",
            description = "Resistance of one unit's fuse and leads, such as 4mohm: for outrush into a shorted unit.")
    private @Nullable String ohms;

    @Option(
            names = "--fuse-inductance",
            paramLabel = "HENRIES",
            description = "Inductance of one unit's fuse and leads, such as 2uH: for the peak of that outrush.")
    private @Nullable String henries;

    @Option(
            names = "-o",
            paramLabel = "FILE.svg",
            description = "Draw time against current of one stage's fuses: of --stage, else of the first.")
    private @Nullable Path target;

    @Override
    Answer answer(BankArgument argument) {
        Fuses fuses = Fuses.of(argument.bank(err()), options());
        if (target != null) {
            draw(fuses, target);
        }
        String text = FusesText.of(fuses) + (explain() ? BasisText.ofChecks(fuses.checks()) + proposals(fuses) : "");
        return new Answer(text, FusesJson.of(fuses), code(fuses));
    }

    private FuseOptions options() {
        return new FuseOptions(
                Optional.ofNullable(stage),
                Optional.ofNullable(link).map(LinkTable::require),
                positive("--fuse-resistance", Dimension.RESISTANCE, ohms),
                positive("--fuse-inductance", Dimension.INDUCTANCE, henries));
    }

    private void draw(Fuses fuses, Path file) {
        Optional<Chart> chart = FusePlot.first(fuses);
        if (chart.isEmpty()) {
            err().println("varwright: no fuse here has a curve, so nothing was drawn; name a link with --link");
            return;
        }
        OutputFile.write(file, chart.get().svg(Width.PAGE).getBytes(StandardCharsets.UTF_8));
        err().println("varwright: drawn " + file + ", " + chart.get().title());
    }

    private static OptionalDouble positive(String option, Dimension dimension, @Nullable String typed) {
        if (typed == null) {
            return OptionalDouble.empty();
        }
        double value = Typed.quantity(option, dimension, typed);
        Typed.requirePositive(option, value, dimension);
        return OptionalDouble.of(value);
    }

    private static String proposals(Fuses fuses) {
        return "\n"
                + BasisText.of(fuses.studies().stream()
                        .flatMap(s -> s.proposals().stream())
                        .<Basis>map(p -> p.basis())
                        .toList());
    }

    private static ExitCode code(Fuses fuses) {
        if (fuses.checks().isEmpty() && !fuses.allInside()) {
            return ExitCode.UNDECIDED;
        }
        for (Check check : fuses.checks()) {
            if (check.verdict() == Verdict.FAIL) {
                return ExitCode.NO;
            }
        }
        return ExitCode.DONE;
    }
}
