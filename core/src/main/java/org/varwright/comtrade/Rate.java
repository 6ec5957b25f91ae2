package org.varwright.comtrade;

/**
 * One line of sampling rates, as written.
 *
 * @param hertz samples a second; 0 where only the time stamps tell
 * @param lastSample number of the last sample at this rate
 */
public record Rate(double hertz, long lastSample) {}
