package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Vocabulary;
import org.varwright.svg.FontWidths;

/** The legend: line styles, the symbols that the bank has, locks and doors, set in rows. */
final class Legend {
    private static final double ROW = 15.0;
    private static final double SAMPLE = 34.0;
    private static final double GAP = 14.0;

    private final List<Entry> entries;
    private final double width;

    /** A sample and its words. */
    private record Entry(String words, Sample sample) {
        double width() {
            return SAMPLE + FontWidths.width(words, TextBlock.SMALL, false) + GAP;
        }
    }

    /** Draws a sample about {@code middle} from {@code left}, no wider than 30. */
    private interface Sample {
        void draw(Canvas canvas, double left, double middle);
    }

    Legend(Bank bank, double width) {
        this.width = width;
        this.entries = entries(bank);
    }

    double height() {
        return 4.0 + rows().size() * ROW;
    }

    void draw(Canvas canvas, double left, double top) {
        double y = top + 4.0;
        for (List<Entry> row : rows()) {
            double x = left;
            for (Entry entry : row) {
                entry.sample().draw(canvas, x, y + ROW / 2.0);
                canvas.text(x + SAMPLE, y + ROW / 2.0 + 3.0, entry.words(), TextBlock.SMALL, false);
                x += entry.width();
            }
            y += ROW;
        }
    }

    private List<List<Entry>> rows() {
        List<List<Entry>> rows = new ArrayList<>();
        List<Entry> row = new ArrayList<>();
        double x = 0.0;
        for (Entry entry : entries) {
            if (x + entry.width() - GAP > width && !row.isEmpty()) {
                rows.add(List.copyOf(row));
                row.clear();
                x = 0.0;
            }
            row.add(entry);
            x += entry.width();
        }
        rows.add(List.copyOf(row));
        return rows;
    }

    private static List<Entry> entries(Bank bank) {
        List<Entry> entries = new ArrayList<>();
        Vocabulary words = bank.words();
        for (ConductorState state : ConductorState.values()) {
            entries.add(new Entry(meaning(state, words), (c, x, y) -> c.sample(x, y, x + 28.0, y, state)));
        }
        Set<Device.Kind> kinds = new LinkedHashSet<>();
        Set<Device.Kind> withdrawable = new LinkedHashSet<>();
        bank.isolation().map(Isolation::devices).orElse(List.of()).forEach(d -> {
            kinds.add(d.kind());
            if (d.withdrawable()) {
                withdrawable.add(d.kind());
            }
        });
        for (Device.Kind kind : kinds) {
            if (kind != Device.Kind.SELECTOR) {
                entries.add(new Entry(
                        name(kind, words) + (withdrawable.contains(kind) ? ", plug contacts" : ""),
                        (c, x, y) -> sideways(
                                c,
                                new Symbol.Switch(kind, withdrawable.contains(kind), Device.OPEN, bank.standard()),
                                x,
                                y)));
            }
        }
        entries.add(new Entry(words.ground(), (c, x, y) -> new SymbolPainter(c).ground(x + 14.0, y - 5.0)));
        entries.add(new Entry(
                "lock, bolt out: holds, key can be taken",
                (c, x, y) -> LockGlyph.draw(c, x + 8.0, y - 4.0, DrawingState.Bolt.EXTENDED)));
        entries.add(new Entry(
                "lock, bolt in: key trapped",
                (c, x, y) -> LockGlyph.draw(c, x + 8.0, y - 4.0, DrawingState.Bolt.WITHDRAWN)));
        entries.add(new Entry("outline of a compartment", (c, x, y) -> c.line(x, y, x + 28.0, y, Ink.OUTLINE)));
        entries.add(new Entry(
                "door closed", (c, x, y) -> new DoorPainter(c).leaf(x + 1.0, x + 27.0, y, DrawingState.Door.CLOSED)));
        entries.add(new Entry(
                "door open", (c, x, y) -> new DoorPainter(c).leaf(x + 1.0, x + 20.0, y - 3.0, DrawingState.Door.OPEN)));
        return List.copyOf(entries);
    }

    /** A vertical symbol laid on its side and made smaller, to fit a row. */
    private static void sideways(Canvas canvas, Symbol symbol, double x, double y) {
        double middle = x + 14.0;
        double factor = Math.min(1.0, 30.0 / symbol.height()) * 0.85;
        canvas.turned(
                middle,
                y + 1.5,
                factor,
                () -> new SymbolPainter(canvas).draw(symbol, middle, y + 1.5 - symbol.height() / 2.0));
        canvas.mark(Mark.Kind.SYMBOL, "legend", x, y - 7.0, x + 28.0, y + 7.0);
    }

    private static String meaning(ConductorState state, Vocabulary words) {
        return switch (state) {
            case LIVE -> "live";
            case LIVE_LOW_VOLTAGE -> "live, below 1 kV";
            case CHARGED -> "charged";
            case GROUNDED -> words.grounded() + ", not live";
            case FLOATING -> "floating: not proven dead";
            case UNKNOWN -> "unknown: counts as live";
        };
    }

    static String name(Device.Kind kind, Vocabulary words) {
        return switch (kind) {
            case BREAKER -> "breaker";
            case DISCONNECTOR -> words.disconnector();
            case LOAD_BREAK_SWITCH -> "load-break switch";
            case GROUNDING_SWITCH -> words.groundingSwitch();
            case STAGE_SWITCH -> words.stage() + " switch";
            case SELECTOR -> "selector";
        };
    }
}
