package org.varwright.bench;

import java.util.Locale;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitResult;

/** A large fit. */
final class FitBench {
    private FitBench() {}

    static String text() {
        FitInput input = FitSubject.input();
        FitResult result = Fit.plan(input);
        Times times = Times.of(() -> Fit.plan(input), 0.0, 5);
        return String.format(
                Locale.ROOT,
                """
                144 positions, 3 condemned, 8 spares, up to 2 extra lifts: %,d plans looked at, outcome `%s`, %s.

                | | least / median / most of 5 runs |
                | --- | --- |
                | processor | %s |
                | clock | %s |""",
                result.plansExamined(),
                result.outcome().code(),
                result.provenBest() ? "proven best" : "not proven best",
                times.cpuText(),
                times.wallText());
    }
}
