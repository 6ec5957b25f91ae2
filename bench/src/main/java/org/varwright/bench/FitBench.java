package org.varwright.bench;

import java.util.List;
import java.util.Locale;
import org.varwright.fit.CpSatFit;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitResult;

/** Large fits beside CP-SAT on the same problem as an integer programme. */
final class FitBench {
    private static final int RUNS = 5;
    /** CP-SAT is stopped after this long; what it has then counts. */
    private static final double MOST_SECONDS = 300.0;

    private FitBench() {}

    static String text() {
        return String.join(
                "\n",
                """
                144 positions, 3 condemned, 8 spares, up to 2 extra lifts: the plan with least unbalance, proven best. CP-SAT (OR-Tools) is given the linearised
                problem, units to legs, capacitances in whole nanofarads: minimise |N|², N the sensor's phasor over ω and voltage. Of the grounded wye with all
                units of a leg in parallel that is the whole truth and both must come to the same value, or there would be no figures. Of groups in series it
                is the first order, where ours is best by the true value and may be a little above on the first order. CP-SAT: `wallTime` of its solver, model
                built before, one run each; ours: `Fit.plan` in a warm JVM on one core, network solution and texts of the result included.
                """,
                "| bank | our plans looked at | ours, least / median / most of " + RUNS
                        + " | CP-SAT, 1 worker | CP-SAT, 8 workers |"
                        + " times faster | N by our plan | N by CP-SAT's |",
                "| --- | --: | --- | --: | --: | --: | --: | --: |",
                row("grounded wye, 1 × 48 a leg", FitSubject.linear(), true),
                row("ungrounded wye, 4 × 12 a leg", FitSubject.inSeries(), false));
    }

    private static String row(String name, FitInput input, boolean isLinear) {
        FitResult ours = Fit.plan(input);
        if (!ours.provenBest()) {
            throw new IllegalStateException(name + ": ours is not proven best: " + ours.proof());
        }
        Times times = Times.of(() -> Fit.plan(input), 1.0, RUNS);
        CpSatFit programme = CpSatFit.of(input, FitSubject.STEP);
        CpSatFit.Answer one = programme.solve(FitSubject.EXTRA_LIFTS, MOST_SECONDS, 1);
        CpSatFit.Answer eight = programme.solve(FitSubject.EXTRA_LIFTS, MOST_SECONDS, 8);
        long squares = programme.squares(ours);
        for (CpSatFit.Answer answer : List.of(one, eight)) {
            boolean same = isLinear ? squares == answer.squares() : squares >= answer.squares();
            if (answer.isProven() && !same) {
                throw new IllegalStateException(
                        name + ": ours comes to " + squares + ", CP-SAT to " + answer.squares() + ", proven");
            }
        }
        return String.format(
                Locale.ROOT,
                "| %s | %s | %s | %s | %s | %.0f | %.4f nF | %.4f nF |",
                name,
                String.format(Locale.ROOT, "%,d", ours.plansExamined()).replace(',', ' '),
                times.wallText(),
                seconds(one),
                seconds(eight),
                Math.min(one.seconds(), eight.seconds()) / Times.median(times.wallSeconds()),
                programme.farads(squares) * 1e9,
                programme.farads(Math.min(one.squares(), eight.squares())) * 1e9);
    }

    private static String seconds(CpSatFit.Answer answer) {
        return Times.seconds(answer.seconds())
                + (answer.isProven() ? "" : ", not proven: bound " + Math.round(answer.bound()));
    }
}
