package org.varwright.comtrade;

/** Where the times of the samples come from. */
public enum TimeBasis {
    /** The sampling rates; the time stamps agree or are not there. */
    RATES,
    /** The sampling rates, with gaps that only the time stamps show. */
    RATES_WITH_GAPS,
    /** The time stamps: the record states no rate. */
    STAMPS,
    /** Neither rates nor stamps: sample numbers, one second apart. No time or frequency may be taken from them. */
    NONE
}
