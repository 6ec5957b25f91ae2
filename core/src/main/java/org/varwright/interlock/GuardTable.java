package org.varwright.interlock;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/** Which rules' guards hold, by one table look-up for each byte of a state in which any guard asks for a bit. */
final class GuardTable {
    private static final int VALUES = 256;

    private final int words;
    private final int[] plantShifts;
    private final int[] accessShifts;
    private final long[][] plantTables;
    private final long[][] accessTables;

    GuardTable(List<Rule> rules) {
        words = Math.max(1, (rules.size() + 63) / 64);
        plantShifts = askedBytes(rules, false);
        accessShifts = askedBytes(rules, true);
        plantTables =
                Arrays.stream(plantShifts).mapToObj(s -> table(rules, false, s)).toArray(long[][]::new);
        accessTables =
                Arrays.stream(accessShifts).mapToObj(s -> table(rules, true, s)).toArray(long[][]::new);
    }

    private static int[] askedBytes(List<Rule> rules, boolean access) {
        return IntStream.range(0, 8)
                .map(b -> b * 8)
                .filter(s -> rules.stream().anyMatch(r -> byteOf(mask(r, access), s) != 0))
                .toArray();
    }

    private long[] table(List<Rule> rules, boolean access, int shift) {
        long[] table = new long[VALUES * words];
        for (int value = 0; value < VALUES; value++) {
            for (int r = 0; r < rules.size(); r++) {
                Rule rule = rules.get(r);
                if ((value & byteOf(mask(rule, access), shift)) == byteOf(value(rule, access), shift)) {
                    table[value * words + r / 64] |= 1L << (r & 63);
                }
            }
        }
        return table;
    }

    private static int byteOf(long word, int shift) {
        return (int) (word >>> shift) & (VALUES - 1);
    }

    private static long mask(Rule rule, boolean access) {
        return access ? rule.guard().accessMask() : rule.guard().plantMask();
    }

    private static long value(Rule rule, boolean access) {
        return access ? rule.guard().accessValue() : rule.guard().plantValue();
    }

    int words() {
        return words;
    }

    /** Rules whose guards hold, one bit each, into {@code out}. */
    void look(long plant, long access, long[] out) {
        Arrays.fill(out, -1L);
        for (int b = 0; b < plantTables.length; b++) {
            and(plantTables[b], byteOf(plant, plantShifts[b]), out);
        }
        for (int b = 0; b < accessTables.length; b++) {
            and(accessTables[b], byteOf(access, accessShifts[b]), out);
        }
    }

    private void and(long[] table, int value, long[] out) {
        int at = value * words;
        for (int w = 0; w < words; w++) {
            out[w] &= table[at + w];
        }
    }
}
