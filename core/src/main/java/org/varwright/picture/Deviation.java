package org.varwright.picture;

import java.util.List;
import java.util.Locale;
import java.util.OptionalDouble;
import org.varwright.survey.UnitSurvey;
import org.varwright.svg.Tone;

/** How far a unit reads off its reference: in words and as a tone. */
final class Deviation {
    /** Upper ends of the tones below zero and lower ends of those above, as parts. */
    private static final double SMALL = 0.015;

    private static final double MIDDLE = 0.04;
    private static final double LARGE = 0.10;

    private Deviation() {}

    /**
     * A tone of the scale.
     *
     * @param words the deviations that it stands for
     */
    record Step(Tone tone, String words) {}

    static final List<Step> SCALE = List.of(
            new Step(Tone.FAR_BELOW, "below \u221210 %"),
            new Step(Tone.BELOW, "to \u22124"),
            new Step(Tone.JUST_BELOW, "to \u22121.5"),
            new Step(Tone.PAPER, "to +1.5"),
            new Step(Tone.JUST_ABOVE, "to +4"),
            new Step(Tone.ABOVE, "to +10"),
            new Step(Tone.FAR_ABOVE, "above"));

    static OptionalDouble of(UnitSurvey unit) {
        OptionalDouble ratio = unit.ratio();
        return ratio.isPresent() && Double.isFinite(ratio.getAsDouble())
                ? OptionalDouble.of(ratio.getAsDouble() - 1.0)
                : OptionalDouble.empty();
    }

    static Tone tone(double part) {
        double size = Math.abs(part);
        if (size < SMALL) {
            return Tone.PAPER;
        }
        if (part < 0.0) {
            return size < MIDDLE ? Tone.JUST_BELOW : size < LARGE ? Tone.BELOW : Tone.FAR_BELOW;
        }
        return size < MIDDLE ? Tone.JUST_ABOVE : size < LARGE ? Tone.ABOVE : Tone.FAR_ABOVE;
    }

    /** In percent with its sign; from ten times the reference on as a multiple. */
    static String percent(double part) {
        if (part >= 9.0) {
            return "\u00d7" + String.format(Locale.ROOT, "%.0f", 1.0 + part);
        }
        double percent = 100.0 * part;
        String text = String.format(Locale.ROOT, Math.abs(percent) < 9.995 ? "%+.2f" : "%+.1f", percent);
        return text.equals("-0.00") ? "0.00" : text.equals("+0.00") ? "0.00" : text.replace('-', '\u2212');
    }
}
