package org.varwright.interlock;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Which rules' guards hold, by one table look-up for each byte of a state in which any guard asks for a bit. */
final class GuardTable {
    private record Byte(boolean access, int shift, long[] rules) {}

    private final int words;
    private final long[][] plantTables;
    private final int[] plantShifts;
    private final long[][] accessTables;
    private final int[] accessShifts;

    GuardTable(List<Rule> rules) {
        words = Math.max(1, (rules.size() + 63) / 64);
        List<Byte> plant = new ArrayList<>();
        List<Byte> access = new ArrayList<>();
        for (int shift = 0; shift < 64; shift += 8) {
            addByte(rules, false, shift, plant);
            addByte(rules, true, shift, access);
        }
        plantTables = plant.stream().map(Byte::rules).toArray(long[][]::new);
        plantShifts = plant.stream().mapToInt(Byte::shift).toArray();
        accessTables = access.stream().map(Byte::rules).toArray(long[][]::new);
        accessShifts = access.stream().mapToInt(Byte::shift).toArray();
    }

    private void addByte(List<Rule> rules, boolean access, int shift, List<Byte> to) {
        boolean asked = rules.stream().anyMatch(r -> (mask(r, access) >>> shift & 0xFF) != 0);
        if (!asked) {
            return;
        }
        long[] table = new long[256 * words];
        for (int value = 0; value < 256; value++) {
            for (int r = 0; r < rules.size(); r++) {
                long mask = mask(rules.get(r), access) >>> shift & 0xFF;
                long wanted = value(rules.get(r), access) >>> shift & 0xFF;
                if ((value & mask) == wanted) {
                    table[value * words + r / 64] |= 1L << (r & 63);
                }
            }
        }
        to.add(new Byte(access, shift, table));
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
            and(plantTables[b], (int) (plant >>> plantShifts[b]) & 0xFF, out);
        }
        for (int b = 0; b < accessTables.length; b++) {
            and(accessTables[b], (int) (access >>> accessShifts[b]) & 0xFF, out);
        }
    }

    private void and(long[] table, int value, long[] out) {
        int at = value * words;
        for (int w = 0; w < words; w++) {
            out[w] &= table[at + w];
        }
    }
}
