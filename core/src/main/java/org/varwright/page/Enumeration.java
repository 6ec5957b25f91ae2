package org.varwright.page;

import java.util.List;

/** Lists in a sentence. */
public final class Enumeration {
    private Enumeration() {}

    /** {@code a}, {@code a and b}, {@code a, b and c}; {@code nothing} where there is nothing. */
    public static String of(List<String> items) {
        return of(items, "and");
    }

    /**
     * The same with another last word.
     *
     * @param last what stands before the last item, such as {@code or}
     */
    public static String of(List<String> items, String last) {
        return switch (items.size()) {
            case 0 -> "nothing";
            case 1 -> items.getFirst();
            default -> String.join(", ", items.subList(0, items.size() - 1)) + " " + last + " " + items.getLast();
        };
    }
}
