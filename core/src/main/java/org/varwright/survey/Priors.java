package org.varwright.survey;

/**
 * What is believed of one unit and its reading before it is measured, in a bank that is being surveyed because something may be wrong. Common practice,
 * no source; a fleet's own figures are better.
 *
 * @param sectionsShorted some sections are shorted
 * @param elementsOut some internal element fuses have operated (internally fused units only)
 * @param leadsOpen the leads made no contact
 * @param wrongRange a factor of ten, a thousand or a million
 * @param neighbourConnected other units still connected
 * @param wrongTerminals a three-phase unit measured between other terminals than reckoned with
 * @param fitsNothing something else is wrong with the reading
 * @param next each further section or element, as a part of the one before
 */
public record Priors(
        double sectionsShorted,
        double elementsOut,
        double leadsOpen,
        double wrongRange,
        double neighbourConnected,
        double wrongTerminals,
        double fitsNothing,
        double next) {
    public static final Priors USUAL = new Priors(0.02, 0.02, 0.01, 0.01, 0.02, 0.02, 0.002, 0.25);
}
