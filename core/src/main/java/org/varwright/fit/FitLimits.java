package org.varwright.fit;

/** Limits and tolerances of the fit. */
final class FitLimits {
    /** Continuous rms voltage of a unit over rated: IEEE Std 18; IEC 60871-1 1.10 U_N (12 h in 24 h). */
    static final double VOLTS_PER_RATED = 1.10;
    /** Legs of three phases apart, largest over smallest: IEC 60871-1, from memory, unchecked: a warning only. */
    static final double LEGS_APART = 1.08;
    /** Rated voltages that differ by less are the same on a nameplate: rounding such as 7.96 kV and 7.967 kV. */
    static final double SAME_VOLTS = 0.002;
    /** Nameplate capacitances that differ by less are the same type: rounding of kvar and kV on the nameplate. */
    static final double SAME_FARADS = 0.01;
    /** A spare heavier by more than this part asks for a look at rack and lifting gear. */
    static final double HEAVIER = 0.10;
    /** Relative rounding below which two values count as equal. */
    static final double ROUNDING = 1e-12;

    private FitLimits() {}
}
