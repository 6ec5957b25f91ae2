package org.varwright.bankfile;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.varwright.problem.Message;
import org.varwright.problem.Place;

/** What a name may look like, and that it stands once. */
final class Names {
    private Names() {}

    /** Whether a text is short and plain enough; a name has no slash either, because a slash parts a position's name. */
    static boolean check(Tree.Scalar scalar, String text, int longest, boolean isName, Findings findings) {
        if (text.isEmpty()) {
            findings.error(Message.NAME_CHARACTER, scalar.place(), "", "nothing");
            return false;
        }
        if (text.length() > longest) {
            findings.error(
                    Message.NAME_TOO_LONG, scalar.place(), String.valueOf(text.length()), String.valueOf(longest));
            return false;
        }
        Optional<String> unwanted = unwanted(text, isName);
        unwanted.ifPresent(what -> findings.error(Message.NAME_CHARACTER, scalar.place(), Shown.of(text), what));
        return unwanted.isEmpty();
    }

    private static Optional<String> unwanted(String text, boolean isName) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean lineBreak = !isName && (c == '\n' || c == '\r' || c == '\t');
            if (Shown.isInvisible(c) && !lineBreak) {
                return Optional.of("the invisible character U+" + hex(c));
            }
            if (Shown.isHalfACharacter(text, i)) {
                return Optional.of("half a character (U+" + hex(c) + ")");
            }
            if (isName && c == '/') {
                return Optional.of("a slash");
            }
        }
        return Optional.empty();
    }

    private static String hex(char c) {
        String digits = Integer.toHexString(c).toUpperCase(Locale.ROOT);
        return "0".repeat(4 - digits.length()) + digits;
    }

    /** Reports names that stand twice, and those that a tired eye takes for one another. */
    static <T> void unique(List<Item<T>> items, String key, String kind, Function<T, String> name, Findings findings) {
        Map<String, Place> exact = new HashMap<>();
        Map<String, String> alike = new HashMap<>();
        for (Item<T> item : items) {
            String own = name.apply(item.value());
            Place place = findings.place(item.path() + "." + key);
            Place first = exact.putIfAbsent(own, place);
            if (first != null) {
                findings.error(Message.DUPLICATE_NAME, place, kind, Shown.of(own), String.valueOf(first.line()));
                continue;
            }
            String similar = alike.putIfAbsent(own.toLowerCase(Locale.ROOT).replace(" ", ""), own);
            if (similar != null) {
                findings.warning(Message.NAMES_ALIKE, place, Shown.of(similar), Shown.of(own));
            }
        }
    }
}
