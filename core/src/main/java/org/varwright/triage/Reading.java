package org.varwright.triage;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.varwright.basis.Source;
import org.varwright.unbalance.Candidate;
import org.varwright.unbalance.Locate;

/** What a relay reading says for and against a cause. */
final class Reading {
    private Reading() {}

    /** The cause with the reading's evidence and the rank that follows from it. */
    static Cause weighed(Cause cause, Locate locate) {
        double own = locate.candidates().stream()
                .filter(c -> matches(cause.id(), c))
                .mapToDouble(Candidate::probability)
                .sum();
        if (!isAbout(cause.id())) {
            return cause;
        }
        List<Statement> speaksFor = new ArrayList<>();
        List<Statement> against = new ArrayList<>();
        Source source = new Source(
                "UNB-6, " + locate.basis().source().text(),
                locate.basis().source().standing());
        if (!locate.isExplained()) {
            String text = "no single or double failure comes near the reading of "
                    + locate.sighting().sensor();
            (cause.id().equals("sensor") ? speaksFor : against).add(new Statement(text, source));
        } else if (own > 0.0) {
            Candidate best = locate.candidates().stream()
                    .filter(c -> matches(cause.id(), c))
                    .findFirst()
                    .orElseThrow();
            speaksFor.add(new Statement(
                    String.format(
                            Locale.ROOT,
                            "the reading of %s fits %s (%.0f of 100 over all such)",
                            locate.sighting().sensor(),
                            best.words(),
                            100.0 * own),
                    source));
        } else {
            against.add(new Statement(
                    "the reading of " + locate.sighting().sensor() + " fits it less than 1 in 100", source));
        }
        boolean first = locate.isExplained() ? own >= 0.5 : cause.id().equals("sensor");
        boolean last = locate.isExplained() ? own < 0.05 : !cause.id().equals("sensor");
        speaksFor.addAll(cause.speaksFor());
        against.addAll(cause.speaksAgainst());
        Cause.Rank rank = first ? Cause.Rank.LIKELY : last ? Cause.Rank.RARE : Cause.Rank.POSSIBLE;
        return new Cause(cause.id(), cause.text(), rank, speaksFor, against, cause.checks());
    }

    private static boolean isAbout(String cause) {
        return List.of("unit-failed", "unit-fuse", "phase-open", "sensor", "inherent")
                .contains(cause);
    }

    private static boolean matches(String cause, Candidate candidate) {
        List<String> kinds =
                candidate.parts().stream().map(Candidate.Part::kind).toList();
        return switch (cause) {
            case "unit-failed" ->
                kinds.contains("sections-shorted") || kinds.contains("elements-out") || kinds.contains("unit-shorted");
            case "unit-fuse" -> kinds.contains("unit-out");
            case "phase-open" -> kinds.contains("phase-open");
            case "sensor", "inherent" -> kinds.isEmpty();
            default -> false;
        };
    }
}
