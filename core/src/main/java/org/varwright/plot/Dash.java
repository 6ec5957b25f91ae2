package org.varwright.plot;

import org.varwright.svg.Tone;

/** How a curve is drawn; the pattern alone tells curves apart, the tone repeats it. */
public enum Dash {
    SOLID("", 1.9, Tone.FIRST),
    DASHED("7 3.5", 1.9, Tone.SECOND),
    DOTTED("1.8 2.6", 2.1, Tone.THIRD),
    DASH_DOT("9 3 2 3", 1.9, Tone.FOURTH),
    LONG_DASH("15 4", 1.7, Tone.FIFTH),
    DASH_DOT_DOT("9 2.6 2 2.6 2 2.6", 1.9, Tone.SIXTH),
    /** A thin full line. */
    FINE("", 0.9, Tone.QUIET),
    /** Marks alone. */
    NONE("", 0.0, Tone.FIRST);

    private static final Dash[] IN_TURN = {SOLID, DASHED, DOTTED, DASH_DOT, LONG_DASH, DASH_DOT_DOT};

    private final String pattern;
    private final double width;
    private final Tone tone;

    Dash(String pattern, double width, Tone tone) {
        this.pattern = pattern;
        this.width = width;
        this.tone = tone;
    }

    /** The pattern of a chart's curve by its number, from 0; after six they start again, so such curves need marks. */
    static Dash inTurn(int number) {
        return IN_TURN[number % IN_TURN.length];
    }

    static int patterns() {
        return IN_TURN.length;
    }

    String pattern() {
        return pattern;
    }

    double width() {
        return width;
    }

    Tone tone() {
        return tone;
    }
}
