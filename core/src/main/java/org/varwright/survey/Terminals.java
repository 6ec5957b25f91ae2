package org.varwright.survey;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Between which terminals of a three-phase unit a reading was taken. */
public enum Terminals {
    /** A and B, C left open; likewise the next two. */
    AB,
    BC,
    CA,
    /** A against B and C joined; likewise the next two. */
    A_REST,
    B_REST,
    C_REST,
    /** A against the neutral terminal; likewise the next two. */
    A_NEUTRAL,
    B_NEUTRAL,
    C_NEUTRAL;

    private static final Pattern LINKED_TO =
            Pattern.compile("\\b([ABC])\\s+(?:LINKED|JOINED|TIED|SHORTED)\\s+TO\\s+([ABC])\\b");

    /** The kind of reading: three of one kind solve the unit. */
    enum Kind {
        THIRD_OPEN,
        REST_JOINED,
        TO_NEUTRAL
    }

    /**
     * What was written, understood.
     *
     * @param terminals the pair
     * @param assumed what had to be assumed; empty where nothing had
     */
    record Understood(Terminals terminals, String assumed) {}

    Kind kind() {
        return switch (this) {
            case AB, BC, CA -> Kind.THIRD_OPEN;
            case A_REST, B_REST, C_REST -> Kind.REST_JOINED;
            case A_NEUTRAL, B_NEUTRAL, C_NEUTRAL -> Kind.TO_NEUTRAL;
        };
    }

    static List<Terminals> of(Kind kind) {
        return switch (kind) {
            case THIRD_OPEN -> List.of(AB, BC, CA);
            case REST_JOINED -> List.of(A_REST, B_REST, C_REST);
            case TO_NEUTRAL -> List.of(A_NEUTRAL, B_NEUTRAL, C_NEUTRAL);
        };
    }

    /** As printed. */
    String words() {
        return switch (this) {
            case AB -> "A-B, third open";
            case BC -> "B-C, third open";
            case CA -> "C-A, third open";
            case A_REST -> "A against B and C joined";
            case B_REST -> "B against C and A joined";
            case C_REST -> "C against A and B joined";
            case A_NEUTRAL -> "A to neutral";
            case B_NEUTRAL -> "B to neutral";
            case C_NEUTRAL -> "C to neutral";
        };
    }

    /**
     * Reads {@code A-B}, {@code ab}, {@code A/C}, {@code L1-L2}, {@code A-B third open}, {@code A-B third linked}, {@code A-BC}, {@code A to B+C},
     * {@code A-N}; empty where it is none of these.
     *
     * <p>{@code third linked} does not say to which of the two: the second one named is taken, and that is said.
     */
    static Optional<Understood> parse(String written) {
        String text = written.toUpperCase(Locale.ROOT)
                .replace("L1", "A")
                .replace("L2", "B")
                .replace("L3", "C");
        Matcher to = LINKED_TO.matcher(text);
        if (to.find()) {
            String single = "ABC".replace(to.group(1), "").replace(to.group(2), "");
            return single.length() == 1 ? plain(rest(single)) : Optional.empty();
        }
        text = text.replaceAll("\\b[ABC]\\s+(LEFT\\s+)?OPEN\\b", " ");
        boolean linked = text.matches(".*\\b(LINKED|JOINED|TIED|SHORTED)\\b.*");
        String letters = text.replaceAll("\\b(THIRD|OPEN|LINKED|JOINED|TIED|SHORTED|AGAINST|AND|TO)\\b", " ")
                .replaceAll("[^A-Z]", "");
        return switch (letters) {
            case "AB" -> linked ? third(A_REST, "C", "B") : plain(AB);
            case "BA" -> linked ? third(B_REST, "C", "A") : plain(AB);
            case "BC" -> linked ? third(B_REST, "A", "C") : plain(BC);
            case "CB" -> linked ? third(C_REST, "A", "B") : plain(BC);
            case "CA" -> linked ? third(C_REST, "B", "A") : plain(CA);
            case "AC" -> linked ? third(A_REST, "B", "C") : plain(CA);
            case "ABC", "ACB", "BCA", "CBA", "CAB", "BAC" -> plain(rest(letters.substring(0, 1)));
            case "AN", "NA" -> plain(A_NEUTRAL);
            case "BN", "NB" -> plain(B_NEUTRAL);
            case "CN", "NC" -> plain(C_NEUTRAL);
            default -> Optional.empty();
        };
    }

    private static Terminals rest(String single) {
        return single.equals("A") ? A_REST : single.equals("B") ? B_REST : C_REST;
    }

    private static Optional<Understood> plain(Terminals terminals) {
        return Optional.of(new Understood(terminals, ""));
    }

    private static Optional<Understood> third(Terminals terminals, String third, String to) {
        return Optional.of(new Understood(terminals, third + " was taken as joined to " + to));
    }
}
