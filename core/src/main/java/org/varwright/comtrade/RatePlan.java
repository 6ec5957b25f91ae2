package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.List;
import org.varwright.problem.Message;
import org.varwright.problem.Place;

/** Which sampling rate holds for which samples. */
final class RatePlan {
    private final double[] hertz;
    private final long[] ends;

    private RatePlan(double[] hertz, long[] ends) {
        this.hertz = hertz;
        this.ends = ends;
    }

    /**
     * The rates as they fit the number of samples: numbers of last samples, or counts where only those add up.
     *
     * @param samples in the data
     */
    static RatePlan of(List<Rate> rates, long samples, Place place, Remarks remarks) {
        List<Rate> used = new ArrayList<>();
        for (Rate rate : rates) {
            if (rate.hertz() > 0.0) {
                used.add(rate);
            }
        }
        double[] hertz = new double[used.size()];
        long[] ends = new long[used.size()];
        long before = 0L;
        long sum = 0L;
        boolean falls = false;
        for (int i = 0; i < ends.length; i++) {
            long last = used.get(i).lastSample();
            falls |= last <= before;
            before = last;
            sum += last;
            hertz[i] = used.get(i).hertz();
            ends[i] = last;
        }
        if (ends.length > 1 && sum == samples && before != samples) {
            remarks.add(Message.RECORD_RATE_COUNTS, place);
            for (int i = 1; i < ends.length; i++) {
                ends[i] += ends[i - 1];
            }
        } else if (falls && ends.length > 1) {
            remarks.add(Message.RECORD_RATE_ORDER, place);
        }
        return new RatePlan(hertz, ends);
    }

    boolean isEmpty() {
        return hertz.length == 0;
    }

    /** The rate at which a sample was taken, counted from 0; that of the last piece behind its end. */
    int piece(long sample, int from) {
        int piece = from;
        while (piece < ends.length - 1 && sample >= ends[piece]) {
            piece++;
        }
        return piece;
    }

    double hertz(int piece) {
        return hertz[piece];
    }
}
