package org.varwright.plot;

/** A mark at a point with a text, joined by a thin line where the text must stand away from it. */
public record Callout(double x, double y, String text, Marker marker) {
    public static Callout at(double x, double y, String text) {
        return new Callout(x, y, text, Marker.RING);
    }

    public static Callout at(Point point, String text) {
        return at(point.x(), point.y(), text);
    }

    public Callout with(Marker given) {
        return new Callout(x, y, text, given);
    }
}
