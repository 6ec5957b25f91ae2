package org.varwright.bench;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.function.Supplier;

/**
 * What several runs of the same work took, in order of time.
 *
 * @param wallSeconds by the clock on the wall
 * @param cpuSeconds of a processor
 */
record Times(List<Double> wallSeconds, List<Double> cpuSeconds) {
    Times {
        wallSeconds = wallSeconds.stream().sorted().toList();
        cpuSeconds = cpuSeconds.stream().sorted().toList();
    }

    /**
     * Runs work of this thread over and over.
     *
     * @param warmUpSeconds how long it is run before it counts, once at least
     * @param runs that count
     */
    static Times of(Supplier<?> work, double warmUpSeconds, int runs) {
        long start = System.nanoTime();
        do {
            Objects.requireNonNull(work.get());
        } while ((System.nanoTime() - start) * 1e-9 < warmUpSeconds);
        List<Double> wall = new ArrayList<>();
        List<Double> cpu = new ArrayList<>();
        for (int i = 0; i < runs; i++) {
            System.gc();
            long wallFrom = System.nanoTime();
            long cpuFrom = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
            Objects.requireNonNull(work.get());
            cpu.add((ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - cpuFrom) * 1e-9);
            wall.add((System.nanoTime() - wallFrom) * 1e-9);
        }
        return new Times(wall, cpu);
    }

    static double median(List<Double> sorted) {
        int middle = sorted.size() / 2;
        return sorted.size() % 2 == 1 ? sorted.get(middle) : (sorted.get(middle - 1) + sorted.get(middle)) / 2.0;
    }

    double cpu() {
        return median(cpuSeconds);
    }

    String wallText() {
        return text(wallSeconds);
    }

    String cpuText() {
        return text(cpuSeconds);
    }

    /** Least, median, most. */
    private static String text(List<Double> sorted) {
        return seconds(sorted.getFirst()) + " / " + seconds(median(sorted)) + " / " + seconds(sorted.getLast());
    }

    static String seconds(double s) {
        if (s < 0.1) {
            return String.format(Locale.ROOT, "%.1f ms", s * 1e3);
        }
        return String.format(Locale.ROOT, s < 10.0 ? "%.2f s" : "%.1f s", s);
    }
}
