package org.varwright.bench;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * An exhaustive run of SPIN's compiled verifier.
 *
 * @param states that it stored
 * @param times of the whole process, compiling not included
 * @param stateBytes that it says it held for states
 * @param totalBytes that it says it held in all
 */
record SpinRun(long states, Times times, double stateBytes, double totalBytes) {
    private static final Pattern STORED = Pattern.compile("(?m)^\\s*([0-9.e+]+) states, stored");
    private static final Pattern FOR_STATES = Pattern.compile("(?m)^\\s*([0-9.]+)\\s+actual memory usage for states");
    private static final Pattern TOTAL = Pattern.compile("(?m)^\\s*([0-9.]+)\\s+total actual memory usage");
    /** SPIN counts megabytes of 2^20 bytes. */
    private static final double MEGABYTE = 1 << 20;

    /**
     * Compiles and runs a model.
     *
     * @param states how many there will be: the hash table gets as many slots (the next power of two), and the stack room for as many, so that it can't run out
     */
    static SpinRun of(Command in, String promela, long states, int runs) {
        in.write("scheme.pml", promela);
        in.run("spin", "-a", "scheme.pml");
        in.run("gcc", "-O2", "-w", "-DSAFETY", "-DNOREDUCE", "-DNOCLAIM", "-o", "pan", "pan.c");
        int slotBits = Math.max(12, 64 - Long.numberOfLeadingZeros(states - 1));
        List<Double> wall = new ArrayList<>();
        List<Double> cpu = new ArrayList<>();
        String output = "";
        for (int i = 0; i < runs; i++) {
            Command.Run run = in.run("./pan", "-m" + (states + 10), "-w" + slotBits, "-n");
            output = run.output();
            if (output.contains("search depth too small") || output.contains("Search not completed")) {
                throw new IllegalStateException("SPIN did not search everything:\n" + output);
            }
            wall.add(run.wallSeconds());
            cpu.add(run.cpuSeconds());
        }
        return new SpinRun(
                (long) figure(STORED, output),
                new Times(wall, cpu),
                figure(FOR_STATES, output) * MEGABYTE,
                figure(TOTAL, output) * MEGABYTE);
    }

    /** Whether it took long enough for its time to mean something. */
    boolean isTimed() {
        return times.cpu() >= 0.01;
    }

    private static double figure(Pattern pattern, String output) {
        Matcher matcher = pattern.matcher(output);
        if (!matcher.find()) {
            throw new IllegalStateException("not found in what SPIN printed, " + pattern + ":\n" + output);
        }
        return Double.parseDouble(matcher.group(1));
    }
}
