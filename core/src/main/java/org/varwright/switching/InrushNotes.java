package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Vocabulary;

/** What a person must bear in mind about switching, in words. */
final class InrushNotes {
    private InrushNotes() {}

    static List<String> of(Inrush inrush) {
        Vocabulary words = inrush.bank().words();
        List<String> notes = new ArrayList<>();
        if (inrush.opened().isEmpty() && inrush.request().trapped().isEmpty()) {
            notes.add(
                    "Discharged capacitors are taken for granted. Closed on full charge of opposite sign the inrush is"
                            + " twice as large and the voltage reaches up to 3 times its peak: keep the reclosing delay.");
        }
        inrush.cases().stream()
                .filter(c -> c.main().isEmpty())
                .findFirst()
                .ifPresent(c -> notes.add(
                        "A \"?\" is not known and counts as outside every limit until the data are" + " there."));
        inrush.opened()
                .filter(o -> !inrush.request().restrikes().isEmpty() && !o.restruck())
                .ifPresent(o -> notes.add("No pole reached the voltage at which it was to conduct again."));
        inrush.opened()
                .filter(o -> o.restruck() && !(o.peakAmperes() > 0.0))
                .ifPresent(o -> notes.add("A pole conducted again alone: the " + words.stage()
                        + " floats, so that no current flows until a second pole does."));
        inrush.opened()
                .filter(Opened::restruck)
                .ifPresent(
                        o -> notes.add("A pole that clears after a restrike and restrikes again can drive the voltage"
                                + " higher at each turn: not computed."));
        notes.add(
                "Not counted: prestrike, arc voltage, resistance that grows with frequency, surge arresters. Without them"
                        + " currents and voltages come out too high rather than too low.");
        notes.add(
                "A closing that was never computed is no permission to close. The maker's instructions and the owner's"
                        + " rules come first.");
        return notes;
    }
}
