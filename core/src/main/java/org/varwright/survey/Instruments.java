package org.varwright.survey;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Brings the readings of several instruments onto the scale of the one that read most (SRV-13).
 *
 * <p><b>Model.</b> Each instrument has one factor for all its readings. Where it read three or more units that the main one read too, the median ratio is that
 * factor; else, where four or more of its units have earlier values, as have four or more of the main one's, the ratio of both instruments' median ratios to
 * these. A factor within the limits of error of both is taken out; a larger one is named and left.
 * <p><b>Not modelled.</b> Errors that depend on the value read.
 * <p><b>Source.</b> First principles; the least numbers: common practice, no source.
 *
 * @param aligned every unit with its readings on one scale
 * @param main the instrument that read most; {@code ""} where none is named
 * @param factors of the others whose factor was taken out
 * @param findings in words
 */
record Instruments(List<Gathered> aligned, String main, Map<String, Double> factors, List<String> findings) {
    private static final int FEWEST_SHARED = 3;
    private static final int FEWEST_WITH_EARLIER = 4;

    /** What rounding and weather add to the limits of error. */
    private static final double BESIDE = 0.005;

    /** A factor smaller than this is not worth a sentence. */
    private static final double SMALL = 0.002;

    Instruments {
        aligned = List.copyOf(aligned);
        factors = Collections.unmodifiableMap(new LinkedHashMap<>(factors));
        findings = List.copyOf(findings);
    }

    static Instruments of(List<Gathered> all, SurveySettings settings) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        all.forEach(unit ->
                unit.takes().forEach(take -> counts.merge(take.instrument().orElse(""), 1, Integer::sum)));
        String main = mostUsed(counts);
        Map<String, Double> factors = new LinkedHashMap<>();
        List<String> findings = new ArrayList<>();
        for (String other : counts.keySet()) {
            if (other.equals(main)) {
                continue;
            }
            Optional<Double> factor = shared(all, main, other).or(() -> againstEarlier(all, main, other));
            if (factor.isEmpty()) {
                continue;
            }
            double allowed = settings.meterLimit(named(main)) + settings.meterLimit(named(other)) + BESIDE;
            double off = Math.abs(factor.get() - 1.0);
            if (off > allowed) {
                findings.add(words(other) + " reads " + Reasons.deviation(factor.get()) + " " + words(main)
                        + " on the same units, more than their limits of error allow: one of the two is wrong; try both on a"
                        + " known capacitor before anything is judged by them.");
            } else {
                factors.put(other, factor.get());
                if (off >= SMALL) {
                    findings.add(words(other) + " reads " + Reasons.deviation(factor.get()) + " " + words(main)
                            + ", within their limits of error; its readings were brought onto the other's scale.");
                }
            }
        }
        return new Instruments(all.stream().map(unit -> scaled(unit, factors)).toList(), main, factors, findings);
    }

    private static String mostUsed(Map<String, Integer> counts) {
        String main = "";
        int most = 0;
        for (Map.Entry<String, Integer> entry : counts.entrySet()) {
            if (entry.getValue() > most) {
                most = entry.getValue();
                main = entry.getKey();
            }
        }
        return main;
    }

    /** The instrument whose scale a unit's readings are on now. */
    String scaleOf(Gathered unit) {
        String own = unit.instrument().orElse("");
        return factors.containsKey(own) ? main : own;
    }

    private static Optional<String> named(String instrument) {
        return instrument.isEmpty() ? Optional.empty() : Optional.of(instrument);
    }

    private static String words(String instrument) {
        return instrument.isEmpty() ? "The instrument that is not named" : instrument;
    }

    private static Optional<Double> shared(List<Gathered> all, String main, String other) {
        List<Double> ratios = new ArrayList<>();
        for (Gathered unit : all) {
            double[] mine = values(unit, main);
            double[] theirs = values(unit, other);
            if (mine.length > 0 && theirs.length > 0) {
                double ratio = Robust.median(theirs) / Robust.median(mine);
                if (ratio > 0.8 && ratio < 1.25) {
                    ratios.add(ratio);
                }
            }
        }
        return ratios.size() < FEWEST_SHARED ? Optional.empty() : Optional.of(median(ratios));
    }

    private static Optional<Double> againstEarlier(List<Gathered> all, String main, String other) {
        Optional<Double> mine = againstEarlier(all, main);
        Optional<Double> theirs = againstEarlier(all, other);
        return mine.isPresent() && theirs.isPresent() ? Optional.of(theirs.get() / mine.get()) : Optional.empty();
    }

    private static Optional<Double> againstEarlier(List<Gathered> all, String instrument) {
        List<Double> ratios = new ArrayList<>();
        for (Gathered unit : all) {
            double[] values = values(unit, instrument);
            if (values.length > 0 && unit.factoryFarads().isPresent() && References.serialAgrees(unit)) {
                double ratio = Robust.median(values) / unit.factoryFarads().getAsDouble();
                if (ratio > 0.8 && ratio < 1.25) {
                    ratios.add(ratio);
                }
            }
        }
        return ratios.size() < FEWEST_WITH_EARLIER ? Optional.empty() : Optional.of(median(ratios));
    }

    private static double median(List<Double> ratios) {
        return Robust.median(ratios.stream().mapToDouble(Double::doubleValue).toArray());
    }

    private static double[] values(Gathered unit, String instrument) {
        return unit.takes().stream()
                .filter(take -> take.instrument().orElse("").equals(instrument))
                .flatMapToDouble(take -> take.farads().stream())
                .filter(farads -> farads > 0.0)
                .toArray();
    }

    private static Gathered scaled(Gathered unit, Map<String, Double> factors) {
        List<Gathered.Take> takes = unit.takes().stream()
                .map(take -> take.over(factors.getOrDefault(take.instrument().orElse(""), 1.0)))
                .toList();
        return unit.with(takes);
    }
}
