package org.varwright.waveform;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.varwright.quantity.Complex;

/**
 * A record cut into cycles, one after the other, with the frequency tracked.
 *
 * <p><b>Model.</b> In a window of two cycles the phasors of both halves are fitted at a first frequency; their phases should differ by {@code 2πfΔt}, and by
 * what they differ otherwise the frequency is off. Again with the new frequency until it stands (REC-2).
 *
 * <p><b>Not modelled.</b> A frequency that changes much within two cycles.
 *
 * <p><b>Accuracy.</b> Rounding for a steady wave with harmonics; 1 mHz with 0.1 % of noise. A window in which the waveform changes is not measured: it
 * carries the frequency of the last one that was.
 *
 * <p><b>Source.</b> First principles.
 */
public final class Cycles {
    private static final int TURNS = 8;

    /** Part by which the frequency of a supply may be off and still be believed. */
    private static final double FURTHEST = 0.15;

    /** A window whose fit leaves more than this part of its rms is no steady wave. */
    private static final double UNSTEADY = 0.05;

    /** Phasors of the two halves that differ more than this in size are not of one steady wave. */
    private static final double UNEQUAL = 0.05;

    private static final int FEWEST_SAMPLES = 4;

    private final TimeBase base;
    private final List<Window> windows;
    private final double nominalHertz;

    private Cycles(TimeBase base, List<Window> windows, double nominalHertz) {
        this.base = base;
        this.windows = List.copyOf(windows);
        this.nominalHertz = nominalHertz;
    }

    /**
     * The cycles of a record.
     *
     * @param base times of the samples
     * @param reference channel in which the frequency is tracked; empty: the nominal frequency everywhere
     * @param nominalHertz above 0
     */
    public static Cycles of(TimeBase base, Optional<Signal> reference, double nominalHertz) {
        List<Window> windows = new ArrayList<>();
        double hertz = nominalHertz;
        double loud = reference.map(r -> amplitude(r)).orElse(0.0);
        for (Piece piece : base.pieces()) {
            if (!(piece.stepSeconds() > 0.0)) {
                continue;
            }
            int at = piece.from();
            while (true) {
                double now = hertz;
                int from = at;
                Optional<Double> found = reference.flatMap(r -> frequency(r, piece, from, now, nominalHertz, loud));
                hertz = found.orElse(hertz);
                int count = (int) Math.rint(1.0 / (hertz * piece.stepSeconds()));
                if (count < FEWEST_SAMPLES || at + count > piece.to()) {
                    break;
                }
                double middle = 0.5 * (base.seconds(at) + base.seconds(at + count - 1));
                windows.add(new Window(at, count, middle, piece.stepSeconds(), hertz, found.isPresent()));
                at += count;
            }
        }
        return new Cycles(base, smooth(windows), nominalHertz);
    }

    /** The middle one of three neighbours: a single wrong estimate leaves no trace. */
    private static List<Window> smooth(List<Window> windows) {
        List<Window> out = new ArrayList<>();
        for (int i = 0; i < windows.size(); i++) {
            Window w = windows.get(i);
            double hertz = w.hertz();
            if (i > 0 && i + 1 < windows.size()) {
                double[] three = {
                    windows.get(i - 1).hertz(), hertz, windows.get(i + 1).hertz()
                };
                Arrays.sort(three);
                hertz = three[1];
            }
            out.add(new Window(w.from(), w.count(), w.middleSeconds(), w.stepSeconds(), hertz, w.isTracked()));
        }
        return out;
    }

    private static double amplitude(Signal signal) {
        return signal.largest(0, signal.size());
    }

