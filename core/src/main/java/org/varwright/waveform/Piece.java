package org.varwright.waveform;

/**
 * Samples that follow each other at one pace.
 *
 * @param from index of the first
 * @param to index behind the last
 * @param stepSeconds from one to the next [s]; 0 for a single sample
 */
public record Piece(int from, int to, double stepSeconds) {
    public int size() {
        return to - from;
    }

    /** Samples a second; 0 for a single sample. */
    public double rate() {
        return stepSeconds > 0.0 ? 1.0 / stepSeconds : 0.0;
    }
}
