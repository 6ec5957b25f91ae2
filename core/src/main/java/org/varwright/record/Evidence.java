package org.varwright.record;

/**
 * A value in the record that a finding rests on.
 *
 * @param channel its name
 * @param seconds when, from the first sample [s]
 * @param value in {@code unit}, primary
 * @param unit SI
 * @param what it is, such as {@code rms} or {@code peak}
 */
public record Evidence(String channel, double seconds, double value, String unit, String what) {}
