package org.varwright.isolation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.Vocabulary;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;

/** A {@link Plan} as text for people: 100 columns, to be printed and taken to site, a box to tick for every step. */
public final class IsolationText {
    private static final String INDENT = "          ";
    private static final int BRIEF = 24;

    private final Sheet page = new Sheet();
    private final Vocabulary words;
    private final Phrases phrases;
    private String place = "";
    private Map<String, ConductorState> shown = Map.of();

    private IsolationText(Bank bank) {
        words = bank.words();
        phrases = new Phrases(bank);
    }

    public static String of(Bank bank, List<String> access, Plan plan) {
        IsolationText text = new IsolationText(bank);
        switch (plan) {
            case Plan.Planned planned -> text.order(planned.order());
            case Plan.Refused refused -> text.refused(bank, access, refused);
            case Plan.Undecided undecided -> text.undecided(bank, access, undecided);
        }
        return text.page.text();
    }

    private void refused(Bank bank, List<String> access, Plan.Refused refused) {
        page.line("NO ORDER OF WORK  " + bank.name() + ": " + Phrases.list(access));
        page.wrapped("Refused: ", refused.reason() + ".");
        if (!refused.wayToHarm().isEmpty()) {
            page.blank();
            page.line("The shortest way in which it would hurt someone (never to be done):");
            int n = 1;
            for (Move move : refused.wayToHarm()) {
                page.wrapped(String.format(Locale.ROOT, "%4d  ", n++), move.text());
            }
            page.wrapped("      ", refused.harm());
        }
        for (Fault hole : refused.holes()) {
            page.wrapped("  - ", hole.text() + ": " + hole.how());
        }
    }

    private void undecided(Bank bank, List<String> access, Plan.Undecided undecided) {
        page.line("UNDECIDED  " + bank.name() + ": " + Phrases.list(access));
        page.wrapped(
                "",
                "Given up after " + undecided.limit()
                        + " states: whether there is a safe way is not known. This is no permission and no order of work.");
    }

    private void order(OrderOfWork order) {
        page.line("ORDER OF WORK  " + phrases.bankLabel());
        order.bank().site().ifPresent(site -> page.line("Site      " + site));
        page.wrapped(
                "Access    ",
                Phrases.list(order.access().stream().map(phrases::compartment).toList()));
        page.line("Steps     " + order.in().size() + " in, " + order.back().size() + " back");
        page.line("Date ____________  Person in charge ______________________  Second person ______________________");
        page.blank();
        page.line("CAUTIONS");
        order.cautions().forEach(c -> page.wrapped("  ! ", c));
        if (!order.responsibilities().isEmpty()) {
            page.blank();
            page.line("NO LOCK AND NO SWITCH DOES THIS: PEOPLE DO");
            order.responsibilities()
                    .forEach(r ->
                            page.wrapped("  ! ", r.text() + (r.property().isEmpty() ? "" : " (" + r.property() + ")")));
        }
        page.blank();
        page.line("[ ] tick   (2) a second person confirms   STOP hold point   lock/rule: what makes sure of it");
        way("WAY IN", order.in());
        way("WAY BACK", order.back());
        faults(order);
        page.blank();
        page.wrapped(
                "",
                "Cheapest way by the cost of its moves (" + order.cost() + " in, " + order.costBack()
                        + " back), proven over "
                        + order.statesExplored()
                        + " states looked at; every state and move on it keeps every property except"
                        + " those listed above as people's.");
    }

    private void way(String title, List<OrderStep> steps) {
        page.blank();
        page.rule();
        page.line(title);
        place = "";
        shown = Map.of();
        for (OrderStep step : steps) {
            if (!step.where().equals(place)) {
                place = step.where();
                page.blank();
                page.wrapped("", Phrases.capital(place), "    ");
            }
            step(step);
        }
    }

