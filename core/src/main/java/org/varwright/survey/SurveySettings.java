package org.varwright.survey;

import org.varwright.bank.Standard;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;

/**
 * What a survey is judged with. Every value is shown in the result.
 *
 * @param meterLimit limits of error of the meter, as a part of the reading, such as 0.01
 * @param capacitancePerKelvin temperature coefficient of capacitance [1/K]
 * @param referenceCelsius temperature that nameplates and factory values are for [°C]
 * @param factoryLimit limits of error of a factory value, as a part of it
 * @param ageing standard deviation of what a healthy unit drifts after its factory value, as a part of it
 * @param batchSpread standard deviation of healthy units of one type about their median, where few mates tell, as a part of it
 * @param priors what is believed of a unit before it is measured
 */
public record SurveySettings(
        double meterLimit,
        double capacitancePerKelvin,
        double referenceCelsius,
        double factoryLimit,
        double ageing,
        double batchSpread,
        Priors priors) {
    /** Polypropylene film, about −0.03 %/K (handbook figure; that of a whole unit is from memory, unchecked). */
    public static final double POLYPROPYLENE_PER_KELVIN = -3e-4;

    public SurveySettings {
        if (!(meterLimit > 0.0 && meterLimit < 0.2)) {
            throw new VarwrightException(
                    Message.METER_LIMIT, Place.NOWHERE, Dimension.digits(100.0 * meterLimit, 4) + " %");
        }
    }

    /**
     * Usual settings around a meter.
     *
     * @param standard decides the reference temperature: 25 °C (IEEE Std 18-1992), 20 °C (IEC 60871-1; from memory, unchecked)
     * @param meterLimit limits of error of the meter, as a part of the reading, such as 0.01
     * @throws VarwrightException {@code METER_LIMIT} where that is not above 0 and below 0.2
     */
    public static SurveySettings of(Standard standard, double meterLimit) {
        return new SurveySettings(
                meterLimit,
                POLYPROPYLENE_PER_KELVIN,
                standard == Standard.IEEE ? 25.0 : 20.0,
                0.005,
                0.003,
                0.015,
                Priors.USUAL);
    }

    /** Standard uncertainty of one reading: limits of error taken as a rectangular distribution (JCGM 100:2008, 4.3.7). */
    public double meterSigma() {
        return meterLimit / Math.sqrt(3.0);
    }

    double factorySigma() {
        return Math.sqrt(factoryLimit * factoryLimit / 3.0 + ageing * ageing);
    }
}
