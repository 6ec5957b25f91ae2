package org.varwright.comtrade;

/** The samples of a record one after the other, whatever their format; as many bytes are kept as one of them needs. */
interface Rows {
    /** Goes back before the first sample. */
    void rewind();

    /** Goes to the next sample; false where there is none. */
    boolean next();

    /** Number of the sample that was gone to; NaN where missing. */
    double number();

    /** Its time stamp in units of the record; NaN where missing. */
    double stamp();

    /**
     * Its values.
     *
     * @param numbers where the analog numbers go, as written; NaN where missing
     * @param states where the states go, 64 of them in a number, the first in the lowest bit; all 0 before
     */
    void read(double[] numbers, long[] states);
}
