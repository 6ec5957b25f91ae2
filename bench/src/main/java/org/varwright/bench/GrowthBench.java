package org.varwright.bench;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.varwright.comtrade.Bytes;
import org.varwright.comtrade.DataFormat;
import org.varwright.comtrade.ReadOptions;
import org.varwright.comtrade.RecordFiles;
import org.varwright.comtrade.RecordReader;
import org.varwright.comtrade.Revision;
import org.varwright.comtrade.Source;
import org.varwright.comtrade.WrittenRecord;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.interlock.SpinSubject;
import org.varwright.interlock.Verification;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.JobJson;
import org.varwright.job.LongJob;
import org.varwright.json.Json;
import org.varwright.plot.Point;
import org.varwright.task.Tasks;

/** What costs how much more as the work grows: states, units, samples, events. */
final class GrowthBench {
    private static final double WARM_UP_SECONDS = 0.4;
    private static final int RUNS = 5;

    private GrowthBench() {}

    static String text() throws IOException {
        StringBuilder text = new StringBuilder("""
                Processor time of the median of %d runs in a warm JVM, against size. The exponent is the slope of the straight line through the larger half of the points:
                1 is proportional, 2 is square. What is expected is said beside it, before it was measured.

                """.formatted(RUNS));
        for (GrowthChart chart : List.of(states(), units(), samples(), events())) {
            chart.write();
            text.append(chart.markdown()).append('\n');
        }
        return text.toString();
    }

    private static GrowthChart states() {
        List<Point> each = new ArrayList<>();
        List<Point> alike = new ArrayList<>();
        for (int stages = 3; stages <= 11; stages++) {
            SpinSubject row = SpinSubject.row(stages);
            alike.add(timed((double) row.alikeOnce().states(), row::alikeOnce));
            if (stages <= 8) {
                Verification all = row.oneByOne();
                each.add(timed((double) all.states(), row::oneByOne));
            }
        }
        return new GrowthChart(
                "states.svg",
                "Interlocking: states of the scheme",
                "states",
                """
                Rows of 3 to 11 alike stages; each stage more has about four times the states.
                """,
                List.of(
                        new Growth(
                                "state by state", "a little over 1: a state has more moves in a larger scheme", each),
                        new Growth(
                                "alike stages once",
                                "far below 1: what it holds grows with a power of the stages",
                                alike)));
    }

    private static GrowthChart units() {
        List<Point> solved = new ArrayList<>();
        List<Point> swept = new ArrayList<>();
        List<Point> fitted = new ArrayList<>();
        for (int parallel : new int[] {2, 4, 8, 16, 32, 64}) {
            UnbalanceCases cases = UnbalanceCases.ofUnits(parallel);
            solved.add(timed(cases.units(), cases::solveOne));
            swept.add(timed(cases.units(), cases::sweepEverything));
        }
        for (int parallel : new int[] {3, 6, 12, 24, 48, 96}) {
            FitInput input = FitSubject.linear(parallel);
            fitted.add(timed(3.0 * parallel, () -> Fit.plan(input)));
        }
        return new GrowthChart(
                "units.svg",
                "Network, unbalance and fit: units of the bank",
                "units",
                """
                Network: factor an ungrounded double wye of four groups a leg and take one unit out. Unbalance: every unit and every two of them out. Fit: three condemned
                units and eight spares in a grounded wye, up to two extra lifts, proven best.
                """,
                List.of(
                        new Growth(
                                "network, one unit out", "at most 1: units in parallel add up, the nodes stay", solved),
                        new Growth("unbalance, all pairs out", "2: so many pairs", swept),
                        new Growth("fit, two extra lifts", "2: each of two lifts may be any unit", fitted)));
    }

    private static GrowthChart samples() throws IOException {
        List<Growth> works = new ArrayList<>();
        for (DataFormat format : List.of(DataFormat.BINARY, DataFormat.ASCII)) {
            List<Point> points = new ArrayList<>();
            for (int samples : new int[] {3_125, 6_250, 12_500, 25_000, 50_000, 100_000, 200_000}) {
                WrittenRecord written = RecordSubject.written(samples, format, Revision.C1999);
                RecordFiles files = RecordFiles.of(
                        Source.of("bench.cfg", Bytes.of(written.configuration())),
                        Source.of("bench.dat", Bytes.of(written.data())));
                points.add(timed(samples, () -> RecordReader.read(files, ReadOptions.ALL)));
            }
            works.add(new Growth("decoding " + format, "1", points));
        }
        return new GrowthChart(
                "samples.svg",
                "Records: samples a channel",
                "samples",
                "A record of 16 analog and 32 status channels in memory, decoded whole.",
                works);
    }

    private static GrowthChart events() throws IOException {
        List<Point> told = new ArrayList<>();
        List<Point> shown = new ArrayList<>();
        List<Point> proposed = new ArrayList<>();
        List<Point> counted = new ArrayList<>();
        List<Point> added = new ArrayList<>();
        List<Point> fetched = new ArrayList<>();
        String bank = Files.readString(Examples.TAMARACK, StandardCharsets.UTF_8);
        for (int events : new int[] {100, 200, 400, 800, 1_600, 3_200, 6_400, 12_800}) {
            String lines = LongJob.of(bank, Examples.TAMARACK_COMPARTMENT, events)
                    .log()
                    .text();
            Job job = LongJob.told(lines);
            told.add(timed(events, () -> LongJob.told(lines)));
            shown.add(timed(events, () -> JobJson.of(LongJob.told(lines)).print()));
            String request = proposal(lines);
            proposed.add(timed(events, () -> Tasks.run(request)));
            counted.add(timed(events, () -> job.counted(Fact.ReadingTaken.class)));
            ServedJob.Clock clock =
                    ServedJob.measure(LongJob.of(bank, Examples.TAMARACK_COMPARTMENT, events + ServedJob.RUNS));
            added.add(new Point(events, clock.addedSeconds()));
            fetched.add(new Point(events, clock.fetchedSeconds()));
        }
        return new GrowthChart(
                "events.svg",
                "A job: events in its log",
                "events",
                """
                The way in of an order of work, then readings and notes in turn. Told: lines read, hashes checked, every rule applied. Shown: told, and everything that stands
                as JSON. Confirmed: the task `job-propose` of the app, which reads the log, judges one note more and shows the job with it. Readings: picked out of a job that is told,
                as the report does. By the server, in time of the clock and with everything between client and disk: one line added to the stored job, on disk before it is
                answered; the whole log fetched by a device that holds nothing.
                """,
                List.of(
                        new Growth("told", "1", told),
                        new Growth("shown", "1", shown),
                        new Growth("confirmed", "1", proposed),
                        new Growth("readings", "1", counted),
                        new Growth("server, one line added", "0 until the sum over all lines shows, then 1", added),
                        new Growth("server, all fetched", "1", fetched)));
    }

    private static String proposal(String lines) {
        String request = Json.object()
                .put("task", "job-propose")
                .put("job", LongJob.NAME)
                .put("log", lines)
                .put("device", "tablet-a")
                .put("by", "R. Imhof")
                .put("now", 1_796_000_000_000.0)
                .put("type", "noted")
                .put("body", Json.object().put("text", "one note more").build())
                .build()
                .print();
        if (!Tasks.run(request).contains("\"ok\": true")) {
            throw new IllegalStateException("the note was refused; a refusal costs something else");
        }
        return request;
    }

    private static Point timed(double size, Supplier<?> work) {
        return new Point(size, Times.of(work, WARM_UP_SECONDS, RUNS).cpu());
    }
}
