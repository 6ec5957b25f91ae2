package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.DoubleUnaryOperator;
import org.varwright.waveform.Signal;
import org.varwright.waveform.TimeBase;
import org.varwright.waveform.Waves;

/** A record made from formulas. */
final class Synthetic {
    static final double HERTZ = 60.0;
    private final List<Channel> channels = new ArrayList<>();
    private final TimeBase base;

    Synthetic(double rate, double seconds) {
        base = Waves.of(rate, seconds, t -> 0.0).base();
    }

    Synthetic add(String name, String unit, Channel.Side side, DoubleUnaryOperator x) {
        double[] values = new double[base.size()];
        for (int i = 0; i < values.length; i++) {
            values[i] = x.applyAsDouble(base.seconds(i));
        }
        channels.add(new Channel(
                channels.size() + 1,
                name,
                "",
                "",
                unit,
                unit.endsWith("V")
                        ? Channel.Quantity.VOLTS
                        : unit.endsWith("A") ? Channel.Quantity.AMPERES : Channel.Quantity.OTHER,
                side,
                Signal.of(base, values)));
        return this;
    }

    Synthetic primary(String name, String unit, DoubleUnaryOperator x) {
        return add(name, unit, new Channel.Side.Primary(), x);
    }

    /** Three bus voltages of 12.47 kV. */
    Synthetic bus() {
        for (int p = 0; p < 3; p++) {
            double degrees = -120.0 * p;
            primary("V" + "ABC".charAt(p), "V", t -> Waves.wave(12470.0 / Math.sqrt(3.0), HERTZ, degrees, t));
        }
        return this;
    }

    /** Current of a capacitor at that bus. */
    static DoubleUnaryOperator leads(double rms, int phase) {
        return t -> Waves.wave(rms, HERTZ, 90.0 - 120.0 * phase, t);
    }

    RecordInput input() {
        return new RecordInput("", "", HERTZ, base, channels, List.of(), OptionalDouble.empty());
    }
}
