package org.varwright.record;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Complex;
import org.varwright.waveform.Components;
import org.varwright.waveform.SequenceComponents;
import org.varwright.waveform.Signal;
import org.varwright.waveform.Thinned;
import org.varwright.waveform.Window;

/** What a screen shows of a record: waveforms of a stretch of time, phasors at a cursor. */
public final class RecordView {
    private static final int MOST_POINTS = 20_000;

    /** Part of the rms below which a component is rounding. */
    private static final double ROUNDING = 1e-9;

    private RecordView() {}

    /**
     * Waveforms of some channels, no peak lost.
     *
     * @param channels names or numbers; empty for all
     * @param from first time [s]
     * @param to last time [s]
     * @param points of each channel at most, 4 to 20 000
     * @throws VarwrightException {@code CHANNEL_MAP_UNKNOWN}, {@code RECORD_WINDOW}
     */
    public static Json waveforms(RecordStudy study, List<String> channels, double from, double to, int points) {
        if (!(to > from) || points < 4 || points > MOST_POINTS) {
            throw new VarwrightException(
                    Message.RECORD_WINDOW,
                    Place.NOWHERE,
                    String.valueOf(from),
                    String.valueOf(to),
                    String.valueOf(points),
                    String.valueOf(MOST_POINTS));
        }
        List<Json> waves = new ArrayList<>();
        for (Channel channel : named(study, channels)) {
            Signal signal = shown(study, channel);
            Thinned thinned = Thinned.of(signal, from, to, points);
            List<Json> seconds = new ArrayList<>();
            List<Json> values = new ArrayList<>();
            for (int i = 0; i < thinned.seconds().length; i++) {
                seconds.add(Json.of(thinned.seconds()[i]));
                double value = thinned.values()[i];
                values.add(Double.isFinite(value) ? Json.of(value) : Json.none());
            }
            waves.add(Json.object()
                    .put("number", channel.number())
                    .put("name", channel.name())
                    .put("unit", unit(channel))
                    .put("primary", isPrimary(study, channel))
                    .put("seconds", Json.of(seconds))
                    .put("values", Json.of(values))
                    .build());
        }
        return Json.of(waves);
    }

    /**
     * Phasors and harmonics of every channel in the cycle around a time, angles against the voltage of phase A where it is known, else against the first
     * channel that is alive; symmetrical components of bus and stages with a bank.
     */
    public static Json at(RecordStudy study, double seconds) {
        Optional<Window> window = study.cycles().around(seconds);
        Json.Builder json = Json.object().put("seconds", seconds);
        if (window.isEmpty()) {
            return json.put("hertz", Json.none())
                    .put("channels", Json.of(List.of()))
                    .put("sequences", Json.of(List.of()))
                    .build();
        }
        Window w = window.get();
        Optional<Channel> reference = reference(study, w);
        Complex turn = reference
                .flatMap(r -> w.phasor(r.signal()))
                .map(p -> p.conjugate().times(1.0 / p.magnitude()))
                .orElse(Complex.ONE);
        List<Json> channels = new ArrayList<>();
        for (Channel channel : study.input().channels()) {
            w.components(shown(study, channel)).ifPresent(c -> channels.add(components(study, channel, c, turn)));
        }
        return json.put("hertz", w.hertz())
                .put("fromSeconds", w.middleSeconds() - 0.5 * w.stepSeconds() * (w.count() - 1))
                .put("toSeconds", w.middleSeconds() + 0.5 * w.stepSeconds() * (w.count() - 1))
                .put("reference", reference.map(r -> Json.of(r.name())).orElse(Json.none()))
                .put("channels", Json.of(channels))
                .put("sequences", Json.of(sequences(study, w, turn)))
                .build();
    }

    private static Json components(RecordStudy study, Channel channel, Components c, Complex turn) {
        List<Json> harmonics = new ArrayList<>();
        for (int k = 2; k <= c.orders().size(); k++) {
            harmonics.add(Json.object()
                    .put("order", k)
                    .put("rms", told(c.order(k).magnitude(), c.rms()))
                    .build());
        }
        return Json.object()
                .put("number", channel.number())
                .put("name", channel.name())
                .put("unit", unit(channel))
                .put("primary", isPrimary(study, channel))
                .put("rms", c.rms())
                .put("peak", c.peak())
                .put("dc", told(c.dc(), c.rms()))
                .put("fundamental", c.fundamental().magnitude())
                .put(
                        "degrees",
                        told(c.fundamental().magnitude(), c.rms()) == 0.0
                                ? 0.0
                                : c.fundamental().times(turn).degrees())
                .put("distortion", told(c.distortion(), 1.0))
                .put("harmonics", Json.of(harmonics))
                .build();
    }

