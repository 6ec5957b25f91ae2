package org.varwright.energize;

import java.util.ArrayList;
import java.util.List;
import org.varwright.basis.CheckText;
import org.varwright.basis.Verdict;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link Energize} as text for people: 100 columns, to be printed and taken to site. */
public final class EnergizeText {
    private EnergizeText() {}

    public static String of(Energize energize) {
        Page page = new Page();
        page.heading("First energization  " + energize.bank().name());
        BusVolts bus = energize.bus();
        page.text("Bus voltage: A-B " + volts(bus.ab()) + ", B-C " + volts(bus.bc()) + ", C-A " + volts(bus.ca())
                + ". At another voltage every value below changes in proportion.");
        Uncertainty u = energize.uncertainty();
        page.text("Bands allow for: voltage " + percent(u.busVolts()) + ", ammeter " + percent(u.ammeter())
                + ", measured capacitance " + percent(u.capacitance()) + ", sensor " + percent(u.sensor())
                + ", nameplate units their tolerance.");
        units(page, energize);
        page.heading("Expected currents");
        List<List<String>> rows = new ArrayList<>();
        for (ExpectedCurrent c : energize.currents()) {
            rows.add(List.of(
                    c.name(),
                    c.line() ? "line" : "leg",
                    amperes(c.amperes().expected()),
                    amperes(c.amperes().low()) + " to " + amperes(c.amperes().high()),
                    "________"));
        }
        page.table(List.of("where", "", "expected", "band", "measured"), rows, 2);
        if (!energize.sensors().isEmpty()) {
            sensors(page, energize);
        }
        if (!energize.comparison().isEmpty()) {
            comparison(page, energize);
        }
        page.heading("Checks");
        CheckText.add(page, energize.checks());
        list(page, "After 15 minutes", "  [ ] ", energize.after15Minutes());
        list(page, "After 8 hours", "  [ ] ", energize.after8Hours());
        list(page, "Cautions", "  - ", energize.cautions());
        return page.print();
    }

    /** Which units were measured; nothing where none was: the bases say what is assumed then. */
    private static void units(Page page, Energize energize) {
        long read = energize.units().stream().filter(CountedUnit::isRead).count();
        if (read == 0) {
            return;
        }
        page.text(read + " of " + energize.units().size() + " units count as measured.");
        for (Origin from : List.of(Origin.BANK_FILE, Origin.NAMEPLATE)) {
            List<String> names = energize.units().stream()
                    .filter(u -> u.from() == from)
                    .map(CountedUnit::position)
                    .toList();
            if (!names.isEmpty()) {
                page.text("Not measured, counted by " + from.words() + ": " + String.join(", ", names) + ".");
            }
        }
    }

    private static void sensors(Page page, Energize energize) {
        page.heading("Expected sensor readings");
        List<List<String>> rows = new ArrayList<>();
        for (ExpectedSensor s : energize.sensors()) {
            Dimension dimension = s.senses().dimension();
            Band read = s.read();
            rows.add(List.of(
                    s.name(),
                    s.secondary().isPresent() ? "at the relay" : "primary",
                    dimension.format(read.expected()),
                    dimension.format(read.low()) + " to " + dimension.format(read.high()),
                    "________"));
        }
        page.table(List.of("sensor", "", "expected", "band", "measured"), rows, 2);
    }

    private static void comparison(Page page, Energize energize) {
        page.heading("Measured against expected");
        List<List<String>> rows = new ArrayList<>();
        for (Comparison c : energize.comparison()) {
            Dimension dimension = c.unit().equals("V") ? Dimension.VOLTAGE : Dimension.CURRENT;
            rows.add(List.of(
                    c.verdict() == Verdict.PASS ? "ok" : "FAIL",
                    c.name(),
                    dimension.format(c.measured()),
                    dimension.format(c.band().low()) + " to "
                            + dimension.format(c.band().high()),
                    c.words()));
        }
        page.table(List.of("", "where", "measured", "band", ""), rows, 2);
        for (Explanation e : energize.explanations()) {
            page.item("  " + e.stage() + ": ", e.sentence());
        }
    }

    private static void list(Page page, String heading, String lead, List<String> items) {
        page.heading(heading);
        items.forEach(item -> page.item(lead, item));
    }

    private static String volts(double value) {
        return Dimension.VOLTAGE.format(value);
    }

    private static String amperes(double value) {
        return Dimension.CURRENT.format(value);
    }

    private static String percent(double part) {
        return Dimension.FRACTION.format(part);
    }
}
