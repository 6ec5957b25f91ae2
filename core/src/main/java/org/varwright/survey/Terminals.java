package org.varwright.survey;

import java.util.Locale;
import java.util.Optional;

/** Between which terminals of a three-phase unit a reading was taken, the third one left open. */
public enum Terminals {
    AB,
    BC,
    CA;

    /** Reads {@code A-B}, {@code ab}, {@code A/C}, {@code L1-L2}, {@code A-B third open}; empty where it is none of these. */
    static Optional<Terminals> parse(String written) {
        String text = written.toUpperCase(Locale.ROOT)
                .replace("THIRD OPEN", "")
                .replace("L1", "A")
                .replace("L2", "B")
                .replace("L3", "C")
                .replaceAll("[^A-Z]", "");
        return switch (text) {
            case "AB", "BA" -> Optional.of(AB);
            case "BC", "CB" -> Optional.of(BC);
            case "CA", "AC" -> Optional.of(CA);
            default -> Optional.empty();
        };
    }
}
