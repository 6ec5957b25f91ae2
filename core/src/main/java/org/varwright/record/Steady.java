package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.quantity.Complex;
import org.varwright.waveform.Changes;
import org.varwright.waveform.Components;
import org.varwright.waveform.Cycles;
import org.varwright.waveform.Signal;
import org.varwright.waveform.Window;

/**
 * A stretch of whole cycles in which nothing changes, with the means of phasors over it (REC-6).
 *
 * @param windows its cycles, one or more
 */
record Steady(List<Window> windows) {
    /** Cycles that a mean is taken of at most: more tell no more. */
    private static final int MOST = 12;

    Steady {
        windows = List.copyOf(windows);
    }

    double fromSeconds() {
        Window first = windows.getFirst();
        return first.middleSeconds() - 0.5 * first.stepSeconds() * (first.count() - 1);
    }

    double toSeconds() {
        Window last = windows.getLast();
        return last.middleSeconds() + 0.5 * last.stepSeconds() * (last.count() - 1);
    }

    double middleSeconds() {
        return 0.5 * (fromSeconds() + toSeconds());
    }

    double hertz() {
        return windows.get(windows.size() / 2).hertz();
    }

    /** The stretches of a record between the changes of some channels. */
    static List<Steady> of(Cycles cycles, List<Signal> signals) {
        List<double[]> busy = new ArrayList<>();
        for (Signal signal : signals) {
            for (Changes.Change change : Changes.of(signal, cycles)) {
                busy.add(new double[] {change.seconds(), change.settledSeconds()});
            }
        }
        List<Steady> steadies = new ArrayList<>();
        List<Window> now = new ArrayList<>();
        for (Window w : cut(cycles, busy)) {
            boolean joins = now.isEmpty() || joins(now.getLast(), w, busy);
            if (!joins) {
                steadies.add(new Steady(now));
                now = new ArrayList<>();
            }
            now.add(w);
        }
        if (!now.isEmpty()) {
            steadies.add(new Steady(now));
        }
        return List.copyOf(steadies);
    }

    /** Windows without a change in them; where a change falls into one, a window right behind the change and one right before it. */
    private static List<Window> cut(Cycles cycles, List<double[]> busy) {
        List<Window> windows = new ArrayList<>();
        for (Window w : cycles.windows()) {
            if (isFree(w, busy)) {
                windows.add(w);
            }
        }
        for (double[] b : busy) {
            double half = 0.5 / cycles.hertzAt(b[1]);
            cycles.around(b[1] + half * 1.02).filter(w -> isFree(w, busy)).ifPresent(windows::add);
            cycles.around(b[0] - half * 1.02).filter(w -> isFree(w, busy)).ifPresent(windows::add);
        }
        windows.sort((x, y) -> Double.compare(x.middleSeconds(), y.middleSeconds()));
        return windows;
    }

    private static boolean isFree(Window w, List<double[]> busy) {
        double half = 0.5 * w.stepSeconds() * (w.count() - 1);
        double slack = 0.01 / w.hertz();
        return busy.stream()
                .noneMatch(b -> b[0] < w.middleSeconds() + half - slack && b[1] > w.middleSeconds() - half + slack);
    }

    private static boolean joins(Window before, Window after, List<double[]> busy) {
        return before.stepSeconds() == after.stepSeconds()
                && busy.stream().noneMatch(b -> b[0] < after.middleSeconds() && b[1] > before.middleSeconds())
                && after.middleSeconds() - before.middleSeconds() < 3.0 / before.hertz();
    }

    /** Some of the cycles, evenly spread. */
    private List<Window> some() {
        if (windows.size() <= MOST) {
            return windows;
        }
        List<Window> some = new ArrayList<>();
        for (int i = 0; i < MOST; i++) {
            some.add(windows.get(i * (windows.size() - 1) / (MOST - 1)));
        }
        return some;
    }

    /** The mean phasor of a channel, counted from another channel's; empty where samples are missing or the other is dead. */
    Optional<Complex> phasor(Signal signal, Signal reference) {
        Complex sum = Complex.ZERO;
        int n = 0;
        for (Window w : some()) {
            Optional<Complex> x = w.phasor(signal);
            Optional<Complex> r = w.phasor(reference);
            if (x.isPresent() && r.isPresent() && r.get().magnitude() > 0.0) {
                sum = sum.plus(
                        x.get().times(r.get().conjugate()).times(1.0 / r.get().magnitude()));
                n++;
            }
        }
        return n == 0 ? Optional.empty() : Optional.of(sum.times(1.0 / n));
    }

    /** Mean rms of the fundamental; NaN where samples are missing. */
    double magnitude(Signal signal) {
        return some().stream()
                .map(w -> w.phasor(signal))
                .flatMap(Optional::stream)
                .mapToDouble(Complex::magnitude)
                .average()
                .orElse(Double.NaN);
    }

    /** Mean over whole cycles; NaN where samples are missing. */
    double mean(Signal signal) {
        return some().stream()
                .map(w -> w.components(signal))
                .flatMap(Optional::stream)
                .mapToDouble(Components::dc)
                .average()
                .orElse(Double.NaN);
    }
}
