package org.varwright.bankfile;

import java.util.Locale;
import java.util.Optional;

/** Finds the known word that somebody probably meant. */
public final class Nearest {
    private static final int LONGEST = 80;

    private Nearest() {}

    /** {@code maybe "rating"; } or nothing, ready to stand in front of what is allowed. */
    public static String hint(String written, Iterable<String> known) {
        return to(written, known).map(word -> "maybe \"" + word + "\"; ").orElse("");
    }

    /** The closest word, if at most a third of its letters differ and no other is as close: a wrong guess is worse than none. */
    static Optional<String> to(String written, Iterable<String> known) {
        if (written.length() > LONGEST) {
            return Optional.empty();
        }
        String wanted = written.toLowerCase(Locale.ROOT);
        Optional<String> best = Optional.empty();
        int least = Integer.MAX_VALUE;
        for (String word : known) {
            if (word.length() > LONGEST) {
                continue;
            }
            int distance = distance(wanted, word.toLowerCase(Locale.ROOT));
            if (distance < least) {
                least = distance;
                boolean close = distance <= Math.max(1, Math.max(word.length(), wanted.length()) / 3);
                best = close ? Optional.of(word) : Optional.empty();
            } else if (distance == least) {
                best = Optional.empty();
            }
        }
        return best;
    }

    /** Edits that turn one word into the other: a letter more, less or other, or two neighbours swapped. */
    static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            d[i][0] = i;
        }
        for (int j = 0; j <= b.length(); j++) {
            d[0][j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            for (int j = 1; j <= b.length(); j++) {
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(Math.min(d[i - 1][j], d[i][j - 1]) + 1, d[i - 1][j - 1] + change);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
