package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.varwright.comtrade.Analog;
import org.varwright.comtrade.Measure;
import org.varwright.comtrade.Ratio;
import org.varwright.comtrade.Recording;
import org.varwright.comtrade.Status;
import org.varwright.comtrade.TimeBasis;
import org.varwright.waveform.Signal;
import org.varwright.waveform.TimeBase;

/** Turns a recording into what is measured: channels in volts and amperes over one time base. */
final class Inputs {
    private static final int LONGEST = 64;

    private Inputs() {}

    static RecordInput of(Recording recording) {
        boolean hasTime = recording.timing().basis() != TimeBasis.NONE;
        TimeBase base = TimeBase.of(hasTime ? recording.seconds().toArray() : new double[0]);
        List<Channel> channels = new ArrayList<>();
        List<StatusTrack> statuses = new ArrayList<>();
        if (hasTime) {
            recording.analogs().forEach(a -> channels.add(channel(a, base)));
            recording.statuses().forEach(s -> statuses.add(track(s, base)));
        }
        return new RecordInput(
                recording.station(),
                recording.device(),
                recording.hertz(),
                base,
                channels,
                statuses,
                hasTime ? recording.triggerSeconds() : OptionalDouble.empty());
    }

    private static Channel channel(Analog analog, TimeBase base) {
        Channel.Quantity quantity = quantity(analog.measure());
        double factor = quantity == Channel.Quantity.OTHER ? 1.0 : analog.toSi();
        Signal signal = Signal.of(base, analog.skewSeconds(), analog.values().toArray());
        return new Channel(
                analog.number(),
                shown(analog.title()),
                shown(analog.phase()),
                shown(analog.component()),
                shown(analog.unit()),
                quantity,
                side(analog.ratio()),
                signal.times(factor));
    }

    /** Text of a record as it may stand in a sentence: no control characters, not without end. */
    private static String shown(String text) {
        StringBuilder shown = new StringBuilder();
        for (char c : text.strip().toCharArray()) {
            if (shown.length() == LONGEST) {
                return shown.append('…').toString();
            }
            shown.append(Character.isISOControl(c) ? '?' : c);
        }
        return shown.toString();
    }

    private static Channel.Quantity quantity(Measure measure) {
        return switch (measure) {
            case VOLTS -> Channel.Quantity.VOLTS;
            case AMPERES -> Channel.Quantity.AMPERES;
            case OTHER -> Channel.Quantity.OTHER;
        };
    }

    /** A ratio of 1 to 1 is one that nobody entered: the side is not known then. */
    private static Channel.Side side(Ratio ratio) {
        if (ratio.isOneToOne()) {
            return new Channel.Side.Unknown();
        }
        return switch (ratio.side()) {
            case PRIMARY -> new Channel.Side.Primary();
            case SECONDARY ->
                Double.isFinite(ratio.toPrimary())
                        ? new Channel.Side.Secondary(ratio.toPrimary())
                        : new Channel.Side.Unknown();
            case UNKNOWN -> new Channel.Side.Unknown();
        };
    }

    private static StatusTrack track(Status status, TimeBase base) {
        List<Double> changes = new ArrayList<>();
        boolean atBegin = status.bits().size() > 0 && status.bits().at(0);
        for (int i = 1; i < status.bits().size(); i++) {
            if (status.bits().at(i) != status.bits().at(i - 1)) {
                changes.add(base.seconds(i));
            }
        }
        return new StatusTrack(status.number(), shown(status.title()), atBegin, changes);
    }
}
