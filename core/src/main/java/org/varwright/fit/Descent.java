package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;

/**
 * Better plans by exchanging two units at a time, from a plan that the exhaustive search found, as long as an exchange helps. Finds good plans with many
 * lifts; proves nothing.
 */
final class Descent {
    private final Puzzle puzzle;
    private final StageState[] states;
    private final List<Item> items = new ArrayList<>();
    private long examined;

    /** A unit: where it came from and where it is, a group or {@link Found#OUT}. */
    private static final class Item {
        final int klass;
        final boolean spare;
        final int home;
        final double farads;
        final boolean[] fits;
        int group;

        Item(int klass, boolean spare, int home, double farads, boolean[] fits) {
            this.klass = klass;
            this.spare = spare;
            this.home = home;
            this.farads = farads;
            this.fits = fits;
            this.group = home;
        }

        int extraLifts() {
            return spare || group == home ? 0 : group == Found.OUT ? 2 : 1;
        }
    }

    Descent(Puzzle puzzle) {
        this.puzzle = puzzle;
        this.states = puzzle.states();
        for (int k = 0; k < puzzle.movables().size(); k++) {
            Puzzle.Movable m = puzzle.movables().get(k);
            for (int i = 0; i < m.members().size(); i++) {
                items.add(new Item(k, false, m.group(), m.farads(), m.fits()));
            }
        }
        for (int s = 0; s < puzzle.shelf().size(); s++) {
            Puzzle.Shelf shelf = puzzle.shelf().get(s);
            for (int i = 0; i < shelf.members().size(); i++) {
                items.add(new Item(s, true, Found.OUT, shelf.farads(), shelf.fits()));
            }
        }
    }

    /** Plans evaluated so far. */
    long examined() {
        return examined;
    }

    /**
     * The plan that no single exchange betters.
     *
     * @param from a plan that fills every place
     * @param stopWhenKept whether to stop as soon as every limit is kept
     * @param mostExtra extra lifts allowed
     */
    Found run(Found from, boolean stopWhenKept, int mostExtra) {
        place(from);
        double excess = from.excess();
        double squared = from.squared();
        boolean better = true;
        while (better && !(stopWhenKept && excess == 0.0)) {
            better = false;
            int bestA = -1;
            int bestB = -1;
            for (int a = 0; a < items.size(); a++) {
                for (int b = a + 1; b < items.size(); b++) {
                    if (!exchangeable(items.get(a), items.get(b))) {
                        continue;
                    }
                    exchange(items.get(a), items.get(b));
                    examined++;
                    if (extraLifts() <= mostExtra) {
                        double s = squared();
                        double e = excess > 0.0 || Found.clearlyLess(s, squared) ? excess() : Double.MAX_VALUE;
                        if (Found.better(e, s, excess, squared)) {
                            excess = e;
                            squared = s;
                            bestA = a;
                            bestB = b;
                        }
                    }
                    exchange(items.get(a), items.get(b));
                }
            }
            if (bestA >= 0) {
                exchange(items.get(bestA), items.get(bestB));
                better = true;
            }
        }
        return found(excess, squared);
    }

    private void place(Found from) {
        for (int i = 0; i < from.picked().length; i++) {
            move(first(from.picked()[i], false), from.goesTo()[i]);
        }
        for (int i = 0; i < from.slotGroup().length; i++) {
            move(first(from.slotShelf()[i], true), from.slotGroup()[i]);
        }
    }

    private Item first(int klass, boolean spare) {
        return items.stream()
                .filter(i -> i.klass == klass && i.spare == spare && i.group == i.home)
                .findFirst()
                .orElseThrow();
    }

    private boolean exchangeable(Item a, Item b) {
        return a.group != b.group
                && a.farads != b.farads
                && (b.group == Found.OUT || a.fits[puzzle.stageOf()[b.group]])
                && (a.group == Found.OUT || b.fits[puzzle.stageOf()[a.group]]);
    }

    private void exchange(Item a, Item b) {
        int groupA = a.group;
        int groupB = b.group;
        a.group = groupB;
        b.group = groupA;
        recompute(groupA);
        recompute(groupB);
    }

    private void move(Item item, int group) {
        int before = item.group;
        item.group = group;
        recompute(before);
        recompute(group);
    }

    /** Sums a group afresh: no rounding creeps in. */
    private void recompute(int group) {
        if (group == Found.OUT) {
            return;
        }
        double movable = 0.0;
        for (Puzzle.Movable m : puzzle.movables()) {
            if (m.group() == group) {
                movable += m.farads() * m.members().size();
            }
        }
        double sum = Math.max(0.0, puzzle.kept()[group] - movable);
        sum = sum < 1e-9 * movable ? 0.0 : sum;
        for (Item item : items) {
            if (item.group == group) {
                sum += item.farads;
            }
        }
        states[puzzle.stageOf()[group]].set(puzzle.localOf()[group], sum);
    }

    private int extraLifts() {
        int sum = 0;
        for (Item item : items) {
            sum += item.extraLifts();
        }
        return sum;
    }

    private double squared() {
        double sum = 0.0;
        for (StageState state : states) {
            sum += state.squared();
        }
        return sum;
    }

    private double excess() {
        double sum = 0.0;
        for (StageState state : states) {
            sum += state.excess();
        }
        return sum;
    }

    private Found found(double excess, double squared) {
        List<Item> moved =
                items.stream().filter(i -> !i.spare && i.group != i.home).toList();
        List<Item> fitted =
                items.stream().filter(i -> i.spare && i.group != Found.OUT).toList();
        return new Found(
                extraLifts(),
                excess,
                squared,
                moved.stream().mapToInt(i -> i.klass).toArray(),
                moved.stream().mapToInt(i -> i.group).toArray(),
                fitted.stream().mapToInt(i -> i.group).toArray(),
                fitted.stream().mapToInt(i -> i.klass).toArray());
    }
}
