package org.varwright.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;
import org.varwright.bank.Vocabulary;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;
import org.varwright.isolation.Fault;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Plan;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Facts.Fact;
import org.varwright.report.document.Block.Notice.Weight;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;
import org.varwright.report.document.StepLine;
import org.varwright.report.document.StepLine.Items;

/** The order of work in and back, each a sheet of its own, with what else goes with it. */
final class OrderSections {
    private static final String IN = "Order of work: the way in";
    private static final String BACK = "Order of work: the way back";

    /** So many items that end alike are printed in short. */
    private static final int LONG_RUN = 6;

    private OrderSections() {}

    static Section in(Bank bank, Optional<Plan> plan) {
        if (plan.isEmpty()) {
            return Section.absent(IN, "No way in was asked for in this job. Open no door by this report.");
        }
        return switch (plan.get()) {
            case Plan.Planned(OrderOfWork order) -> wayIn(bank, order);
            case Plan.Refused refused -> refused(refused);
            case Plan.Undecided(int limit) ->
                new Section(
                        IN,
                        Section.PageStart.RUN_ON,
                        List.of(new Block.Notice(
                                Weight.CAUTION,
                                "CAUTION: UNDECIDED. There is no order of work.",
                                List.of("The search was given up after " + Values.count(limit)
                                        + " states. Whether there is a safe way in is not known. Do not go in by this"
                                        + " report."))));
        };
    }

    static Section back(Bank bank, Optional<Plan> plan) {
        if (plan.isPresent() && plan.get() instanceof Plan.Planned(OrderOfWork order)) {
            return new Section(
                    BACK,
                    Section.PageStart.NEW_PAGE,
                    List.of(
                            new Block.Paragraph(
                                    "Begin when everyone is locked off and every count is closed. Do the steps in"
                                            + " this order, tick and sign each. If one can\u2019t be done as written, stop."),
                            new Block.Steps(order.back().stream()
                                    .map(step -> line(bank.words(), step, ""))
                                    .toList())));
        }
        return Section.absent(
                BACK, "There is no order of work back, because there is none in. Energize nothing by this report.");
    }

