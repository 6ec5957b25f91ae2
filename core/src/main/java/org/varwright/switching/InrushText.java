package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.bank.Vocabulary;
import org.varwright.basis.CheckText;
import org.varwright.page.Enumeration;
import org.varwright.page.Page;
import org.varwright.quantity.Dimension;

/** {@link Inrush} as a page of text. */
public final class InrushText {
    private InrushText() {}

    public static String of(Inrush inrush) {
        Page page = new Page();
        Vocabulary words = inrush.bank().words();
        page.text(inrush.bank().name() + ": " + (inrush.opened().isPresent() ? "opening" : "inrush"));
        page.text("Counted at " + Dimension.VOLTAGE.format(inrush.lineVolts())
                + " line to line. Angles: 0° where the voltage of phase A to " + words.ground()
                + " rises through zero, 90° at its peak.");
        if (!inrush.cases().isEmpty()) {
            table(page, inrush);
            inrush.cases().forEach(c -> details(page, c));
        }
        inrush.opened().ifPresent(o -> opened(page, o));
        inrush.outrush().ifPresent(o -> outrush(page, o));
        if (!inrush.remedies().isEmpty()) {
            page.heading("What would bring it inside");
            inrush.remedies().forEach(r -> remedy(page, r, words));
        }
        if (!inrush.checks().isEmpty()) {
            page.heading("Checks");
            CheckText.add(page, inrush.checks());
        }
        if (!inrush.gaps().isEmpty()) {
            page.heading("Not in the bank file");
            inrush.gaps()
                    .forEach(g -> page.item(
                            "  - ", Enumeration.of(g.subjects()) + ": " + g.missing() + ". " + sentence(g.effect())));
        }
        page.heading("Bear in mind");
        InrushNotes.of(inrush).forEach(n -> page.item("  - ", n));
        return page.print();
    }

    private static void table(Page page, Inrush inrush) {
        page.heading("Closing");
        List<List<String>> rows = new ArrayList<>();
        for (InrushCase c : inrush.cases()) {
            rows.add(List.of(
                    c.stage(),
                    c.formula().map(f -> amperes(f.peakAmperes())).orElse("?"),
                    c.formula().map(f -> hertz(f.hertz())).orElse("?"),
                    c.main().map(m -> amperes(m.peakAmperes())).orElse("?"),
                    c.main().map(m -> hertz(m.hertz())).orElse("?"),
                    c.largest().map(m -> amperes(m.peakAmperes())).orElse("?"),
                    highest(c).map(InrushText::times).orElse("?"),
                    onto(inrush, c)));
        }
        page.table(
                List.of("closing", "formula", "at", "in time", "at", "apart", "voltage", "already on"),
                rows,
                1,
                2,
                3,
                4,
                5,
                6);
        page.text("  formula: poles together at the peak of the voltage, no damping. in time: simulated, poles together"
                + " at the worst angle. apart: the worst found with poles up to a quarter cycle apart. voltage: highest"
                + " across a leg, over its peak in service.");
    }

    private static String onto(Inrush inrush, InrushCase c) {
        if (c.alreadyOn().isEmpty()) {
            return "none";
        }
        boolean all = c.alreadyOn().size() == inrush.bank().stages().size() - 1
                && c.alreadyOn().size() > 2;
        return all ? "all others" : Enumeration.of(c.alreadyOn());
    }

    private static Optional<Double> highest(InrushCase c) {
        return c.closings().stream().map(Closing::legPerPeak).max(Double::compare);
    }

    private static void details(Page page, InrushCase c) {
        page.blank().text(c.title());
        c.otherEnd()
                .ifPresent(
                        o -> page.row(
                                "bus at 1 µH/m",
                                amperes(o.peakAmperes()) + " at " + hertz(o.hertz())
                                        + " by formula (above: at 0.65 µH/m); in time both ends are run and the worse is shown"));
        switch (c.simulation()) {
            case Simulation.NotPossible n -> page.row("in time", n.why());
            case Simulation.Given g -> closing(page, "at the angles asked for", g.closing());
            case Simulation.Worst w -> {
                closing(page, "together, most current", w.together());
                if (w.togetherVolts().legPerPeak() > w.together().legPerPeak() * 1.005) {
                    volts(page, "together, most voltage", w.togetherVolts());
                }
                closing(page, "apart, most current", w.apart());
                if (w.apartVolts().legPerPeak() > w.apart().legPerPeak() * 1.005) {
                    volts(page, "apart, most voltage", w.apartVolts());
                }
            }
        }
    }

