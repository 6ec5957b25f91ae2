package org.varwright.resonance;

import java.util.List;
import org.varwright.limit.ContinuousLimits;
import org.varwright.limit.Stress;

/**
 * What the stages of a combination bear with the harmonics given, in the load case that is worst.
 *
 * @param load the case
 * @param flow bus voltages and currents in it
 * @param stages in the order of the combination
 * @param distortion total harmonic distortion of the bus voltage
 * @param distortionWithout the same with no stage on
 */
public record HarmonicDuty(
        String load, HarmonicFlow flow, List<StageStress> stages, double distortion, double distortionWithout) {
    public HarmonicDuty {
        stages = List.copyOf(stages);
    }

    /**
     * One stage.
     *
     * @param stage its name
     * @param stress of its hardest-worked units, as multiples of rated
     * @param lineAmperes rms in its line, harmonics included [A]
     */
    public record StageStress(String stage, Stress stress, double lineAmperes) {}

    /** How near the nearest limit: 1 is at it. */
    double use(ContinuousLimits limits) {
        double most = 0.0;
        for (StageStress stage : stages) {
            for (ContinuousLimits.Judged judged : limits.judge(stage.stress())) {
                most = Math.max(most, Double.isNaN(judged.use()) ? Double.POSITIVE_INFINITY : judged.use());
            }
        }
        return most;
    }
}