    /** A value, or 0 where it is rounding beside the rms. */
    private static double told(double value, double rms) {
        return Math.abs(value) > ROUNDING * rms ? value : 0.0;
    }

    private static List<Json> sequences(RecordStudy study, Window w, Complex turn) {
        List<Json> sequences = new ArrayList<>();
        study.matching().ifPresent(m -> {
            add(
                    sequences,
                    "bus",
                    m,
                    w,
                    turn,
                    Role.PHASES.stream().<Role>map(Role.BusVolts::new).toList(),
                    "V");
            study.bank()
                    .ifPresent(bank -> bank.stages()
                            .forEach(s -> add(
                                    sequences,
                                    s.name(),
                                    m,
                                    w,
                                    turn,
                                    Role.PHASES.stream()
                                            .<Role>map(p -> new Role.StageAmperes(s.name(), p))
                                            .toList(),
                                    "A")));
        });
        return sequences;
    }

    private static void add(
            List<Json> sequences,
            String where,
            ChannelMatching matching,
            Window w,
            Complex turn,
            List<Role> roles,
            String unit) {
        List<Complex> phasors = new ArrayList<>();
        for (Role role : roles) {
            matching.assignments().stream()
                    .filter(a -> a.role().equals(role))
                    .findFirst()
                    .flatMap(a -> w.phasor(a.primary()))
                    .ifPresent(p -> phasors.add(p.times(turn)));
        }
        if (phasors.size() == 3) {
            SequenceComponents s = SequenceComponents.of(phasors.get(0), phasors.get(1), phasors.get(2));
            sequences.add(Json.object()
                    .put("where", where)
                    .put("unit", unit)
                    .put("zero", phasor(s.zero()))
                    .put("positive", phasor(s.positive()))
                    .put("negative", phasor(s.negative()))
                    .build());
        }
    }

    private static Json phasor(Complex p) {
        return Json.object()
                .put("magnitude", p.magnitude())
                .put("degrees", p.degrees())
                .build();
    }

    private static Optional<Channel> reference(RecordStudy study, Window w) {
        Optional<Channel> own = study.matching()
                .flatMap(m -> m.assignments().stream()
                        .filter(a -> a.role().equals(new Role.BusVolts("A")))
                        .findFirst())
                .map(ChannelMatching.Assignment::channel);
        return own.filter(c -> isAlive(c, w))
                .or(() -> study.input().channels().stream()
                        .filter(c -> c.quantity() != Channel.Quantity.OTHER && isAlive(c, w))
                        .findFirst());
    }

    private static boolean isAlive(Channel channel, Window w) {
        return w.phasor(channel.signal()).filter(p -> p.magnitude() > 0.0).isPresent();
    }

    /** Primary, polarity put right, where the channel has a place at the bank; else as the record has it. */
    private static Signal shown(RecordStudy study, Channel channel) {
        return study.matching()
                .flatMap(m -> m.assignments().stream()
                        .filter(a -> a.channel().number() == channel.number())
                        .findFirst())
                .map(ChannelMatching.Assignment::primary)
                .orElse(channel.signal());
    }

    private static boolean isPrimary(RecordStudy study, Channel channel) {
        return channel.side() instanceof Channel.Side.Primary
                || study.matching()
                        .filter(m -> m.assignments().stream()
                                .anyMatch(a -> a.channel().number() == channel.number()))
                        .isPresent();
    }

    private static String unit(Channel channel) {
        return channel.quantity() == Channel.Quantity.OTHER
                ? channel.unit()
                : channel.quantity().unit();
    }

    private static List<Channel> named(RecordStudy study, List<String> names) {
        List<Channel> all = study.input().channels();
        if (names.isEmpty()) {
            return all;
        }
        List<Channel> found = new ArrayList<>();
        for (String name : names) {
            found.add(all.stream()
                    .filter(c -> c.name().strip().equalsIgnoreCase(name.strip())
                            || String.valueOf(c.number()).equals(name.strip()))
                    .findFirst()
                    .orElseThrow(() -> new VarwrightException(
                            Message.CHANNEL_MAP_UNKNOWN,
                            Place.NOWHERE,
                            name,
                            String.join(
                                    ", ",
                                    all.stream()
                                            .map(c ->
                                                    c.number() + " " + c.name().strip())
                                            .toList()))));
        }
        return found;
    }
}
