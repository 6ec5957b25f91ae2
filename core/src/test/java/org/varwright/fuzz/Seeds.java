package org.varwright.fuzz;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/**
 * Runs a law over seeds. A failure says its seed, and {@code -Dvarwright.fuzz.seed=N} runs that one alone; {@code -Dvarwright.fuzz.times=N} runs N times as many
 * as usual. A law is held to its last seed even where it has failed, so that one run tells all that is wrong.
 *
 * <p>Seeds that once failed are handed over with the law and run first. What a seed draws changes with the generator: the case itself, cut down, becomes a named
 * test beside it.
 */
public final class Seeds {
    private static final int MOST_TOLD = 20;

    private Seeds() {}

    /** What became of a case. */
    public enum Outcome {
        /** It was taken, and every invariant held. */
        TAKEN,
        /** It was refused, and as it should be. */
        REFUSED
    }

    /** Holds for every case drawn from the numbers, or throws. */
    public interface Law {
        Outcome hold(Random random) throws Exception;
    }

    /**
     * How many cases went which way.
     *
     * @param taken cases that were taken
     * @param refused cases that were refused
     */
    public record Tally(int taken, int refused) {
        public int cases() {
            return taken + refused;
        }

        /** Both must happen, or the cases are too soft or too hard to show anything. Nothing is said of a single seed. */
        public void requireBoth(double leastShare) {
            if (isOne()) {
                return;
            }
            double least = leastShare * cases();
            if (taken < least || refused < least) {
                throw new AssertionError(
                        taken + " cases taken, " + refused + " refused: the generator proves too little");
            }
        }
    }

    /** Seeds 1 to {@code usual} (or as the properties say), after the seeds that once failed. */
    public static Tally hold(String law, int usual, Law held, long... found) {
        List<Long> seeds = new ArrayList<>();
        if (isOne()) {
            seeds.add(Long.getLong("varwright.fuzz.seed"));
        } else {
            for (long seed : found) {
                seeds.add(seed);
            }
            for (long seed = 1; seed <= usual * (long) times(); seed++) {
                seeds.add(seed);
            }
        }
        int taken = 0;
        int refused = 0;
        Map<String, AssertionError> failures = new LinkedHashMap<>();
        for (long seed : seeds) {
            try {
                switch (held.hold(random(seed))) {
                    case TAKEN -> taken++;
                    case REFUSED -> refused++;
                }
            } catch (Exception | StackOverflowError | OutOfMemoryError | AssertionError e) {
                failures.putIfAbsent(kind(e), new AssertionError(law + ", seed " + seed + ": " + e, e));
            }
        }
        if (!failures.isEmpty()) {
            throw told(law, failures);
        }
        return new Tally(taken, refused);
    }

    private static AssertionError told(String law, Map<String, AssertionError> failures) {
        StringBuilder text = new StringBuilder(law + ": " + failures.size() + " kinds of failure");
        failures.values().stream()
                .limit(MOST_TOLD)
                .forEach(e -> text.append("\n* ").append(e.getMessage()));
        AssertionError all = new AssertionError(text.toString());
        failures.values().stream().limit(MOST_TOLD).forEach(all::addSuppressed);
        return all;
    }

    /** Failures with the same kind are told once: the same exception from the same line. */
    private static String kind(Throwable e) {
        StackTraceElement[] trace = e.getStackTrace();
        String where = "";
        for (StackTraceElement frame : trace) {
            if (frame.getClassName().startsWith("org.varwright")) {
                where = frame.toString();
                break;
            }
        }
        String what = String.valueOf(e.getMessage()).replaceAll("[0-9]+", "#");
        return e.getClass().getName() + where + what.substring(0, Math.min(60, what.length()));
    }

    /** Neighbouring seeds must not begin alike, as they do with the bare class. */
    private static Random random(long seed) {
        return new Random(seed * 0x9E3779B97F4A7C15L);
    }

    private static int times() {
        return Integer.getInteger("varwright.fuzz.times", 1);
    }

    private static boolean isOne() {
        return Long.getLong("varwright.fuzz.seed") != null;
    }
}
