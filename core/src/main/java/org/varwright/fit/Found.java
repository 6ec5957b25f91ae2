package org.varwright.fit;

/**
 * A plan in numbers.
 *
 * <ul>
 * <li>{@code extra}: lifts beyond those that replace condemned units
 * <li>{@code excess}: how far limits are broken; 0 where all are kept
 * <li>{@code squared}: sum over the stages of the squares of their unbalance, per unit
 * <li>{@code picked}: classes of movable units taken from their places
 * <li>{@code goesTo}: group that each goes to; {@link #OUT} where it is taken out for good
 * <li>{@code slotGroup}: groups that get a spare
 * <li>{@code slotShelf}: class of the spare for each
 * </ul>
 */
final class Found {
    private final int extra;
    private final double excess;
    private final double squared;
    private final int[] picked;
    private final int[] goesTo;
    private final int[] slotGroup;
    private final int[] slotShelf;

    Found(int extra, double excess, double squared, int[] picked, int[] goesTo, int[] slotGroup, int[] slotShelf) {
        this.extra = extra;
        this.excess = excess;
        this.squared = squared;
        this.picked = picked;
        this.goesTo = goesTo;
        this.slotGroup = slotGroup;
        this.slotShelf = slotShelf;
    }

    int extra() {
        return extra;
    }

    double excess() {
        return excess;
    }

    double squared() {
        return squared;
    }

    int[] picked() {
        return picked;
    }

    int[] goesTo() {
        return goesTo;
    }

    int[] slotGroup() {
        return slotGroup;
    }

    int[] slotShelf() {
        return slotShelf;
    }

    static final int OUT = -1;

    /** Whether this is better in limits, then unbalance; equal within rounding is not better. */
    boolean betterThan(double otherExcess, double otherSquared) {
        return better(excess, squared, otherExcess, otherSquared);
    }

    static boolean better(double excess, double squared, double otherExcess, double otherSquared) {
        if (Math.abs(excess - otherExcess) > 1e-9 * Math.max(excess, otherExcess)) {
            return excess < otherExcess;
        }
        return clearlyLess(squared, otherSquared);
    }

    /** Less by more than rounding: 1e-9 of the value, 1e-9 per unit absolute. */
    static boolean clearlyLess(double squared, double otherSquared) {
        return squared < otherSquared * (1.0 - 2e-9) - 1e-18;
    }
}
