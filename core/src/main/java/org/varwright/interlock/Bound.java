package org.varwright.interlock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToIntFunction;

/**
 * A cost that no way from a state to what is needed can undercut (ILK-10).
 *
 * <p><b>Model.</b> A fact that is needed and not so must be made so by one of the rules that make it, so whatever all of these ask for is needed before. Each
 * group of bits that change together and hold a needed fact costs at least its cheapest rule. Charges that come by themselves and keys with several copies are
 * left out, which only lowers it. Consistent: a move makes facts of one group, and what that group still needed was so already.
 */
final class Bound {
    private final long[] needed;
    private final long[][] before;
    private final boolean[] possible;
    private final int[] group;
    private final int[] groupCost;
    private final long[] seen = new long[Facts.WORDS];
    private final long[] open = new long[Facts.WORDS];
    private final boolean[] counted;

    Bound(Scheme scheme, Needs needs, ToIntFunction<Move> cost) {
        needed = Facts.of(needs.guard);
        before = new long[Facts.ALL][];
        possible = new boolean[Facts.ALL];
        int[] joined = new int[2 * 64];
        Arrays.setAll(joined, i -> i);
        List<long[]> made = new ArrayList<>();
        for (Rule rule : scheme.rules()) {
            long[] guard = Facts.of(rule.guard());
            long[] makes = Facts.of(rule.effect());
            int first = -1;
            for (int f = 0; f < Facts.ALL; f++) {
                if (!Facts.has(makes, f)) {
                    continue;
                }
                if (Facts.has(guard, f)) {
                    makes[f >> 6] &= ~(1L << (f & 63));
                    continue;
                }
                possible[f] = true;
                if (before[f] == null) {
                    before[f] = Facts.full();
                }
                Facts.keep(before[f], guard);
                first = first < 0 ? bit(f) : first;
                join(joined, first, bit(f));
            }
            made.add(makes);
        }
        group = new int[joined.length];
        groupCost = new int[joined.length];
        Arrays.fill(groupCost, Integer.MAX_VALUE);
        counted = new boolean[joined.length];
        for (int b = 0; b < joined.length; b++) {
            group[b] = root(joined, b);
        }
        for (int r = 0; r < made.size(); r++) {
            int price = cost.applyAsInt(scheme.rules().get(r).move());
            for (int f = 0; f < Facts.ALL; f++) {
                if (Facts.has(made.get(r), f)) {
                    int of = group[bit(f)];
                    groupCost[of] = Math.min(groupCost[of], price);
                }
            }
        }
    }

    private static int bit(int fact) {
        return (fact >> 7) * 64 + (fact & 63);
    }

    private static int root(int[] joined, int bit) {
        int at = bit;
        while (joined[at] != at) {
            at = joined[at];
        }
        return at;
    }

    private static void join(int[] joined, int a, int b) {
        joined[root(joined, b)] = root(joined, a);
    }

    /** The bound from a state; −1 where what is needed can't be made at all. */
    int of(State state) {
        long[] is = Facts.of(state);
        int total = 0;
        Arrays.fill(seen, 0);
        Arrays.fill(counted, false);
        for (int w = 0; w < Facts.WORDS; w++) {
            open[w] = needed[w] & ~is[w];
        }
        boolean more = true;
        while (more) {
            more = false;
            for (int w = 0; w < Facts.WORDS; w++) {
                while (open[w] != 0) {
                    int low = Long.numberOfTrailingZeros(open[w]);
                    open[w] &= open[w] - 1;
                    int fact = w * 64 + low;
                    seen[w] |= 1L << low;
                    if (!possible[fact]) {
                        return -1;
                    }
                    int of = group[bit(fact)];
                    if (!counted[of]) {
                        counted[of] = true;
                        total += groupCost[of];
                    }
                    for (int v = 0; v < Facts.WORDS; v++) {
                        open[v] |= before[fact][v] & ~is[v] & ~seen[v];
                    }
                    more = true;
                }
            }
        }
        return total;
    }
}
