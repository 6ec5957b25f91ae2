package org.varwright.bench;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import org.varwright.interlock.SpinSubject;
import org.varwright.interlock.Verification;

/** Our verifier and SPIN's on the same schemes. */
final class InterlockBench {
    /** SPIN is run up to this many states: beyond, it takes minutes. */
    private static final long MOST_FOR_SPIN = 2_000_000;
    /** State by state, up to this many states. */
    private static final long MOST_ONE_BY_ONE = 6_000_000;

    private static final double WARM_UP_SECONDS = 1.0;
    private static final int RUNS = 5;
    private static final int SPIN_RUNS = 3;

    private final Command command;
    private final List<String> speeds = new ArrayList<>();
    private final List<String> sizes = new ArrayList<>();
    private final List<String> times = new ArrayList<>();
    private String verdict = "No scheme was searched by both.";

    InterlockBench(Command command) {
        this.command = command;
    }

    /** The banks of the checkout, and rows of alike stages. */
    static String ofAll() throws IOException {
        try (Scratch scratch = Scratch.create()) {
            InterlockBench bench = new InterlockBench(new Command(scratch.folder()));
            for (Path file : Examples.files()) {
                SpinSubject.of(Examples.read(file)).ifPresent(bench::measure);
            }
            for (int stages = 7; stages <= 11; stages++) {
                bench.measure(SpinSubject.row(stages));
            }
            return bench.text();
        }
    }

    private void measure(SpinSubject subject) {
        Measured alike = Measured.of(subject::alikeOnce);
        long states = alike.verification().states();
        Optional<Measured> each =
                states <= MOST_ONE_BY_ONE ? Optional.of(Measured.of(subject::oneByOne)) : Optional.empty();
        Optional<SpinRun> spin = states <= MOST_FOR_SPIN
                ? Optional.of(SpinRun.of(command, subject.promela(), states, SPIN_RUNS))
                : Optional.empty();
        each.ifPresent(e -> same(subject, states, e.verification().states()));
        spin.ifPresent(s -> same(subject, states, s.states()));
        spin.ifPresent(s ->
                each.ifPresent(e -> verdict = "On the last scheme that both searched (" + subject.name() + "): "
                        + ratio(s.times().cpu() / e.times().cpu()) + " times SPIN's states a second; "
                        + bytes(e.verification().heldBytes(), states) + " bytes a state at the end and "
                        + bytes(e.verification().peakBytes(), states) + " at most, while the table of states grows."));
        String row = "| " + subject.name() + " | " + grouped(states) + " | ";
        speeds.add(row + grouped(alike.verification().moves()) + " | "
                + spin.map(s -> s.isTimed() ? rate(s.states(), s.times()) : "too short")
                        .orElse("not run") + " | "
                + each.map(e -> rate(states, e.times())).orElse("not run") + " | "
                + spin.filter(SpinRun::isTimed)
                        .flatMap(s ->
                                each.map(e -> ratio(s.times().cpu() / e.times().cpu())))
                        .orElse("")
                + " | " + rate(states, alike.times()) + " | "
                + spin.filter(SpinRun::isTimed)
                        .map(s -> ratio(s.times().cpu() / alike.times().cpu()))
                        .orElse("") + " |");
        sizes.add(row
                + spin.map(s -> bytes(s.stateBytes(), states) + " | " + bytes(s.totalBytes(), states))
                        .orElse("not run | not run")
                + " | "
                + each.map(e -> bytes(e.verification().heldBytes(), states) + " | "
                                + bytes(e.verification().peakBytes(), states))
                        .orElse("not run | not run")
                + " | " + grouped(alike.verification().visited()) + " | "
                + bytes(alike.verification().peakBytes(), alike.verification().visited()) + " |");
        times.add("| " + subject.name() + " | "
                + spin.map(s -> s.times().cpuText() + " | " + s.times().wallText())
                        .orElse("not run | not run")
                + " | "
                + each.map(e -> e.times().cpuText() + " | " + e.times().wallText())
                        .orElse("not run | not run")
                + " | " + alike.times().cpuText() + " |");
    }

    private record Measured(Verification verification, Times times) {
        static Measured of(Supplier<Verification> work) {
            Verification verification = work.get();
            if (!verification.complete()) {
                throw new IllegalStateException("not everything was visited");
            }
            return new Measured(verification, Times.of(work, WARM_UP_SECONDS, RUNS));
        }
    }

    private static void same(SpinSubject subject, long expected, long found) {
        if (expected != found) {
            throw new IllegalStateException(subject.name() + ": " + found + " states where there should be " + expected
                    + "; figures of searches that differ can't be compared");
        }
    }

    private String text() {
        return String.join(
                "\n",
                """
                The same schemes in one run. SPIN: `spin -a`, `gcc -O2 -DSAFETY -DNOREDUCE -DNOCLAIM`, exhaustive, with a hash table of as many slots as there are
                states and room for as deep a search; the whole process without compiling. Its model has the states and moves of the one that the tests
                hold against ours, and everything is in its favour: it judges no property and works out what is live only where a move depends on it.
                Ours judges every property of every state and move, and whether each state gets home: `Verifier` in a warm JVM (time of its thread; compiler and
                collector of the JVM run beside it), once *state by state* as SPIN does it and once with *alike stages once* (ILK-9), as the commands do. The number
                of states was the same each time, or there would be no figures. "Not run": more than two million states (SPIN), more than six million
                (state by state).
                """,
                "States explored a second of processor time (median of the runs):",
                "",
                "| scheme | states | moves | SPIN | state by state | times SPIN | alike stages once | times SPIN |",
                "| --- | --: | --: | --: | --: | --: | --: | --: |",
                String.join("\n", speeds),
                "",
                "Aims: ten times SPIN's states a second, and 16 bytes a state at most. " + verdict,
                "",
                "Bytes a state (small schemes carry what any search holds; ours counts its arrays, SPIN says its own):",
                "",
                "| scheme | states | SPIN, states alone | SPIN, in all | state by state, at the end | state by state, at most |"
                        + " alike stages once: held | at most, for each held |",
                "| --- | --: | --: | --: | --: | --: | --: | --: |",
                String.join("\n", sizes),
                "",
                "Time for the whole search, least / median / most:",
                "",
                "| scheme | SPIN, processor | SPIN, clock | state by state, processor | state by state, clock |"
                        + " alike stages once, processor |",
                "| --- | --- | --- | --- | --- | --- |",
                String.join("\n", times));
    }

    private static String rate(long states, Times times) {
        return grouped(Math.round(states / times.cpu() / 1000.0) * 1000);
    }

    private static String ratio(double ratio) {
        return String.format(Locale.ROOT, ratio < 10.0 ? "%.1f" : "%.0f", ratio);
    }

    private static String bytes(long bytes, long states) {
        return bytes((double) bytes, states);
    }

    private static String bytes(double bytes, long states) {
        double each = bytes / states;
        return String.format(Locale.ROOT, each < 100.0 ? "%.1f" : "%.0f", each);
    }

    private static String grouped(long value) {
        return String.format(Locale.ROOT, "%,d", value).replace(',', ' ');
    }
}
