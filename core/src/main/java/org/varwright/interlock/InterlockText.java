package org.varwright.interlock;

import java.util.List;
import java.util.Locale;
import org.varwright.page.Page;

/** {@link Interlocking} as text for people: 100 columns, to be printed and taken to site. */
public final class InterlockText {
    private InterlockText() {}

    public static String of(Interlocking interlocking) {
        Verification verification = interlocking.verification();
        Page page = new Page();
        page.heading("Interlocking  " + interlocking.bank().name());
        page.text(summary(verification));
        page.blank();
        for (Property property : Property.values()) {
            page.item(
                    "  " + mark(verification.outcome(property)),
                    property.id() + ": " + property.claim(interlocking.bank().words()));
        }
        for (Property property : Property.values()) {
            if (verification.outcome(property) instanceof Verification.Outcome.NotEnforced broken) {
                page.heading("Not enforced: " + property.id());
                page.item("  by rule   ", interlocking.rule(property).orElse(""));
                page.item("  the shortest way there   ", moves(broken.path().size()));
                steps(page, broken.path());
            }
        }
        if (!interlocking.faults().isEmpty()) {
            page.heading("Design faults");
            faults(page, interlocking.faults());
        }
        return page.print();
    }

    /** Design faults, such as those of several banks together. */
    public static String of(List<DesignFault> faults) {
        Page page = new Page();
        faults(page, faults);
        return page.print();
    }

    private static void faults(Page page, List<DesignFault> faults) {
        for (int i = 0; i < faults.size(); i++) {
            DesignFault fault = faults.get(i);
            page.item(
                    String.format(Locale.ROOT, "%2d  ", i + 1),
                    capital(fault.kind().title()) + ". " + fault.text());
            if (!fault.harm().isEmpty()) {
                page.item("    the shortest way to harm   ", moves(fault.harm().size()));
                steps(page, fault.harm());
            }
            for (DesignFault.Remedy remedy : fault.remedies()) {
                page.item(
                        "    to change   ",
                        remedy.text() + " (tried: proven over " + count(remedy.states()) + " states"
                                + (remedy.closes().isEmpty()
                                        ? ""
                                        : ", closes "
                                                + Words.list(remedy.closes().stream()
                                                        .map(Property::id)
                                                        .sorted()
                                                        .toList()))
                                + ")");
            }
            if (fault.remedies().isEmpty()) {
                page.item("    to change   ", "no change of lock is proven to close it; the rule stays");
            }
            page.item("    by rule     ", fault.rule());
        }
    }

    private static String capital(String text) {
        return text.substring(0, 1).toUpperCase(Locale.ROOT) + text.substring(1);
    }

    private static String summary(Verification verification) {
        String explored = count(verification.states()) + " states and " + count(verification.moves())
                + " moves explored, up to " + verification.depth() + " moves deep"
                + (verification.visited() < verification.states()
                        ? " (" + count(verification.visited())
                                + " looked at: what differs only by swapping things that are alike is one)"
                        : "");
        return verification.complete()
                ? explored + ": all that the locks allow, whatever anyone does in whatever order."
                : explored + ": NOT ALL OF THEM. What is not shown broken is undecided, and undecided is not safe.";
    }

    private static String mark(Verification.Outcome outcome) {
        return switch (outcome) {
            case Verification.Outcome.Enforced ignored -> "enforced       ";
            case Verification.Outcome.NotEnforced ignored -> "NOT ENFORCED   ";
            case Verification.Outcome.Undecided ignored -> "UNDECIDED      ";
        };
    }

    static void steps(Page page, List<Step> path) {
        for (int i = 0; i < path.size(); i++) {
            page.item(
                    String.format(Locale.ROOT, "    %2d  ", i + 1),
                    path.get(i).move().text());
        }
    }

    static String moves(int count) {
        return switch (count) {
            case 0 -> "none: the start itself breaks it";
            case 1 -> "1 move";
            default -> count + " moves";
        };
    }

    private static String count(long number) {
        return String.format(Locale.ROOT, "%,d", number).replace(',', ' ');
    }
}
