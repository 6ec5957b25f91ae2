package org.varwright.interlock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Stages that can be swapped for one another without anything else changing. Of all states that differ only by such swaps one is visited, and counted as many times
 * as there are of them (ILK-9).
 */
final class Symmetry {
    private static final int MOST_BITS = 30;

    private final List<List<Replica>> classes = new ArrayList<>();
    private final int[][][] bits;
    private final int[][] values;

    /** The state that {@link #settle} came to. */
    long plant;

    long access;

    private Symmetry(List<List<Replica>> found) {
        classes.addAll(found);
        bits = found.stream()
                .map(c -> c.stream()
                        .map(r -> r.bits().stream().mapToInt(Integer::intValue).toArray())
                        .toArray(int[][]::new))
                .toArray(int[][][]::new);
        values = found.stream().map(c -> new int[c.size()]).toArray(int[][]::new);
    }

    /** No two stages are alike. */
    static Symmetry none() {
        return new Symmetry(List.of());
    }

    /** Finds stages that can be swapped: the scheme is the same by name, the rules are the same by bits, and they start alike. */
    static Symmetry of(Scheme scheme) {
        Layout layout = scheme.layout();
        List<String> signature = Renaming.none().signature(scheme.isolation(), scheme.stages());
        List<Replica> left = new ArrayList<>(
                scheme.stages().stream().map(s -> Replica.of(layout, s)).toList());
        Set<Integer> taken = new HashSet<>();
        List<List<Replica>> found = new ArrayList<>();
        while (!left.isEmpty()) {
            Replica first = left.removeFirst();
            List<Replica> alike = new ArrayList<>(List.of(first));
            for (Replica other : left) {
                if (canSwap(scheme, first, other, signature)) {
                    alike.add(other);
                }
            }
            left.removeAll(alike);
            boolean apart = alike.stream().allMatch(r -> r.bits().stream().noneMatch(taken::contains));
            if (alike.size() > 1 && apart && first.bits().size() <= MOST_BITS && disjoint(alike)) {
                alike.forEach(r -> taken.addAll(r.bits()));
                found.add(List.copyOf(alike));
            }
        }
        return new Symmetry(found);
    }

    private static boolean disjoint(List<Replica> alike) {
        Set<Integer> all = new HashSet<>();
        return alike.stream().allMatch(r -> r.bits().stream().allMatch(all::add));
    }

    private static boolean canSwap(Scheme scheme, Replica one, Replica other, List<String> signature) {
        if (one.bits().size() != other.bits().size()
                || one.devices().size() != other.devices().size()
                || one.doors().size() != other.doors().size()
                || one.keys().size() != other.keys().size()) {
            return false;
        }
        for (State state : List.of(scheme.start(), scheme.inService())) {
            if (one.value(state.plant(), state.access()) != other.value(state.plant(), state.access())) {
                return false;
            }
        }
        return Renaming.of(one, other)
                        .signature(scheme.isolation(), scheme.stages())
                        .equals(signature)
                && swappedRules(scheme, one, other).isPresent();
    }

    /** For every rule the one that it becomes when the stages are swapped; empty where there is none for one of them. */
    private static Optional<List<Integer>> swappedRules(Scheme scheme, Replica one, Replica other) {
        record Shape(Guard guard, Guard effect, List<Rule.KeyCount> counted, long switching, long waits) {}
        Map<Shape, Integer> known = new HashMap<>();
        List<Rule> rules = scheme.rules();
        for (int r = 0; r < rules.size(); r++) {
            Rule rule = rules.get(r);
            known.put(new Shape(rule.guard(), rule.effect(), rule.counted(), rule.switching(), rule.waits()), r);
        }
        Swap swap = new Swap(one.bits(), other.bits());
        List<Integer> image = new ArrayList<>();
        for (Rule rule : rules) {
            Integer swapped = known.get(new Shape(
                    swap.of(rule.guard()),
                    swap.of(rule.effect()),
                    rule.counted().stream().map(swap::of).toList(),
                    swap.plant(rule.switching(), 0),
                    swap.plant(rule.waits(), 0)));
            if (swapped == null) {
                return Optional.empty();
            }
            image.add(swapped);
        }
        return Optional.of(image);
    }

    boolean isTrivial() {
        return classes.isEmpty();
    }

    /** Marks every rule that becomes a marked one by swapping. */
    void spread(Scheme scheme, boolean[] marked) {
        for (List<Replica> alike : classes) {
            List<List<Integer>> swaps = alike.stream()
                    .skip(1)
                    .map(r -> swappedRules(scheme, alike.getFirst(), r).orElseThrow())
                    .toList();
            boolean grew = true;
            while (grew) {
                grew = false;
                for (List<Integer> swap : swaps) {
                    for (int r = 0; r < marked.length; r++) {
                        if (marked[r] && !marked[swap.get(r)]) {
                            marked[swap.get(r)] = true;
                            grew = true;
                        }
                    }
                }
            }
        }
    }

    private static int value(int[] of, long plant, long access) {
        int value = 0;
        for (int k = 0; k < of.length; k++) {
            int bit = of[k];
            value |= (int) ((bit < 64 ? plant >>> bit : access >>> bit) & 1) << k;
        }
        return value;
    }

    /** Sorts alike stages by the values of their bits; the state comes to {@link #plant} and {@link #access}. */
    void settle(long fromPlant, long fromAccess) {
        plant = fromPlant;
        access = fromAccess;
        for (int c = 0; c < bits.length; c++) {
            int[] value = values[c];
            boolean sorted = true;
            for (int u = 0; u < value.length; u++) {
                value[u] = value(bits[c][u], fromPlant, fromAccess);
                sorted &= u == 0 || value[u - 1] <= value[u];
            }
            if (!sorted) {
                Arrays.sort(value);
                for (int u = 0; u < value.length; u++) {
                    put(bits[c][u], value[u]);
                }
            }
        }
    }

    private void put(int[] to, int value) {
        for (int k = 0; k < to.length; k++) {
            long set = value >> k & 1;
            if (to[k] < 64) {
                plant = (plant & ~(1L << to[k])) | (set << to[k]);
            } else {
                access = (access & ~(1L << to[k])) | (set << to[k]);
            }
        }
    }

    /** How many states differ from this one only by swaps, itself included. */
    long count(long ofPlant, long ofAccess) {
        long all = 1;
        for (int[][] alike : bits) {
            int[] value = new int[alike.length];
            for (int u = 0; u < value.length; u++) {
                value[u] = value(alike[u], ofPlant, ofAccess);
            }
            Arrays.sort(value);
            // n!/(m1!·m2!·…) as a product of binomials: each stays a whole number
            int same = 0;
            for (int u = 0; u < value.length; u++) {
                same = u > 0 && value[u] == value[u - 1] ? same + 1 : 1;
                all = Math.multiplyExact(all, u + 1) / same;
            }
        }
        return all;
    }
}
