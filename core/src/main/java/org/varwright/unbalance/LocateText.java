package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link Locate} as text for people: 100 columns, to be printed and taken to site. */
public final class LocateText {
    private LocateText() {}

    public static String of(Locate locate) {
        Dimension dimension = locate.senses().dimension();
        Page page = new Page();
        page.heading("What failed?  " + locate.bank().name());
        page.text(locate.sighting().sensor() + " read "
                + dimension.format(locate.sighting().magnitude())
                + (locate.sighting().primary() ? " primary" : " at the relay")
                + (locate.sighting().degrees().isPresent()
                        ? String.format(
                                Locale.ROOT,
                                " at %.0f°",
                                locate.sighting().degrees().getAsDouble())
                        : ", angle not known")
                + ".");
        if (!locate.isExplained()) {
            page.blank()
                    .text(
                            "UNDECIDED. No single failure and no pair of failures gives this reading. Look at the sensor, its ratio and"
                                    + " wiring, and at the voltages; more than two places may have failed.");
        } else {
            List<List<String>> rows = new ArrayList<>();
            for (Candidate candidate : locate.candidates()) {
                rows.add(List.of(
                        likely(candidate.probability()),
                        dimension.format(candidate.sensor().magnitude() * locate.ratio()),
                        String.format(Locale.ROOT, "%.0f°", candidate.sensor().degrees()),
                        candidate.words()));
            }
            page.heading("Candidates").table(List.of("likely", "would show", "at", "what"), rows, 0, 1, 2);
        }
        page.heading("Measure next");
        int n = 1;
        for (String measurement : locate.nextMeasurements()) {
            page.item("  " + n++ + ". ", measurement);
        }
        page.heading("Bear in mind");
        locate.notes().forEach(note -> page.item("  - ", note));
        return page.print();
    }

    /** Never "100 %": what was not thought of is not among the candidates. */
    private static String likely(double probability) {
        return probability > 0.99 ? "> 99 %" : String.format(Locale.ROOT, "%.0f", 100.0 * probability) + " %";
    }
}
