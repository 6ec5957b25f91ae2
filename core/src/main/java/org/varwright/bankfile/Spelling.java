package org.varwright.bankfile;

import java.util.List;
import org.varwright.bank.Isolation;
import org.varwright.bank.Standard;

/** Keys and words of the format in the vocabulary of a standard. */
record Spelling(Standard standard) {
    String key(String ieee) {
        return standard == Standard.IEC ? Words.IEC_KEYS.getOrDefault(ieee, ieee) : ieee;
    }

    /** A word such as {@code wye-ungrounded} or {@code grounding-switch}. */
    String word(String ieee) {
        if (standard == Standard.IEEE) {
            return ieee;
        }
        String[] parts = ieee.split("-", -1);
        for (int i = 0; i < parts.length; i++) {
            parts[i] = switch (parts[i]) {
                case "wye" -> "star";
                case "grounded" -> "earthed";
                case "ungrounded" -> "unearthed";
                case "grounding" -> "earthing";
                case "stage" -> "step";
                default -> parts[i];
            };
        }
        return String.join("-", parts);
    }

    String conductor(String name) {
        return standard == Standard.IEC && name.equals(Isolation.GROUND) ? "earth" : name;
    }

    List<String> conductors(List<String> names) {
        return names.stream().map(this::conductor).toList();
    }
}
