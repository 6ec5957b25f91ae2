package org.varwright.switching;

import java.util.List;
import java.util.Optional;

/**
 * A stage that was opened, in time.
 *
 * @param stage its name
 * @param alreadyOn stages that stay on
 * @param steps what its poles did, in order
 * @param poles what each pole bore, A, B, C
 * @param legs what each leg bore and was left with
 * @param peakAmperes largest current in a pole after the first restrike [A]; 0 where none conducted again
 * @param hertz frequency of the strongest oscillation in it
 * @param busPerPeak highest voltage of the bus to ground, as a multiple of its peak in service
 * @param recorded waveforms where they were kept
 */
public record Opened(
        String stage,
        List<String> alreadyOn,
        List<Step> steps,
        List<Pole> poles,
        List<Leg> legs,
        double peakAmperes,
        double hertz,
        double busPerPeak,
        Optional<Closing.Recorded> recorded) {
    public Opened {
        alreadyOn = List.copyOf(alreadyOn);
        steps = List.copyOf(steps);
        poles = List.copyOf(poles);
        legs = List.copyOf(legs);
    }

    /**
     * What a pole did.
     *
     * @param seconds after the contacts parted
     * @param pole A, B or C
     * @param conductsAgain true for a restrike, false for a clearing
     * @param acrossPerPeak voltage across the pole just before, as a multiple of the peak line to neutral
     */
    public record Step(double seconds, String pole, boolean conductsAgain, double acrossPerPeak) {}

    /**
     * A pole.
     *
     * @param pole A, B or C
     * @param recoveryPerPeak highest voltage across it, as a multiple of the peak line to neutral
     */
    public record Pole(String pole, double recoveryPerPeak) {}

    /**
     * A leg.
     *
     * @param leg its name
     * @param highestPerPeak highest voltage across it, as a multiple of its peak in service
     * @param leftPerPeak what it holds at the end, likewise, with its sign
     */
    public record Leg(String leg, double highestPerPeak, double leftPerPeak) {}

    /** Whether a pole conducted again. */
    public boolean restruck() {
        return steps.stream().anyMatch(Step::conductsAgain);
    }
}
