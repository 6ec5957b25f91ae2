package org.varwright.interlock;

import java.util.List;

/**
 * Which two facts can be so at once, at most (ILK-11).
 *
 * <p><b>Model.</b> All pairs of the start; then, for each rule of which any two conditions can be so at once, what it makes with what it makes, and with whatever
 * can be so together with each of its conditions and is left as it is. Charges and keys with several copies are left out. What is no pair here is never so in any
 * reachable state; what is a pair may be or not.
 */
final class Pairs {
    private final long[][] with = new long[Facts.ALL][Facts.WORDS];

    Pairs(Scheme scheme, State start) {
        long charges = scheme.layout().chargeMask();
        long[] is = Facts.of(start);
        is[0] |= charges;
        is[1] |= charges;
        for (int f = 0; f < Facts.ALL; f++) {
            if (Facts.has(is, f)) {
                with[f] = is.clone();
            }
        }
        List<Compiled> rules = scheme.rules().stream().map(Compiled::new).toList();
        boolean grew = true;
        while (grew) {
            grew = false;
            for (Compiled rule : rules) {
                long[] together = Facts.full();
                boolean applies = true;
                for (int g = 0; g < Facts.ALL && applies; g++) {
                    if (Facts.has(rule.guard, g)) {
                        applies = Facts.containsAll(with[g], rule.guard);
                        Facts.keep(together, with[g]);
                    }
                }
                if (applies) {
                    // a guard with no conditions leaves everything that is so anywhere
                    Facts.keep(together, rule.leaves);
                    for (int w = 0; w < Facts.WORDS; w++) {
                        together[w] |= rule.makes[w];
                    }
                    grew |= add(rule.makes, together);
                }
            }
        }
    }

    /** A rule as facts: what it asks for, what it makes, what it leaves as it is. */
    private static final class Compiled {
        private final long[] guard;
        private final long[] makes;
        private final long[] leaves = Facts.full();

        Compiled(Rule rule) {
            Guard effect = rule.effect();
            guard = Facts.of(rule.guard());
            makes = Facts.of(effect);
            leaves[0] &= ~effect.plantMask();
            leaves[1] &= ~effect.plantMask();
            leaves[2] &= ~effect.accessMask();
            leaves[3] &= ~effect.accessMask();
        }
    }

    private boolean add(long[] makes, long[] together) {
        boolean grew = false;
        for (int e = 0; e < Facts.ALL; e++) {
            if (!Facts.has(makes, e)) {
                continue;
            }
            for (int w = 0; w < Facts.WORDS; w++) {
                long more = together[w] & ~with[e][w];
                if (more == 0) {
                    continue;
                }
                grew = true;
                with[e][w] |= more;
                for (long left = more; left != 0; left &= left - 1) {
                    with[w * 64 + Long.numberOfTrailingZeros(left)][e >> 6] |= 1L << (e & 63);
                }
            }
        }
        return grew;
    }

    /** Whether a guard can hold together with another, as far as pairs say. */
    boolean canHold(Guard one, Guard other) {
        long[] facts = Facts.of(one);
        long[] others = Facts.of(other);
        for (int f = 0; f < Facts.ALL; f++) {
            if (Facts.has(facts, f) && !(Facts.containsAll(with[f], others) && Facts.containsAll(with[f], facts))) {
                return false;
            }
        }
        return true;
    }
}
