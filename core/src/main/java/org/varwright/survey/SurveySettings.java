package org.varwright.survey;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Standard;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;

/**
 * What a survey is judged with. Every value is shown in the result.
 *
 * @param meterLimit limits of error of the meter, as a part of the reading, such as 0.01
 * @param meterLimits the same of single instruments, by their name in the readings; those that are not in it have {@code meterLimit}
 * @param capacitancePerKelvin temperature coefficient of capacitance [1/K]
 * @param referenceCelsius temperature that nameplates and factory values are for [°C]
 * @param factoryLimit limits of error of a factory value, as a part of it
 * @param ageing standard deviation of what a healthy unit drifts after its factory value, as a part of it
 * @param batchSpread standard deviation of healthy units of one type about their median, where few mates tell, as a part of it
 * @param priors what is believed of a unit before it is measured
 */
public record SurveySettings(
        double meterLimit,
        Map<String, Double> meterLimits,
        double capacitancePerKelvin,
        double referenceCelsius,
        double factoryLimit,
        double ageing,
        double batchSpread,
        Priors priors) {
    /** Polypropylene film, about −0.03 %/K (handbook figure; that of a whole unit is from memory, unchecked). */
    public static final double POLYPROPYLENE_PER_KELVIN = -3e-4;

    /** Limits of error of a usual capacitance meter, as a part of the reading; common practice, no source. */
    public static final double USUAL_METER_LIMIT = 0.01;

    public SurveySettings {
        requireLimit(meterLimit);
        meterLimits.values().forEach(SurveySettings::requireLimit);
        Map<String, Double> named = new LinkedHashMap<>();
        meterLimits.forEach((name, limit) -> named.put(key(name), limit));
        meterLimits = Collections.unmodifiableMap(named);
    }

    private static void requireLimit(double limit) {
        if (!(limit > 0.0 && limit < 0.2)) {
            throw new VarwrightException(Message.METER_LIMIT, Place.NOWHERE, Dimension.digits(100.0 * limit, 4) + " %");
        }
    }

    private static String key(String instrument) {
        return instrument.strip().toLowerCase(Locale.ROOT);
    }

    /**
     * Usual settings around a meter.
     *
     * @param standard decides the reference temperature: 25 °C (IEEE Std 18-1992), 20 °C (IEC 60871-1; from memory, unchecked)
     * @param meterLimit limits of error of the meter, as a part of the reading, such as 0.01
     * @throws VarwrightException {@code METER_LIMIT} where that is not above 0 and below 0.2
     */
    public static SurveySettings of(Standard standard, double meterLimit) {
        return of(standard, meterLimit, Map.of());
    }

    /**
     * The same with some instruments better or worse than the others.
     *
     * @param meterLimits limits of error by the instrument's name in the readings
     */
    public static SurveySettings of(Standard standard, double meterLimit, Map<String, Double> meterLimits) {
        return new SurveySettings(
                meterLimit,
                meterLimits,
                POLYPROPYLENE_PER_KELVIN,
                standard == Standard.IEEE ? 25.0 : 20.0,
                0.005,
                0.003,
                0.015,
                Priors.USUAL);
    }

    /** What a survey is judged with, in a few words, such as {@code ±1 % (bridge 4 ±0.3 %), 25 °C}. */
    public String words() {
        return "±" + percent(meterLimit)
                + String.join(
                        "",
                        meterLimits.entrySet().stream()
                                .map(e -> " (" + e.getKey() + " ±" + percent(e.getValue()) + ")")
                                .toList())
                + ", " + Dimension.digits(referenceCelsius, 3) + " °C";
    }

    private static String percent(double part) {
        return Dimension.digits(100.0 * part, 3) + " %";
    }

    /** Limits of error of an instrument, as a part of the reading. */
    public double meterLimit(Optional<String> instrument) {
        return instrument
                .map(name -> meterLimits.getOrDefault(key(name), meterLimit))
                .orElse(meterLimit);
    }

    /**
     * Standard uncertainty of one reading, as a part of it: limits of error taken as a rectangular distribution (JCGM 100:2008, 4.3.7). It is one
     * error for all readings of the instrument, so that repeating a reading doesn't make it smaller.
     */
    public double meterSigma(Optional<String> instrument) {
        return meterLimit(instrument) / Math.sqrt(3.0);
    }

    double factorySigma() {
        return Math.sqrt(factoryLimit * factoryLimit / 3.0 + ageing * ageing);
    }
}