    private void step(OrderStep step) {
        String marks = (step.secondPerson() ? " (2)" : "") + (step.holdPoint() ? " STOP" : "");
        page.wrapped(
                String.format(Locale.ROOT, "[ ] %3d   ", step.n()),
                kind(step.kind()) + marks + ": " + step.text(),
                INDENT);
        step.keys().forEach(k -> page.wrapped(INDENT + "key " + k.key() + ": ", k.from() + " -> " + k.to()));
        items(step.items());
        if (!step.expected().isEmpty()) {
            page.wrapped(INDENT + "expect: ", step.expected() + ". If not: " + step.ifNot() + ".");
        }
        step.challenge().ifPresent(c -> {
            page.wrapped(INDENT + "say:    ", c.say());
            page.wrapped(INDENT + "answer: ", c.answer());
        });
        page.wrapped(INDENT + "why:    ", step.why() + ". [" + step.enforcedBy().code() + "]");
        if (!step.conductors().equals(shown)) {
            shown = step.conductors();
            page.wrapped(INDENT + "NOW:    ", phrases.state(step.conductors()));
        }
    }

    private String kind(OrderStep.Kind kind) {
        return switch (kind) {
            case GROUND -> words.ground().toUpperCase(Locale.ROOT);
            case UNGROUND -> "TAKE OFF";
            case MOVE, LOOK, HOLD, TEST, DISCHARGE, SHORT, LOCK_ON, LOCK_OFF, COUNT, ENERGIZE, CONFIRM ->
                kind.code().toUpperCase(Locale.ROOT);
        };
    }

    /** Items with a box each, in the order given; as many side by side as the longest of a run of short or long ones allows. */
    private void items(List<String> items) {
        int from = 0;
        while (from < items.size()) {
            boolean brief = items.get(from).length() <= BRIEF;
            int to = from;
            while (to < items.size() && (items.get(to).length() <= BRIEF) == brief) {
                to++;
            }
            rows(items.subList(from, to));
            from = to;
        }
    }

    private void rows(List<String> items) {
        int longest = items.stream().mapToInt(String::length).max().orElse(1);
        int columns = Math.max(1, (Sheet.COLUMNS - INDENT.length()) / (longest + 6));
        for (int row = 0; row < items.size(); row += columns) {
            StringBuilder line = new StringBuilder();
            for (String item : items.subList(row, Math.min(items.size(), row + columns))) {
                line.append(String.format(Locale.ROOT, "[ ] %-" + longest + "s  ", item));
            }
            page.wrapped(INDENT, line.toString().stripTrailing(), INDENT + "    ");
        }
    }

    private void faults(OrderOfWork order) {
        page.blank();
        page.rule();
        page.line("ONE THING WRONG: the step that shows it before a hand could touch");
        Map<String, List<String>> keys = new LinkedHashMap<>();
        order.faults().stream()
                .filter(f -> f.kind() == Fault.Kind.SECOND_KEY)
                .forEach(f ->
                        keys.computeIfAbsent(f.how(), h -> new ArrayList<>()).add(f.what()));
        for (Fault fault : order.faults()) {
            List<String> alike = keys.getOrDefault(fault.how(), List.of());
            if (fault.kind() == Fault.Kind.SECOND_KEY && !alike.getFirst().equals(fault.what())) {
                continue;
            }
            String text = fault.kind() == Fault.Kind.SECOND_KEY
                    ? "there is a second copy of " + (alike.size() == 1 ? "" : "one of the ") + Phrases.keys(alike)
                    : fault.text();
            String at = fault.caughtAtStep().isPresent()
                    ? String.format(
                            Locale.ROOT, "step %3d", fault.caughtAtStep().getAsInt())
                    : "no harm ";
            page.wrapped("  " + at + "  ", text + ": " + fault.how());
        }
        page.wrapped(
                "  ",
                "Two things wrong at once are not covered. " + Phrases.capital(words.ground())
                        + "s, shorts and personal locks are there for those.");
    }
}
