package org.varwright.waveform;

import java.util.ArrayList;
import java.util.List;

/**
 * Times of samples, shared by the channels of a record, cut where the pace changes: no phasor is taken across a change of pace or a gap.
 *
 * <p>The array is not copied: nobody writes to it once it is here.
 */
public final class TimeBase {
    /** A step so many times longer or shorter than the one before is another pace; stamps cut to whole microseconds stay well inside. */
    private static final double OTHER_PACE = 1.5;

    private final double[] seconds;
    private final List<Piece> pieces;

    private TimeBase(double[] seconds) {
        this.seconds = seconds;
        pieces = List.copyOf(cut(seconds));
    }

    /**
     * The times.
     *
     * @param seconds rising; two equal times and a fall end a piece
     */
    public static TimeBase of(double[] seconds) {
        return new TimeBase(seconds);
    }

    private static List<Piece> cut(double[] t) {
        List<Piece> pieces = new ArrayList<>();
        int from = 0;
        while (from < t.length) {
            int to = from + 1;
            double step = 0.0;
            while (to < t.length) {
                double next = t[to] - t[to - 1];
                if (!(next > 0.0) || (step > 0.0 && (next > step * OTHER_PACE || next * OTHER_PACE < step))) {
                    break;
                }
                step = next;
                to++;
            }
            int count = to - from;
            pieces.add(new Piece(from, to, count > 1 ? (t[to - 1] - t[from]) / (count - 1) : 0.0));
            from = to;
        }
        return pieces;
    }

    public int size() {
        return seconds.length;
    }

    public double seconds(int index) {
        return seconds[index];
    }

    public double first() {
        return seconds.length == 0 ? 0.0 : seconds[0];
    }

    public double last() {
        return seconds.length == 0 ? 0.0 : seconds[seconds.length - 1];
    }

    /** Pieces in their order. */
    public List<Piece> pieces() {
        return pieces;
    }

    /** The piece that holds a sample. */
    public Piece pieceAt(int index) {
        int low = 0;
        int high = pieces.size() - 1;
        while (low < high) {
            int middle = (low + high) / 2;
            if (pieces.get(middle).to() <= index) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return pieces.get(low);
    }

    /** Index of the first sample at or after a time; the number of samples where there is none. */
    public int indexAt(double time) {
        int low = 0;
        int high = seconds.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (seconds[middle] < time) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
