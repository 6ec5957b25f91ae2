package org.varwright.switching;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.transients.Probe;
import org.varwright.transients.Wave;

/**
 * One closing, simulated.
 *
 * @param busHenriesPerMetre inductance of the bus that was counted with: one of the two ends of what is usual [H/m]
 * @param degrees angle at which poles A, B and C close: 0 where the voltage of phase A to ground rises through zero, 90 at its peak
 * @param peakAmperes largest peak in a pole of the stage that closes
 * @param pole the pole, A, B or C
 * @param hertz frequency of the strongest free oscillation in that pole
 * @param ampereSquaredSeconds largest integral of the squared current of a pole, first closing to one cycle after the last
 * @param legPerPeak highest voltage across a leg of that stage, as a multiple of its peak in service
 * @param leg that leg
 * @param legVolts that voltage [V]
 * @param busPerPeak highest voltage of the bus to ground, as a multiple of its peak in service
 * @param busDip deepest sudden drop of the bus voltage, as a part of its peak
 * @param stages what each stage in the circuit bears, by name
 * @param recorded waveforms where they were kept
 */
public record Closing(
        double busHenriesPerMetre,
        List<Double> degrees,
        double peakAmperes,
        String pole,
        double hertz,
        double ampereSquaredSeconds,
        double legPerPeak,
        String leg,
        double legVolts,
        double busPerPeak,
        double busDip,
        Map<String, StageStrain> stages,
        Optional<Recorded> recorded) {
    public Closing {
        degrees = List.copyOf(degrees);
    }

    /**
     * What a stage bears.
     *
     * @param peakAmperes largest peak in one of its phases [A]
     * @param ampereSquaredSeconds largest in one of its phases [A²s]
     * @param unitAmpereSquaredSeconds largest in the fuse of one unit [A²s]
     * @param legPerPeak highest voltage across a leg, as a multiple of its peak in service
     */
    public record StageStrain(
            double peakAmperes, double ampereSquaredSeconds, double unitAmpereSquaredSeconds, double legPerPeak) {}

    /**
     * Waveforms.
     *
     * @param probes what was watched
     * @param wave values over time
     */
    public record Recorded(List<Probe> probes, Wave wave) {
        public Recorded {
            probes = List.copyOf(probes);
        }
    }

    /** Peak times frequency [A·Hz]. */
    public double product() {
        return peakAmperes * hertz;
    }
}
