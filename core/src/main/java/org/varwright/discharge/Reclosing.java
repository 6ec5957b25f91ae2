package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import java.util.TreeSet;

/**
 * What happens when a stage is switched on again before it has discharged.
 *
 * @param rows over time
 * @param shortestSeconds shortest delay, trapped charge down to 10 % of the peak in service (common practice) [s]
 * @param ratedSeconds shortest delay, trapped charge down to 10 % of rated voltage, the stricter reading of IEC (from memory, unchecked) [s]
 * @param delaySeconds the control's delay [s]; empty where the bank file gives none
 */
public record Reclosing(List<Row> rows, double shortestSeconds, double ratedSeconds, OptionalDouble delaySeconds) {
    private static final List<Double> USUAL_SECONDS = List.of(0.0, 5.0, 30.0, 60.0, 120.0, 180.0, 300.0, 600.0);

    public Reclosing {
        rows = List.copyOf(rows);
    }

    /**
     * Closing after so many seconds, at the worst moment and without damping.
     *
     * @param seconds since opening [s]
     * @param volts trapped on a unit [V]
     * @param perPeak the same as a multiple of its peak in service
     * @param voltagePerPeak highest voltage on the unit when it is switched on, as a multiple of its peak in service (DIS-7)
     * @param inrushPerDischarged inrush current as a multiple of that of a discharged stage (DIS-7)
     */
    public record Row(
            double seconds, double volts, double perPeak, double voltagePerPeak, double inrushPerDischarged) {}

    /**
     * Closing on trapped charge.
     *
     * <p><b>Model.</b> A capacitance at {@code −v} switched through an inductance onto the crest {@code v_peak}: it swings about the crest to
     * {@code 2·v_peak + v}, and the current crest is {@code (v_peak + v)} over the surge impedance (DIS-7).
     * <p><b>Not modelled.</b> Damping and the sharing between phases of an ungrounded neutral: the multiples are upper bounds.
     * <p><b>Source.</b> First principles.
     *
     * @param stage with a known resistance
     * @param known its resistance
     * @param delaySeconds the control's delay [s]
     */
    static Reclosing of(StageDischarge stage, Resistance.Known known, OptionalDouble delaySeconds) {
        TreeSet<Double> times = new TreeSet<>(USUAL_SECONDS);
        delaySeconds.ifPresent(times::add);
        double farads = stage.capacitanceFarads();
        double initial = stage.opening().initialVolts();
        List<Row> rows = new ArrayList<>();
        for (double seconds : times) {
            double volts = Decay.voltsAfter(farads, known.ohms(), initial, seconds);
            double part = volts / stage.opening().peakInServiceVolts();
            rows.add(new Row(seconds, volts, part, 2.0 + part, 1.0 + part));
        }
        return new Reclosing(
                rows,
                stage.recloseSeconds().orElseThrow(),
                Decay.secondsTo(
                        farads,
                        known.ohms(),
                        initial,
                        Discharge.RECLOSE_PART * stage.stage().unit().legVolts()),
                delaySeconds);
    }
}
