package org.varwright.record;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.page.Enumeration;
import org.varwright.waveform.Changes;
import org.varwright.waveform.Conduction;
import org.varwright.waveform.Cycles;

/** What any record says, whatever it was taken at. */
final class GeneralFinder {
    /** Changes of several channels within this part of a cycle are one event. */
    private static final double TOGETHER = 0.3;

    private static final double OFF_NOMINAL = 0.01;

    /** A status that changes more often chatters, and is left to the waveforms. */
    private static final int MOST_CHANGES = 6;

    private GeneralFinder() {}

    static List<Finding> of(RecordInput input, Cycles cycles) {
        List<Finding> findings = new ArrayList<>(frequency(input, cycles, input.hertz()));
        findings.addAll(events(input, cycles));
        findings.addAll(currents(input, cycles));
        findings.addAll(statuses(input));
        findings.sort(Comparator.comparingDouble(Finding::seconds));
        return findings;
    }

    static List<Finding> frequency(RecordInput input, Cycles cycles, double nominal) {
        if (!cycles.isTracked()) {
            return List.of();
        }
        boolean off = nominal > 0.0 && Math.abs(cycles.hertz() / nominal - 1.0) > OFF_NOMINAL;
        return List.of(new Finding(
                "frequency",
                off ? Finding.Weight.LOOK : Finding.Weight.NOTE,
                input.base().first(),
                "record",
                "The frequency is " + org.varwright.quantity.Dimension.FREQUENCY.format(cycles.hertz(), 5)
                        + (off
                                ? ", not " + Say.hertz(nominal)
                                        + ": an island or a disturbance of the system, or a recorder with a wrong sampling rate."
                                : "."),
                List.of(),
                Say.basis(
                        "REC-2",
                        "f + δ/(2πΔt) between neighbouring cycles, the middle of all",
                        Source.FIRST_PRINCIPLES,
                        new Term("f", "frequency", cycles.hertz(), "Hz"))));
    }

    /** Status channels that change. */
    static List<Finding> statuses(RecordInput input) {
        List<Finding> findings = new ArrayList<>();
        for (StatusTrack track : input.statuses()) {
            if (track.changes().isEmpty() || track.changes().size() > MOST_CHANGES) {
                continue;
            }
            boolean state = track.atBegin();
            List<String> words = new ArrayList<>();
            for (double at : track.changes()) {
                state = !state;
                words.add((state ? "comes at " : "goes at ") + Say.at(at));
            }
            findings.add(new Finding(
                    "status",
                    Finding.Weight.NOTE,
                    track.changes().getFirst(),
                    track.name(),
                    "\"" + track.name() + "\" " + Enumeration.of(words) + ".",
                    List.of(),
                    Say.basis("REC-18", "a status channel as recorded", Source.FIRST_PRINCIPLES)));
        }
        return findings;
    }

    static List<Unanswered> unanswered(RecordInput input, Cycles cycles) {
        List<Unanswered> unanswered = new ArrayList<>();
        if (cycles.windows().isEmpty()) {
            unanswered.add(new Unanswered(
                    "a whole cycle with four samples or more", "no phasor, no frequency, no time of an event is told"));
        } else if (!cycles.isTracked()) {
            unanswered.add(
                    new Unanswered("two steady cycles of a voltage or current", "the frequency is taken as nominal"));
        }
        long pieces = input.base().pieces().stream()
                .filter(p -> p.stepSeconds() > 0.0)
                .count();
        if (pieces > 1) {
            unanswered.add(new Unanswered(
                    "one sampling rate throughout", "no cycle is read across a change of pace or a gap in the record"));
        }
        return unanswered;
    }

