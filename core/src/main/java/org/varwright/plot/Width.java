package org.varwright.plot;

/** What a picture is laid out for. */
public enum Width {
    /** A page: 170 mm. */
    PAGE(500.0, 170.0),
    /** A narrow screen: 360 px, or a column of 95 mm. */
    PHONE(360.0, 95.25);

    private final double units;
    private final double millimetres;

    Width(double units, double millimetres) {
        this.units = units;
        this.millimetres = millimetres;
    }

    /** Width of the sheet in its own unit. */
    public double units() {
        return units;
    }

    /** Width on paper. */
    public double millimetres() {
        return millimetres;
    }
}
