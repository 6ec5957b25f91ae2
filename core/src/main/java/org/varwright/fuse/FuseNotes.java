package org.varwright.fuse;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Stage;
import org.varwright.quantity.Dimension;

/** What a person must bear in mind about fuses, in words. */
public final class FuseNotes {
    private FuseNotes() {}

    /** A time of a curve in words. */
    public static String time(FuseTime time) {
        return switch (time.bound()) {
            case ABOUT -> "about " + Dimension.TIME.format(time.seconds(), 2);
            case AT_LEAST -> "after " + Dimension.TIME.format(time.seconds(), 2);
            case AT_MOST -> "within " + Dimension.TIME.format(time.seconds(), 2);
            case LONGER_OR_NEVER -> "not within " + Dimension.TIME.format(time.seconds(), 2) + ", maybe never";
            case NOT_KNOWN -> "not known";
        };
    }

    /** What there is to say of a stage without fuses. */
    public static String unfused(Stage stage) {
        return stage.unit().construction().filter(c -> c.internallyFused()).isPresent()
                ? stage.name()
                        + ": element fuses inside the units, none outside; \"unbalance\" and \"survey\" see those."
                : stage.name() + ": no fuse in the bank file, so nothing is judged there; if it has some, add"
                        + " fuse-types and fuse or line-fuse.";
    }

    public static List<String> cautions(Fuses fuses) {
        List<String> cautions = new ArrayList<>();
        if (fuses.studies().stream()
                .anyMatch(s -> !s.proposals().isEmpty() || s.link().isPresent())) {
            cautions.add("Melting currents of K and T links are those of " + LinkTable.SOURCE.print()
                    + ". Look at the maker's curve before a link is ordered.");
        }
        if (fuses.studies().isEmpty()) {
            return List.of();
        }
        cautions.add(
                "A fuse that has operated tells of a failed unit until readings prove otherwise: measure the unit, and"
                        + " its neighbours, before a new link goes in.");
        cautions.add("A unit behind an operated fuse may be fully charged: every unit gets the stick, terminals to each"
                + " other and to the case.");
        cautions.add("Local codes, the owner's rules, the maker's instructions and the judgement of a licensed or"
                + " authorised person come first.");
        return cautions;
    }
}
