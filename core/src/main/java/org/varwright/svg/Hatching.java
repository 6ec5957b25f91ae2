package org.varwright.svg;

/** Patterns of lines in a box, so that areas differ without colour. */
public final class Hatching {
    private Hatching() {}

    /** Rising lines at so many units from one another, as path data; one line at least. */
    public static String of(Box box, double apart) {
        StringBuilder data = new StringBuilder();
        double reach = box.width() + box.height();
        double first = reach < 2.0 * apart ? reach / 2.0 : apart;
        for (double d = first; d < reach; d += apart) {
            // from the left or lower edge to the upper or right edge
            double x1 = box.left() + Math.max(0.0, d - box.height());
            double y1 = box.top() + Math.min(d, box.height());
            double x2 = box.left() + Math.min(d, box.width());
            double y2 = box.top() + Math.max(0.0, d - box.width());
            data.append('M').append(Sheet.at(x1, y1)).append('L').append(Sheet.at(x2, y2));
        }
        return data.toString();
    }

    /** Rising and falling lines. */
    public static String crossed(Box box, double apart) {
        StringBuilder data = new StringBuilder(of(box, apart));
        double reach = box.width() + box.height();
        double first = reach < 2.0 * apart ? reach / 2.0 : apart;
        for (double d = first; d < reach; d += apart) {
            double x1 = box.right() - Math.max(0.0, d - box.height());
            double y1 = box.top() + Math.min(d, box.height());
            double x2 = box.right() - Math.min(d, box.width());
            double y2 = box.top() + Math.max(0.0, d - box.width());
            data.append('M').append(Sheet.at(x1, y1)).append('L').append(Sheet.at(x2, y2));
        }
        return data.toString();
    }
}
