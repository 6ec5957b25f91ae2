package org.varwright.survey;

/**
 * The capacitance of one leg as its units read.
 *
 * @param stage name of the stage
 * @param leg name of the leg
 * @param capacitanceFarads between its ends [F]
 * @param deviation from the mean of the stage's legs that should be equal, as a part of it
 * @param units in the leg
 * @param assumed units that were not measured or could not be judged, and were taken at their reference
 */
public record LegSurvey(String stage, String leg, double capacitanceFarads, double deviation, int units, int assumed) {}
