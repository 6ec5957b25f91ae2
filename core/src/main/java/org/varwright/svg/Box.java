package org.varwright.svg;

/** An upright rectangle on a sheet; y grows downwards. */
public record Box(double left, double top, double right, double bottom) {
    public double width() {
        return right - left;
    }

    public double height() {
        return bottom - top;
    }

    public double midX() {
        return (left + right) / 2.0;
    }

    public double midY() {
        return (top + bottom) / 2.0;
    }

    /** Whether they share more than an edge. */
    public boolean overlaps(Box other) {
        return left < other.right && other.left < right && top < other.bottom && other.top < bottom;
    }

    public boolean holds(Box other) {
        return other.left >= left && other.right <= right && other.top >= top && other.bottom <= bottom;
    }

    public boolean holds(double x, double y) {
        return x >= left && x <= right && y >= top && y <= bottom;
    }

    /** Larger by so much on every side. */
    public Box grown(double by) {
        return new Box(left - by, top - by, right + by, bottom + by);
    }

    public Box moved(double dx, double dy) {
        return new Box(left + dx, top + dy, right + dx, bottom + dy);
    }

    /** Whether any of a segment lies inside. */
    public boolean crossedBy(Segment s) {
        return s.within(this).isPresent();
    }
}
