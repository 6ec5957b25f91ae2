package org.varwright.isolation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;

/** One page to hang on the door: the moves in and back with their keys, as a table, and the way that the keys go. */
public final class SequenceCardText {
    private static final int[] WIDTHS = {4, 40, 13, 13, 24};

    private SequenceCardText() {}

    public static String of(OrderOfWork order) {
        Phrases phrases = new Phrases(order.bank());
        Sheet page = new Sheet();
        page.line("SEQUENCE CARD  " + phrases.bankLabel() + "  ->  " + Phrases.list(order.access()));
        page.line("Moves and keys only. The order of work has the looks, holds, tests, discharges and "
                + phrases.words().ground() + "s.");
        table(page, "IN", order.in(), phrases);
        table(page, "BACK", order.back(), phrases);
        keys(page, order);
        page.blank();
        page.line("Hold over: now prove dead. Not known counts as live.");
        return page.text();
    }

    private static void table(Sheet page, String title, List<OrderStep> steps, Phrases phrases) {
        page.blank();
        row(page, title, "move", "key in", "key out", "becomes");
        page.rule();
        Map<String, ConductorState> before = Map.of();
        for (OrderStep step : steps) {
            if (step.moves().isEmpty()) {
                if (step.kind() == OrderStep.Kind.LOCK_ON || step.kind() == OrderStep.Kind.LOCK_OFF) {
                    row(
                            page,
                            String.valueOf(step.n()),
                            step.kind() == OrderStep.Kind.LOCK_ON ? "own locks on" : "own locks off",
                            "",
                            "",
                            "");
                }
                before = before.isEmpty() ? step.conductors() : before;
                continue;
            }
            List<String> in = new ArrayList<>();
            List<String> out = new ArrayList<>();
            step.keys().forEach(k -> (k.from().startsWith("in hand") ? in : out).add(k.key()));
            row(
                    page,
                    String.valueOf(step.n()),
                    brief(step),
                    String.join(" ", in),
                    String.join(" ", out),
                    changes(before, step.conductors(), phrases));
            before = step.conductors();
        }
    }

    private static String brief(OrderStep step) {
        Move move = step.moves().getFirst();
        return switch (move) {
            case Move.Withdraw withdraw -> "unlock " + lock(withdraw.lock());
            case Move.Extend extend -> "lock " + lock(extend.lock());
            case Move.Operate operate -> operate.text();
            case Move.OpenDoor door -> "open door " + door.compartment();
            case Move.CloseDoor door -> "close door " + door.compartment();
            case Move.Give give -> give.exchange().name() + ": keys in, keys out";
            case Move.Return back -> back.exchange().name() + ": keys back";
            case Move.Wait ignored ->
                "WAIT " + Phrases.time(step.seconds().orElse(0.0)) + ": "
                        + Phrases.list(step.moves().stream().map(Move::what).toList());
        };
    }

    private static String lock(org.varwright.bank.Lock lock) {
        return switch (lock.on()) {
            case org.varwright.bank.Lock.On.OfDevice on -> on.name() + " (" + lock.holds() + ")";
            case org.varwright.bank.Lock.On.OfDoor on -> "door " + on.name();
        };
    }

    private static String changes(
            Map<String, ConductorState> before, Map<String, ConductorState> after, Phrases phrases) {
        List<String> parts = new ArrayList<>();
        after.forEach((name, is) -> {
            if (before.get(name) != is) {
                parts.add(name + " " + word(is, phrases));
            }
        });
        return String.join(", ", parts);
    }

    private static String word(ConductorState state, Phrases phrases) {
        return switch (state) {
            case LIVE -> "LIVE";
            case LIVE_LOW_VOLTAGE -> "LIVE";
            case GROUNDED -> phrases.words().grounded();
            case CHARGED -> "CHARGED";
            case FLOATING -> "floating";
        };
    }

    /** The way of the keys: where each comes out and goes in, in order. */
    private static void keys(Sheet page, OrderOfWork order) {
        List<String> chain = new ArrayList<>();
        for (OrderStep step : order.in()) {
            if (step.keys().isEmpty()) {
                continue;
            }
            List<String> in = new ArrayList<>();
            List<String> out = new ArrayList<>();
            step.keys().forEach(k -> (k.from().startsWith("in hand") ? in : out).add(k.key()));
            String what = step.moves().getFirst() instanceof Move.Give give
                    ? give.exchange().name()
                    : step.moves().getFirst().what();
            chain.add((in.isEmpty() ? "" : "--" + String.join(" ", in) + "--> ") + "[" + what + "]"
                    + (out.isEmpty() ? "" : " --" + String.join(" ", out) + "-->"));
        }
        if (!chain.isEmpty()) {
            page.blank();
            page.line("KEYS, WAY IN");
            chain.forEach(c -> page.wrapped("  ", c));
        }
    }

    /** A row; cells that are too long go on in the next line. */
    private static void row(Sheet page, String... cells) {
        List<List<String>> columns = new ArrayList<>();
        int height = 1;
        for (int c = 0; c < cells.length; c++) {
            List<String> lines = broken(cells[c], WIDTHS[c]);
            columns.add(lines);
            height = Math.max(height, lines.size());
        }
        for (int l = 0; l < height; l++) {
            StringBuilder line = new StringBuilder();
            for (int c = 0; c < columns.size(); c++) {
                String cell = l < columns.get(c).size() ? columns.get(c).get(l) : "";
                line.append(String.format(Locale.ROOT, "%-" + WIDTHS[c] + "s", cell))
                        .append(' ');
            }
            page.line(line.toString());
        }
    }

    private static List<String> broken(String text, int width) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (rest.length() > width) {
            int at = rest.lastIndexOf(' ', width);
            int cut = at <= 0 ? width : at;
            lines.add(rest.substring(0, cut));
            rest = rest.substring(cut).strip();
        }
        lines.add(rest);
        return lines;
    }
}
