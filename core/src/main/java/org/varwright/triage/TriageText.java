package org.varwright.triage;

import java.util.List;
import java.util.Locale;
import org.varwright.page.Enumeration;
import org.varwright.page.Page;

/** A {@link Triage} as text to be printed and taken along. */
public final class TriageText {
    private TriageText() {}

    /**
     * The page.
     *
     * @param explain whether every sentence names its source
     */
    public static String of(Triage triage, boolean explain) {
        Page page = new Page()
                .heading(triage.bank().name() + ": "
                        + triage.question().symptom().words())
                .text("About " + Enumeration.of(triage.stages(), "or")
                        + ". Nothing here says that anything is dead: count it as live.");
        page.heading("May it run on?")
                .text(answer(triage.runOn()) + " " + triage.runOn().text());
        triage.runOn().conditions().forEach(c -> page.item("  [ ] ", c));
        triage.runOn().basis().forEach(b -> statement(page, "  basis: ", b, true));
        page.heading("What it may be");
        int n = 1;
        for (Cause cause : triage.causes()) {
            page.item(
                    String.format(Locale.ROOT, "%2d. ", n++),
                    cause.text() + " (" + cause.rank().code() + ")");
            cause.speaksFor().forEach(s -> statement(page, "      for:     ", s, explain));
            cause.speaksAgainst().forEach(s -> statement(page, "      against: ", s, explain));
        }
        checks(page, "Find out first, at a desk", triage, Inspection.From.DESK);
        checks(page, "Then at the bank, every door shut", triage, Inspection.From.OUTSIDE);
        checks(page, "Only with the bank isolated and proven dead", triage, Inspection.From.INSIDE);
        if (!triage.access().isEmpty()) {
            page.item(
                    "  Order of work: ",
                    "varwright isolate BANK "
                            + String.join(
                                    " ",
                                    triage.access().stream()
                                            .map(a -> "--access \"" + a + "\"")
                                            .toList()));
        }
        list(page, "Fetch", triage.fetch());
        list(page, "Bring", triage.bring().stream().map(Bring::text).toList());
        list(page, "Not known", triage.unknown());
        if (!explain) {
            page.blank()
                    .text(
                            "Causes and their order are common practice, not counted anywhere; --explain names the source of each sentence.");
        }
        return page.print();
    }

    private static String answer(RunOn runOn) {
        return switch (runOn.answer()) {
            case YES_WITH -> "YES, WITH WHAT FOLLOWS.";
            case NO -> "NO.";
            case UNDECIDED -> "UNDECIDED.";
        };
    }

    private static void statement(Page page, String lead, Statement statement, boolean explain) {
        page.item(lead, statement.text() + (explain ? " [" + statement.source().print() + "]" : ""));
    }

    private static void checks(Page page, String title, Triage triage, Inspection.From from) {
        list(
                page,
                title,
                triage.firstChecks().stream()
                        .filter(i -> i.from() == from)
                        .map(i -> i.text()
                                + (i.compartments().isEmpty()
                                        ? ""
                                        : " Behind " + Enumeration.of(i.compartments()) + "."))
                        .toList());
    }

    private static void list(Page page, String title, List<String> items) {
        if (!items.isEmpty()) {
            page.heading(title);
            items.forEach(i -> page.item("  [ ] ", i));
        }
    }
}
