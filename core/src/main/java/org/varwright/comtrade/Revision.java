package org.varwright.comtrade;

/** Edition of IEEE C37.111 by which a record is written. */
public enum Revision {
    C1991(1991),
    C1999(1999),
    C2013(2013);

    private final int year;

    Revision(int year) {
        this.year = year;
    }

    public int year() {
        return year;
    }

    /** The standard's name. */
    public String standard() {
        return switch (this) {
            case C1991 -> "IEEE C37.111-1991";
            case C1999 -> "IEEE C37.111-1999 (IEC 60255-24:2001)";
            case C2013 -> "IEEE C37.111-2013 (IEC 60255-24:2013)";
        };
    }
}