    private static void closing(Page page, String label, Closing c) {
        page.row(
                label,
                amperes(c.peakAmperes()) + " in pole " + c.pole() + " at " + hertz(c.hertz()) + ", I²t "
                        + Dimension.digits(c.ampereSquaredSeconds(), 3) + " A²s in one cycle; leg " + c.leg() + " "
                        + times(c.legPerPeak()) + " (" + Dimension.VOLTAGE.format(c.legVolts(), 3) + "); bus drops by "
                        + Dimension.digits(100.0 * c.busDip(), 2) + " % and reaches " + times(c.busPerPeak())
                        + "; poles at "
                        + degrees(c)
                        + bus(c));
    }

    private static void volts(Page page, String label, Closing c) {
        page.row(
                label,
                "leg " + c.leg() + " " + times(c.legPerPeak()) + " (" + Dimension.VOLTAGE.format(c.legVolts(), 3)
                        + "), " + amperes(c.peakAmperes()) + "; poles at " + degrees(c) + bus(c));
    }

    /** Which end of the bus's inductance it was, where it was not the usual one. */
    private static String bus(Closing c) {
        return c.busHenriesPerMetre() > Path.LEAST_PER_METRE ? "; bus at 1 µH/m" : "";
    }

    private static String degrees(Closing c) {
        List<String> parts = new ArrayList<>();
        for (int p = 0; p < 3; p++) {
            parts.add(String.format(
                    Locale.ROOT,
                    "%s %.0f°",
                    List.of("A", "B", "C").get(p),
                    c.degrees().get(p)));
        }
        return String.join(", ", parts);
    }

    private static void opened(Page page, Opened o) {
        page.heading("Opening");
        page.text(o.stage() + " opens"
                + (o.alreadyOn().isEmpty() ? "" : "; on beside it: " + Enumeration.of(o.alreadyOn()))
                + ". Contacts part at 75°.");
        for (Opened.Step s : o.steps()) {
            page.row(
                    "pole " + s.pole(),
                    (s.conductsAgain()
                                    ? "conducts again at " + times(s.acrossPerPeak()) + " across it, "
                                    : "clears at the zero of its current, ")
                            + Dimension.TIME.format(s.seconds(), 3) + " after the contacts parted");
        }
        for (Opened.Pole p : o.poles()) {
            page.row("across pole " + p.pole(), "up to " + times(p.recoveryPerPeak()) + " the peak line to neutral");
        }
        for (Opened.Leg l : o.legs()) {
            page.row(
                    "leg " + l.leg(),
                    "up to " + times(l.highestPerPeak()) + " its peak in service; at the end "
                            + Dimension.digits(l.leftPerPeak(), 3));
        }
        if (o.restruck()) {
            page.row(
                    "restrike",
                    amperes(o.peakAmperes()) + " at " + hertz(o.hertz()) + "; bus up to " + times(o.busPerPeak()));
        }
    }

    private static void outrush(Page page, Outrush o) {
        page.heading("Outrush into a fault at the bus");
        for (Outrush.StageOutrush s : o.stages()) {
            page.row(
                    s.stage(),
                    amperes(s.formula().peakAmperes()) + " at "
                            + hertz(s.formula().hertz()) + ", "
                            + kiloProduct(s.formula().product()));
        }
        if (!o.without().isEmpty()) {
            page.row(Enumeration.of(o.without()), "not answered: no inductance is known");
        }
        if (!o.stages().isEmpty()) {
            page.row("together", "peaks times frequencies add up to " + kiloProduct(o.product()));
        }
        o.simulatedPeakAmperes()
                .ifPresent(p -> page.row(
                        "in time",
                        amperes(p) + " at " + hertz(o.hertz()) + " in one phase, all phases faulted at once"));
    }

    private static void remedy(Page page, Remedy r, Vocabulary words) {
        page.item(
                "  - ",
                r.title() + ": " + Dimension.INDUCTANCE.format(r.totalHenries(), 3) + " in each phase of the "
                        + words.stage() + ", " + Dimension.INDUCTANCE.format(r.addedHenries(), 3)
                        + " more than now. Then " + amperes(r.peakAmperes()) + " at " + hertz(r.hertz())
                        + " in time, poles together.");
    }

    private static String kiloProduct(double product) {
        return Dimension.CURRENT_FREQUENCY.format(product, 3);
    }

    private static String sentence(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1) + ".";
    }

    static String amperes(double value) {
        return Dimension.CURRENT.format(value, 3);
    }

    static String hertz(double value) {
        return Dimension.FREQUENCY.format(value, 3);
    }

    static String times(double value) {
        return String.format(Locale.ROOT, "× %.2f", value);
    }
}
