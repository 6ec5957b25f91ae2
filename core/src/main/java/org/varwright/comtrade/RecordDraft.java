package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Puts a recording together from samples at even steps, as a simulation gives them. */
public final class RecordDraft {
    private final String station;
    private final String device;
    private final double hertz;
    private final double samplesPerSecond;
    private final Instant start;
    private final List<Analog> analogs = new ArrayList<>();
    private final List<Status> statuses = new ArrayList<>();
    private double triggerSeconds;
    private String header = "";

    /**
     * An empty one.
     *
     * @param station where it was taken
     * @param device what took it
     * @param hertz frequency of the line
     * @param samplesPerSecond above 0
     * @param start when the first sample was taken
     */
    public RecordDraft(String station, String device, double hertz, double samplesPerSecond, Instant start) {
        this.station = station;
        this.device = device;
        this.hertz = hertz;
        this.samplesPerSecond = samplesPerSecond;
        this.start = start;
    }

    /** Another analog channel; its values are in {@code unit} at the side of {@code ratio}, NaN where missing. */
    public RecordDraft analog(String name, String phase, String unit, Ratio ratio, double... values) {
        analogs.add(new Analog(
                analogs.size() + 1, name, phase, "", unit, Scale.of(1.0, 0.0), ratio, 0.0, Samples.of(values)));
        return this;
    }

    /** Another status channel that is 0 in steady service. */
    public RecordDraft status(String name, String phase, boolean... states) {
        statuses.add(new Status(statuses.size() + 1, name, phase, "", Status.Normal.ZERO, Bits.of(states)));
        return this;
    }

    /** When the recorder was triggered, from the first sample [s]; at the first where this is not called. */
    public RecordDraft triggered(double seconds) {
        triggerSeconds = seconds;
        return this;
    }

    /** Text of the header file. */
    public RecordDraft header(String text) {
        header = text;
        return this;
    }

    /** The recording; all its channels must be of the same length. */
    public Recording build() {
        int samples = !analogs.isEmpty()
                ? analogs.getFirst().values().size()
                : statuses.isEmpty() ? 0 : statuses.getFirst().bits().size();
        double[] seconds = new double[samples];
        for (int i = 0; i < samples; i++) {
            seconds[i] = i / samplesPerSecond;
        }
        Instant trigger = start.plus(triggerSeconds);
        return new Recording(
                new Origin(Revision.C2013, "2013", DataFormat.FLOAT32, "UTF-8", samples),
                station,
                device,
                hertz,
                analogs,
                statuses,
                Samples.owning(seconds),
                new Timing(
                        new Moment(start.print(), Optional.of(start)),
                        new Moment(trigger.print(), Optional.of(trigger)),
                        OptionalDouble.of(triggerSeconds),
                        List.of(new Rate(samplesPerSecond, samples)),
                        TimeBasis.RATES,
                        Optional.empty()),
                header,
                "",
                List.of());
    }
}
