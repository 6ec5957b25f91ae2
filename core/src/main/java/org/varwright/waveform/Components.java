package org.varwright.waveform;

import java.util.List;
import org.varwright.quantity.Complex;

/**
 * What one window of a channel consists of. Phasors are rms and count from the window's own middle: {@code x(t) = dc + Σ √2·Re(X_k·e^{jkω(t−t_m)})}.
 *
 * @param dc mean
 * @param orders phasors of the orders 1, 2 …; the first is the fundamental
 * @param rms true rms of the samples, mean included
 * @param peak largest magnitude of a sample
 * @param restRms rms of what dc and orders leave unexplained
 */
public record Components(double dc, List<Complex> orders, double rms, double peak, double restRms) {
    public Components {
        orders = List.copyOf(orders);
    }

    public Complex fundamental() {
        return orders.getFirst();
    }

    /** The phasor of an order; zero where it was not looked for. */
    public Complex order(int order) {
        return order >= 1 && order <= orders.size() ? orders.get(order - 1) : Complex.ZERO;
    }

    /** Root of the sum of squares of the orders 2 and up over the fundamental; 0 where there is no fundamental. */
    public double distortion() {
        double squares = 0.0;
        for (int k = 1; k < orders.size(); k++) {
            squares += orders.get(k).magnitude() * orders.get(k).magnitude();
        }
        double first = fundamental().magnitude();
        return first > 0.0 ? Math.sqrt(squares) / first : 0.0;
    }
}
