package org.varwright.fit;

import java.util.Arrays;

/** A first plan where there are too many to try: places in order, to each the first spare that leaves one for every other place. */
final class Greedy {
    private Greedy() {}

    static Found fill(Puzzle puzzle) {
        int n = puzzle.openPlaces();
        int[] slotGroup = new int[n];
        int[] slotShelf = new int[n];
        int slots = 0;
        for (int g = 0; g < puzzle.groupCount(); g++) {
            for (int i = 0; i < puzzle.open()[g]; i++) {
                slotGroup[slots++] = g;
            }
        }
        int[] left = puzzle.shelf().stream().mapToInt(s -> s.members().size()).toArray();
        StageState[] states = puzzle.states();
        for (int i = 0; i < n; i++) {
            int best = -1;
            int g = slotGroup[i];
            StageState state = states[puzzle.stageOf()[g]];
            for (int s = 0; s < left.length && best < 0; s++) {
                if (left[s] > 0 && puzzle.shelf().get(s).fits()[puzzle.stageOf()[g]]) {
                    left[s]--;
                    best = restFits(puzzle, slotGroup, i + 1, left) ? s : -1;
                    left[s]++;
                }
            }
            if (best < 0) {
                throw new IllegalStateException("no spare for every place");
            }
            left[best]--;
            slotShelf[i] = best;
            int local = puzzle.localOf()[g];
            state.set(local, state.sums[local] + puzzle.shelf().get(best).farads());
        }
        double excess = Arrays.stream(states).mapToDouble(StageState::excess).sum();
        double squared = Arrays.stream(states).mapToDouble(StageState::squared).sum();
        return new Found(0, excess, squared, new int[0], new int[0], slotGroup, slotShelf);
    }

    /** Whether the places from {@code from} on can still be filled: a matching by augmenting paths over single spares. */
    private static boolean restFits(Puzzle puzzle, int[] slotGroup, int from, int[] left) {
        int[][] placesOf = new int[left.length][];
        int[] taken = new int[left.length];
        for (int s = 0; s < left.length; s++) {
            placesOf[s] = new int[left[s]];
        }
        for (int i = from; i < slotGroup.length; i++) {
            if (!augment(puzzle, slotGroup, i, placesOf, taken, new boolean[left.length])) {
                return false;
            }
        }
        return true;
    }

    private static boolean augment(
            Puzzle puzzle, int[] slotGroup, int place, int[][] placesOf, int[] taken, boolean[] seen) {
        int stage = puzzle.stageOf()[slotGroup[place]];
        for (int s = 0; s < taken.length; s++) {
            if (seen[s] || !puzzle.shelf().get(s).fits()[stage]) {
                continue;
            }
            seen[s] = true;
            if (taken[s] < placesOf[s].length) {
                placesOf[s][taken[s]++] = place;
                return true;
            }
            for (int i = 0; i < taken[s]; i++) {
                if (augment(puzzle, slotGroup, placesOf[s][i], placesOf, taken, seen)) {
                    placesOf[s][i] = place;
                    return true;
                }
            }
        }
        return false;
    }
}