    /** The frequency in two cycles from a sample on; empty where they hold no steady wave. */
    private static Optional<Double> frequency(
            Signal signal, Piece piece, int at, double start, double nominal, double loud) {
        double hertz = start;
        for (int turn = 0; turn < TURNS; turn++) {
            int count = (int) Math.rint(1.0 / (hertz * piece.stepSeconds()));
            // At the end of a piece the last two cycles are looked at.
            int from = Math.min(at, piece.to() - 2 * count);
            if (count < FEWEST_SAMPLES || from < piece.from()) {
                return Optional.empty();
            }
            Window first = window(signal.base(), piece, from, count, hertz);
            Window second = window(signal.base(), piece, from + count, count, hertz);
            Optional<Components> a = first.components(signal);
            Optional<Components> b = second.components(signal);
            if (a.isEmpty() || b.isEmpty() || !isSteady(a.get(), b.get(), loud)) {
                return Optional.empty();
            }
            double apart = second.middleSeconds() - first.middleSeconds();
            Complex turned = b.get().fundamental().dividedBy(a.get().fundamental());
            double off = wrapped(Math.atan2(turned.im(), turned.re()) - 2.0 * Math.PI * hertz * apart);
            double next = hertz + off / (2.0 * Math.PI * apart);
            if (Math.abs(next / nominal - 1.0) > FURTHEST) {
                return Optional.empty();
            }
            boolean stands = Math.abs(next - hertz) < 1e-10 * nominal;
            hertz = next;
            if (stands) {
                break;
            }
        }
        return Optional.of(hertz);
    }

    private static boolean isSteady(Components a, Components b, double loud) {
        double x = a.fundamental().magnitude();
        double y = b.fundamental().magnitude();
        return x > 0.1 * loud
                && Math.abs(x - y) < UNEQUAL * Math.max(x, y)
                && a.restRms() < UNSTEADY * a.rms()
                && b.restRms() < UNSTEADY * b.rms();
    }

    private static Window window(TimeBase base, Piece piece, int from, int count, double hertz) {
        double middle = 0.5 * (base.seconds(from) + base.seconds(from + count - 1));
        return new Window(from, count, middle, piece.stepSeconds(), hertz, true);
    }

    private static double wrapped(double radians) {
        double turns = radians / (2.0 * Math.PI);
        return (turns - Math.rint(turns)) * 2.0 * Math.PI;
    }

    public List<Window> windows() {
        return windows;
    }

    public TimeBase base() {
        return base;
    }

    /** The middle one of the frequencies that were measured; the nominal one where none was. */
    public double hertz() {
        double[] all = windows.stream()
                .filter(Window::isTracked)
                .mapToDouble(Window::hertz)
                .sorted()
                .toArray();
        return all.length == 0 ? nominalHertz : all[all.length / 2];
    }

    /** Whether the frequency was measured anywhere. */
    public boolean isTracked() {
        return windows.stream().anyMatch(Window::isTracked);
    }

    /** One cycle around a time, cut to the record; empty where the pace leaves no whole cycle there. */
    public Optional<Window> around(double time) {
        if (base.size() == 0) {
            return Optional.empty();
        }
        int index = Math.max(0, Math.min(base.size() - 1, base.indexAt(time)));
        Piece piece = base.pieceAt(index);
        if (!(piece.stepSeconds() > 0.0)) {
            return Optional.empty();
        }
        double hertz = hertzAt(time);
        int count = (int) Math.rint(1.0 / (hertz * piece.stepSeconds()));
        if (count < FEWEST_SAMPLES || count > piece.size()) {
            return Optional.empty();
        }
        int from = Math.max(piece.from(), Math.min(piece.to() - count, index - count / 2));
        return Optional.of(window(base, piece, from, count, hertz));
    }

    /** The frequency of the window that is nearest to a time. */
    public double hertzAt(double time) {
        double hertz = nominalHertz;
        double nearest = Double.POSITIVE_INFINITY;
        for (Window w : windows) {
            double away = Math.abs(w.middleSeconds() - time);
            if (away < nearest) {
                nearest = away;
                hertz = w.hertz();
            }
        }
        return hertz;
    }
}