    /** What the order of work leaves to people, and which single fault is shown by which step. */
    static Optional<Section> faults(Optional<Plan> plan) {
        if (plan.isEmpty() || !(plan.get() instanceof Plan.Planned(OrderOfWork order))) {
            return Optional.empty();
        }
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph(
                "The order of work was gone through once more with each single thing wrong. The step"
                        + " named is where it shows before a hand could touch."));
        blocks.add(new Block.Table(
                "",
                List.of(Column.left("If this is wrong", 42), Column.left("Step", 12), Column.left("How it shows", 46)),
                faultRows(order.faults())));
        return Optional.of(new Section("One thing wrong", Section.PageStart.RUN_ON, blocks));
    }

    /** Faults that show in the same way at the same step share a row. */
    private static List<Row> faultRows(List<Fault> faults) {
        Map<Showing, List<String>> alike = new LinkedHashMap<>();
        for (Fault fault : faults) {
            String step = fault.caughtAtStep().isPresent()
                    ? Integer.toString(fault.caughtAtStep().getAsInt())
                    : fault.harms() ? "NONE" : "not needed";
            alike.computeIfAbsent(new Showing(step, fault.how()), s -> new ArrayList<>())
                    .add(fault.text());
        }
        List<Row> rows = new ArrayList<>();
        alike.forEach((showing, texts) -> rows.add(new Row(List.of(
                new Cell.Text(String.join("; ", texts)),
                new Cell.Strong(showing.step()),
                new Cell.Text(showing.how())))));
        return rows;
    }

    /** Where and how a fault shows. */
    private record Showing(String step, String how) {}

    private static Section wayIn(Bank bank, OrderOfWork order) {
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Block.Paragraph("Access to " + String.join(", ", order.access()) + ". Proven: "
                + Values.count(order.statesExplored())
                + " states were looked at and no cheaper way keeps everyone safe. Do the steps in this order, tick and sign"
                + " each. If one can\u2019t be done as written, or shows something else, stop and leave it safe."));
        List<String> people = order.responsibilities().stream()
                .map(r -> r.text() + (r.property().isEmpty() ? "" : " (" + r.property() + ")"))
                .toList();
        if (!people.isEmpty()) {
            blocks.add(new Block.Notice(Weight.CAUTION, "CAUTION: no lock does this, you do", people));
        }
        if (!order.cautions().isEmpty()) {
            blocks.add(new Block.Bullets(order.cautions()));
        }
        blocks.add(new Block.Steps(order.in().stream()
                .map(step -> line(bank.words(), step, " Minimum wait over: now prove dead."))
                .toList()));
        return new Section(IN, Section.PageStart.NEW_PAGE, blocks);
    }

    private static Section refused(Plan.Refused refused) {
        List<String> why = new ArrayList<>();
        why.add(refused.reason());
        if (!refused.wayToHarm().isEmpty()) {
            why.add("The shortest way to harm: "
                    + String.join(
                            "; ", refused.wayToHarm().stream().map(Move::text).toList())
                    + (refused.harm().isEmpty() ? "." : ". That would break: " + refused.harm() + "."));
        }
        refused.holes().forEach(h -> why.add("Nothing would show this: " + h.text() + ". " + h.how()));
        why.add("Do not go in by this report.");
        return new Section(
                IN,
                Section.PageStart.RUN_ON,
                List.of(new Block.Notice(Weight.CAUTION, "CAUTION: REFUSED. There is no order of work.", why)));
    }

    /**
     * A step as it is printed.
     *
     * @param afterHold what a hold ends with
     */
    private static StepLine line(Vocabulary words, OrderStep step, String afterHold) {
        List<String> frames = new ArrayList<>();
        if (step.kind() == OrderStep.Kind.HOLD) {
            frames.add((step.seconds().isPresent()
                            ? "Wait at least " + Values.wait(step.seconds().getAsDouble()) + ". "
                            : "")
                    + "From ______ to ______." + afterHold);
        } else if (step.seconds().isPresent()) {
            frames.add("At least " + Values.wait(step.seconds().getAsDouble()) + ".");
        }
        step.challenge().ifPresent(c -> frames.add("Say: " + c.say() + " Answer: " + c.answer()));
        if (step.holdPoint()) {
            frames.add("STOP until this is confirmed.");
        }
        List<Fact> details = new ArrayList<>();
        add(details, "Where", step.where());
        step.keys().forEach(k -> add(details, "Key " + k.key(), k.from() + " \u2192 " + k.to()));
        add(details, "You should see", step.expected());
        add(details, "If not", step.ifNot());
        add(details, "Why", step.why());
        add(details, "Made sure by", madeSureBy(step.enforcedBy()));
        return new StepLine(
                step.n(),
                kind(words, step.kind()),
                step.text(),
                frames,
                items(step.items()),
                details,
                state(words, step.conductors()),
                step.secondPerson() ? List.of("done by, time", "second person") : List.of("done by, time"));
    }

    /** Long runs of items that end alike, such as every unit of a stage, are named in short with the end said once. */
    private static List<Items> items(List<String> items) {
        List<Items> groups = new ArrayList<>();
        int at = 0;
        while (at < items.size()) {
            String end = end(items.get(at));
            int next = at + 1;
            while (next < items.size() && end(items.get(next)).equals(end)) {
                next++;
            }
            List<String> run = items.subList(at, next);
            if (!end.isEmpty() && run.size() >= LONG_RUN) {
                groups.add(new Items(
                        "each: " + end,
                        run.stream()
                                .map(i -> i.substring(0, i.length() - end.length() - 2))
                                .toList()));
            } else {
                groups.add(new Items("", run));
            }
            at = next;
        }
        return groups;
    }

    /** What stands behind the first colon; empty where there is none. */
    private static String end(String item) {
        int colon = item.indexOf(": ");
        return colon < 0 ? "" : item.substring(colon + 2);
    }

    static String kind(Vocabulary words, OrderStep.Kind kind) {
        return switch (kind) {
            case GROUND -> words.ground();
            case UNGROUND -> "un" + words.ground();
            case MOVE, LOOK, HOLD, TEST, DISCHARGE, SHORT, LOCK_ON, LOCK_OFF, COUNT, ENERGIZE, CONFIRM ->
                kind.code().replace('-', ' ');
        };
    }

    private static String madeSureBy(OrderStep.EnforcedBy by) {
        return switch (by) {
            case LOCK -> "a lock";
            case RULE -> "you alone";
        };
    }

    private static void add(List<Fact> details, String name, String value) {
        if (!value.isBlank()) {
            details.add(new Fact(name, value));
        }
    }

    private static List<String> state(Vocabulary words, Map<String, ConductorState> conductors) {
        Map<ConductorState, List<String>> byState = new LinkedHashMap<>();
        for (ConductorState state : ConductorState.values()) {
            conductors.forEach((name, is) -> {
                if (is == state && !name.equals(Isolation.GROUND)) {
                    byState.computeIfAbsent(state, s -> new ArrayList<>()).add(name);
                }
            });
        }
        List<String> lines = new ArrayList<>();
        byState.forEach((state, names) -> lines.add(word(words, state) + ": " + String.join(", ", names)));
        return lines;
    }

    private static String word(Vocabulary words, ConductorState state) {
        return switch (state) {
            case LIVE -> "LIVE";
            case LIVE_LOW_VOLTAGE -> "LIVE, low voltage";
            case CHARGED -> "CHARGED";
            case GROUNDED -> words.grounded();
            case FLOATING -> "floating, not proven dead";
        };
    }
}
