package org.varwright.comtrade;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.varwright.json.Json;
import org.varwright.problem.Problem;

/** {@link Recording} as JSON. */
public final class RecordingJson {
    private RecordingJson() {}

    /** Everything but the samples. */
    public static Json.Builder of(Recording recording) {
        Timing timing = recording.timing();
        Samples seconds = recording.seconds();
        return Json.object()
                .put("standard", recording.revision().standard())
                .put("revision", recording.revision().year())
                .put("format", recording.origin().format().name())
                .put("codePage", recording.origin().codePage())
                .put("station", recording.station())
                .put("device", recording.device())
                .put("lineHertz", recording.hertz() > 0.0 ? Json.of(recording.hertz()) : Json.none())
                .put("start", moment(timing.start()))
                .put("trigger", moment(timing.trigger()))
                .put("triggerSeconds", optional(timing.triggerSeconds()))
                .put("clock", timing.clock().map(RecordingJson::clock).orElse(Json.none()))
                .put(
                        "rates",
                        Json.of(timing.rates().stream()
                                .map(r -> Json.object()
                                        .put("hertz", r.hertz())
                                        .put("lastSample", (double) r.lastSample())
                                        .build())
                                .toList()))
                .put("timeBasis", code(timing.basis()))
                .put("samplesInFile", (double) recording.origin().samples())
                .put("samples", seconds.size())
                .put("fromSeconds", seconds.size() == 0 ? Json.none() : Json.of(seconds.at(0)))
                .put("toSeconds", seconds.size() == 0 ? Json.none() : Json.of(seconds.at(seconds.size() - 1)))
                .put(
                        "analog",
                        Json.of(recording.analogs().stream()
                                .map(RecordingJson::analog)
                                .toList()))
                .put(
                        "status",
                        Json.of(recording.statuses().stream()
                                .map(s -> status(s, seconds))
                                .toList()))
                .put("header", recording.header())
                .put("information", recording.information())
                .put(
                        "remarks",
                        Json.of(recording.remarks().stream()
                                .map(RecordingJson::remark)
                                .toList()));
    }

    /** The samples themselves: times, the values of every analog channel, the states of every status channel. */
    public static Json samples(Recording recording) {
        return Json.object()
                .put("seconds", numbers(recording.seconds()))
                .put(
                        "analog",
                        Json.of(recording.analogs().stream()
                                .map(a -> numbers(a.values()))
                                .toList()))
                .put(
                        "status",
                        Json.of(recording.statuses().stream()
                                .map(s -> states(s.bits()))
                                .toList()))
                .build();
    }

    private static Json analog(Analog analog) {
        Samples values = analog.values();
        Ratio ratio = analog.ratio();
        return Json.object()
                .put("number", analog.number())
                .put("name", analog.name())
                .put("phase", analog.phase())
                .put("component", analog.component())
                .put("unit", analog.unit())
                .put("side", code(ratio.side()))
                .put("primary", ratio.primary())
                .put("secondary", ratio.secondary())
                .put("toSi", analog.toSi())
                .put("toPrimarySi", analog.toPrimarySi())
                .put("skewSeconds", analog.skewSeconds())
                .put("multiplier", analog.scale().multiplier())
                .put("offset", analog.scale().offset())
                .put("samples", values.size())
                .put("missing", values.missing())
                .put("min", values.least())
                .put("max", values.largest())
                .put("rms", values.rms())
                .build();
    }

    private static Json status(Status status, Samples seconds) {
        Bits bits = status.bits();
        List<Json> changes = new ArrayList<>();
        for (int i = 1; i < bits.size() && changes.size() < RecordingText.MOST_CHANGES; i++) {
            if (bits.at(i) != bits.at(i - 1)) {
                changes.add(Json.object()
                        .put("seconds", seconds.at(i))
                        .put("to", bits.at(i) ? 1 : 0)
                        .build());
            }
        }
        return Json.object()
                .put("number", status.number())
                .put("name", status.name())
                .put("phase", status.phase())
                .put("component", status.component())
                .put(
                        "normal",
                        switch (status.normal()) {
                            case ZERO -> Json.of(0.0);
                            case ONE -> Json.of(1.0);
                            case UNKNOWN -> Json.none();
                        })
                .put("first", bits.size() > 0 && bits.at(0) ? 1 : 0)
                .put("ones", bits.ones())
                .put("changes", bits.changes())
                .put("firstChanges", Json.of(changes))
                .build();
    }

    private static Json moment(Moment moment) {
        return Json.object()
                .put("written", moment.written())
                .put("instant", moment.instant().map(i -> Json.of(i.print())).orElse(Json.none()))
                .build();
    }

    private static Json clock(Clock clock) {
        return Json.object()
                .put("timeCode", clock.timeCode())
                .put("localCode", clock.localCode())
                .put(
                        "offsetMinutes",
                        clock.offsetMinutes().isPresent()
                                ? Json.of(clock.offsetMinutes().getAsInt())
                                : Json.none())
                .put("quality", clock.quality())
                .put("qualityText", clock.qualityText())
                .put("leap", clock.leap())
                .put("leapText", clock.leapText())
                .build();
    }

    private static Json remark(Problem remark) {
        return Json.object()
                .put("code", remark.message().name())
                .put("file", remark.place().file())
                .put("line", remark.place().line())
                .put("column", remark.place().column())
                .put("message", remark.text())
                .build();
    }

    private static Json numbers(Samples samples) {
        List<Json> numbers = new ArrayList<>(samples.size());
        for (int i = 0; i < samples.size(); i++) {
            numbers.add(Json.of(samples.at(i)));
        }
        return Json.of(numbers);
    }

    /** A text of 0 and 1, one a sample. */
    private static Json states(Bits bits) {
        StringBuilder states = new StringBuilder(bits.size());
        for (int i = 0; i < bits.size(); i++) {
            states.append(bits.at(i) ? '1' : '0');
        }
        return Json.of(states.toString());
    }

    private static Json optional(OptionalDouble value) {
        return value.isPresent() ? Json.of(value.getAsDouble()) : Json.none();
    }

    private static String code(Ratio.Side side) {
        return switch (side) {
            case PRIMARY -> "primary";
            case SECONDARY -> "secondary";
            case UNKNOWN -> "unknown";
        };
    }

    private static String code(TimeBasis basis) {
        return switch (basis) {
            case RATES -> "rates";
            case RATES_WITH_GAPS -> "rates-with-gaps";
            case STAMPS -> "stamps";
            case NONE -> "none";
        };
    }
}
