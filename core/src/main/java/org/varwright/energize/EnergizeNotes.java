package org.varwright.energize;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;

/** What to look at once the bank is on, in words. */
final class EnergizeNotes {
    private EnergizeNotes() {}

    static List<String> after15Minutes(Bank bank) {
        List<String> notes = new ArrayList<>();
        notes.add(
                "Read every phase current and every sensor again: the same as right after closing. A phase that dropped has lost a"
                        + " unit; one that rose has shorted sections.");
        if (bank.stages().stream().anyMatch(s -> s.fuse().isPresent())) {
            notes.add("Look at every unit fuse from outside: none operated, no tube or indicator down.");
        }
        notes.add(
                "Look and listen from outside: no leak, no bulged case, no smoke or smell, no crackling, no loose hum.");
        notes.add(
                "Infrared through the window, if there is one: joints and cases of one phase like those of the others.");
        if (bank.stages().stream().anyMatch(EnergizeNotes::hasNeutral)) {
            notes.add("An " + bank.words().ungrounded()
                    + " neutral is a live conductor while the bank is on: keep away from it.");
        }
        return notes;
    }

    static List<String> after8Hours(Bank bank) {
        List<String> notes = new ArrayList<>();
        notes.add(
                "Case temperature: above 55 °C look for the cause, never above 65 °C (TM 5-683 / MO-116, 1995, ch. 2).");
        notes.add(
                "Currents and sensors once more, with the bus voltage at that moment; scale the expected values by it.");
        notes.add("Bus voltage at the lightest load: not above the system's highest, no unit above 110 % of rated.");
        if (bank.control().isPresent()) {
            notes.add(
                    "The controller: back in automatic, number of operations since energization as the load explains, no hunting.");
        }
        notes.add("Write the sensors' readings down as the healthy values: the next alarm is judged against them.");
        return notes;
    }

    static List<String> cautions(Bank bank) {
        List<String> notes = new ArrayList<>();
        notes.add("Close one " + bank.words().stage()
                + " at a time, from outside the enclosure, doors shut, and read it before the next.");
        notes.add(
                bank.control()
                        .filter(c -> c.recloseDelaySeconds().isPresent())
                        .map(c -> "After opening wait at least "
                                + org.varwright.quantity.Dimension.TIME.format(
                                        c.recloseDelaySeconds().orElse(0.0))
                                + " before closing again: the units hold charge.")
                        .orElse(
                                "After opening wait until the units have discharged before closing again; the file gives no reclosing delay."));
        notes.add(
                "Expected values hold at the fundamental. Harmonics raise the current, not the kvar; a true-rms meter shows them.");
        notes.add(
                "A value in its band does not prove a unit healthy; a value outside it is a reason to open the switch again.");
        return notes;
    }

    private static boolean hasNeutral(Stage stage) {
        return stage.connection().hasFloatingNeutral();
    }
}
