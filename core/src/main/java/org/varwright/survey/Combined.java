package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * One value from several readings of the same thing.
 *
 * @param farads the value [F]
 * @param sigmaFarads its standard uncertainty [F]
 */
record Combined(double farads, double sigmaFarads) {
    /** The standard uncertainty as a part of the value; 0 of nothing. */
    double sigma() {
        return farads > 0.0 ? sigmaFarads / farads : 0.0;
    }

    /**
     * The median of each instrument's readings, and of several instruments the mean weighted by {@code 1/σ²} (SRV-4).
     *
     * <p><b>Model.</b> {@code σ² = 1/Σ(1/σ_i²)} over instruments. Readings of one instrument share its error, so their number doesn't make it smaller; the
     * errors of two instruments are independent.
     * <p><b>Source.</b> JCGM 100:2008, 5.1 (combination of independent quantities), 4.3.7 (limits of error).
     *
     * @param takes plain values, 1 or more
     */
    static Combined of(List<Gathered.Take> takes) {
        Map<Optional<String>, List<Gathered.Take>> byInstrument = new LinkedHashMap<>();
        takes.forEach(take -> byInstrument
                .computeIfAbsent(take.instrument(), ignored -> new ArrayList<>())
                .add(take));
        double weights = 0.0;
        double sum = 0.0;
        for (List<Gathered.Take> own : byInstrument.values()) {
            double value = Robust.median(
                    own.stream().mapToDouble(take -> take.farads().orElse(0.0)).toArray());
            double sigma =
                    own.stream().mapToDouble(Gathered.Take::sigmaFarads).max().orElse(0.0);
            if (sigma <= 0.0) {
                return new Combined(value, 0.0);
            }
            weights += 1.0 / (sigma * sigma);
            sum += value / (sigma * sigma);
        }
        return new Combined(sum / weights, Math.sqrt(1.0 / weights));
    }
}