    /** 50 or 60, whichever leaves less unexplained in the loudest channel; for records that give no frequency. */
    static Optional<Double> guessHertz(RecordInput input) {
        return input.channels().stream()
                .filter(c -> c.quantity() != Channel.Quantity.OTHER)
                .max(Comparator.comparingDouble(
                        c -> c.signal().largest(0, c.signal().size())))
                .flatMap(c -> {
                    Cycles fifty = Cycles.of(input.base(), Optional.of(c.signal()), 50.0);
                    Cycles sixty = Cycles.of(input.base(), Optional.of(c.signal()), 60.0);
                    if (!fifty.isTracked() && !sixty.isTracked()) {
                        return Optional.empty();
                    }
                    double of50 = fifty.isTracked() ? Math.abs(fifty.hertz() - 50.0) : Double.POSITIVE_INFINITY;
                    double of60 = sixty.isTracked() ? Math.abs(sixty.hertz() - 60.0) : Double.POSITIVE_INFINITY;
                    return Optional.of(of50 <= of60 ? 50.0 : 60.0);
                });
    }

    /** Moments at which channels change. */
    private static List<Finding> events(RecordInput input, Cycles cycles) {
        TreeMap<Double, List<String>> moments = new TreeMap<>();
        TreeMap<Double, Double> settled = new TreeMap<>();
        for (Channel channel : input.channels()) {
            if (channel.quantity() == Channel.Quantity.OTHER) {
                continue;
            }
            for (Changes.Change change : Changes.of(channel.signal(), cycles)) {
                Double near = moments.floorKey(change.seconds());
                Double after = moments.ceilingKey(change.seconds());
                double within = TOGETHER / cycles.hertz();
                double key = near != null && change.seconds() - near < within
                        ? near
                        : after != null && after - change.seconds() < within ? after : change.seconds();
                moments.computeIfAbsent(key, k -> new ArrayList<>())
                        .add(channel.name().strip());
                settled.merge(key, change.settledSeconds(), Math::max);
            }
        }
        List<Finding> findings = new ArrayList<>();
        moments.forEach((at, names) -> findings.add(new Finding(
                "change",
                Finding.Weight.NOTE,
                at,
                "record",
                "At " + Say.at(at) + " " + Enumeration.of(few(names))
                        + (names.size() == 1 ? " changes" : " change") + "; steady again from "
                        + Say.at(settled.getOrDefault(at, at)) + " on.",
                List.of(),
                Say.basis("REC-4", "x(t) − x(t − 1/f) above its threshold", Say.THRESHOLDS))));
        return findings;
    }

    private static List<String> few(List<String> names) {
        List<String> some = new ArrayList<>(names.subList(0, Math.min(6, names.size())));
        if (names.size() > some.size()) {
            some.add((names.size() - some.size()) + " more");
        }
        return some;
    }

    /** Currents that start or stop within the record. */
    private static List<Finding> currents(RecordInput input, Cycles cycles) {
        List<Finding> findings = new ArrayList<>();
        for (Channel channel : input.channels()) {
            if (channel.quantity() != Channel.Quantity.AMPERES
                    || cycles.windows().isEmpty()) {
                continue;
            }
            for (Conduction.Run run : Conduction.of(channel.signal(), cycles, 1e-9)) {
                if ((run.fromBegin() && run.toEnd()) || run.seconds() < 0.5 / cycles.hertz()) {
                    continue;
                }
                double peak = channel.signal().largest(run.from(), run.to());
                findings.add(new Finding(
                        "conduction",
                        Finding.Weight.NOTE,
                        run.fromBegin() ? run.stopSeconds() : run.startSeconds(),
                        channel.name().strip(),
                        channel.name().strip() + " flows "
                                + (run.fromBegin() ? "from the begin" : "from " + Say.at(run.startSeconds()))
                                + (run.toEnd() ? " to the end" : " to " + Say.at(run.stopSeconds())) + ", peak "
                                + Say.amperes(peak) + ".",
                        List.of(new Evidence(
                                channel.name().strip(),
                                channel.signal().seconds(channel.signal().largestAt(run.from(), run.to())),
                                peak,
                                "A",
                                "peak sample")),
                        Say.basis("REC-5", "above 3 % of its largest and above its noise", Say.THRESHOLDS)));
            }
        }
        return findings;
    }
}
