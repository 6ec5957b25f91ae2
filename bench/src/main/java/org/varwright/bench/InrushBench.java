package org.varwright.bench;

import java.io.IOException;
import java.util.Locale;
import org.varwright.switching.InrushDuel;

/** One closing of one stage onto three, in time, by ours and by ngspice at several steps. */
final class InrushBench {
    /** Largest steps that ngspice may take [s], the finest last: it is what all others are held against. */
    private static final double[] STEPS = {2e-6, 5e-7, 5e-8};

    private static final double AGREE = 2e-3;
    private static final int NGSPICE_RUNS = 3;
    private static final int RUNS = 9;

    private InrushBench() {}

    static String text() throws IOException {
        InrushDuel duel = InrushDuel.ofFourStages();
        double ours = duel.ours();
        double finest = spice(duel, STEPS[STEPS.length - 1]);
        double apart = Math.abs(ours - finest) / finest;
        if (!(apart <= AGREE)) {
            throw new IllegalStateException("ngspice and ours differ by " + apart + " in the peak of the current");
        }
        Times product = Times.of(duel::ours, 2.0, RUNS);
        StringBuilder rows = new StringBuilder();
        rows.append(row("ours", ours, apart, product, 1.0));
        try (Scratch scratch = Scratch.create()) {
            Command command = new Command(scratch.folder());
            for (double step : STEPS) {
                command.write("closing.cir", duel.deck(step));
                Times times = command.times(NGSPICE_RUNS, 0, "ngspice", "-b", "closing.cir");
                double peak = spice(duel, step);
                rows.append(row(
                        String.format(Locale.ROOT, "ngspice, steps up to %.2g µs", step * 1e6),
                        peak,
                        Math.abs(peak - finest) / finest,
                        times,
                        times.cpu() / product.cpu()));
            }
        }
        return String.format(Locale.ROOT, """
                One wye stage closed onto three others, each behind a reactor, all poles at 90°, followed for one cycle; the largest current of any pole. Ours (state space,
                exact step) in a warm JVM on one core; ngspice as a whole process, its start and the settling of its sources before the closing included. "Off" is the distance
                to ngspice's finest run. The netlist's poles close within a microsecond and its inductances have a resistance beside them, which ngspice needs; ours close
                at once and have none, so that a part of our distance is that of the two circuits. The row of ngspice that is as far off as ours is the one to compare with.

                | | peak | off | processor, least / median / most | times as long |
                | --- | --: | --: | --- | --: |
                %s""", rows);
    }

    private static double spice(InrushDuel duel, double stepSeconds) throws IOException {
        try {
            return duel.spice(stepSeconds);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static String row(String who, double peak, double apart, Times times, double longer) {
        return String.format(
                Locale.ROOT, "| %s | %.1f A | %.1e | %s | %.0f |\n", who, peak, apart, times.cpuText(), longer);
    }
}
