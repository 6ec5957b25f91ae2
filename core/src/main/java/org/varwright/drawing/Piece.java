package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;
import org.varwright.quantity.Dimension;

/** A piece of the panel beside or under the diagram. */
sealed interface Piece {
    double height(double width);

    void draw(Canvas canvas, double left, double top, double width);

    /** A heading over pieces. */
    record Heading(String text) implements Piece {
        @Override
        public double height(double width) {
            return 25.0;
        }

        @Override
        public void draw(Canvas canvas, double left, double top, double width) {
            canvas.text(left, top + 17.0, text, 9.4, true);
            canvas.line(left, top + 20.5, left + width, top + 20.5, Ink.RULE);
        }
    }

    /** Plain words. */
    record Note(String text) implements Piece {
        @Override
        public double height(double width) {
            return block(width).height() + 3.0;
        }

        @Override
        public void draw(Canvas canvas, double left, double top, double width) {
            block(width).draw(canvas, left, top);
        }

        private TextBlock block(double width) {
            return TextBlock.wrapped(List.of(TextBlock.Row.small(text)), width);
        }
    }

    /** A key and where it is. */
    record Key(String key, String place) implements Piece {
        @Override
        public double height(double width) {
            return Math.max(name(width).height(), where(width).height()) + 2.0;
        }

        @Override
        public void draw(Canvas canvas, double left, double top, double width) {
            canvas.thing("key", key, () -> {
                name(width).draw(canvas, left, top);
                where(width).draw(canvas, left + width * 0.32, top);
            });
        }

        private TextBlock name(double width) {
            return TextBlock.wrapped(List.of(TextBlock.Row.bold(key)), width * 0.32 - 4.0);
        }

        private TextBlock where(double width) {
            return TextBlock.wrapped(List.of(TextBlock.Row.plain(place)), width * 0.68);
        }
    }

    /** A key exchange box: keys that go in on the left, keys that come out on the right, filled where trapped in it. */
    record Exchange(KeyExchange exchange, DrawingState.Exchange at) implements Piece {
        private static final double MARGIN = 5.0;
        private static final double BULLET = 11.0;

        @Override
        public double height(double width) {
            return heads(width).height() + Math.max(keys(exchange.in(), width), keys(exchange.out(), width)) + 16.0;
        }

        @Override
        public void draw(Canvas canvas, double left, double top, double width) {
            canvas.thing("exchange", exchange.name(), () -> {
                double bottom = top + height(width) - 7.0;
                canvas.box(left, top, left + width, bottom, Ink.SYMBOL, "#ffffff");
                TextBlock heads = heads(width);
                heads.draw(canvas, left + MARGIN, top + 3.0);
                double y = top + heads.height() + 5.0;
                column(canvas, exchange.in(), left + MARGIN, y, width, at == DrawingState.Exchange.GIVEN);
                column(canvas, exchange.out(), left + width * 0.58, y, width, at == DrawingState.Exchange.HOME);
                double arrow = y + 5.0;
                canvas.line(left + width * 0.46, arrow, left + width * 0.54, arrow, Ink.SYMBOL);
                canvas.path(
                        "M" + Canvas.at(left + width * 0.54 - 4.0, arrow - 3.0) + "L"
                                + Canvas.at(left + width * 0.54, arrow) + "L"
                                + Canvas.at(left + width * 0.54 - 4.0, arrow + 3.0),
                        Ink.SYMBOL);
            });
        }

        private void column(Canvas canvas, List<String> keys, double left, double top, double width, boolean trapped) {
            double y = top;
            for (String key : keys) {
                TextBlock block = key(key, width);
                if (at == DrawingState.Exchange.UNKNOWN) {
                    canvas.text(left, y + 8.0, "?", TextBlock.SIZE, true);
                } else if (trapped) {
                    canvas.disc(left + 4.0, y + 5.0, 3.0, "#000000");
                } else {
                    canvas.circle(left + 4.0, y + 5.0, 2.8, Ink.THIN, "#ffffff");
                }
                block.draw(canvas, left + BULLET, y);
                y += block.height();
            }
        }

        private TextBlock heads(double width) {
            String words = switch (at) {
                case HOME -> "home: keys on the right are trapped in it";
                case GIVEN -> "given: keys on the left are trapped in it";
                case UNKNOWN -> "state unknown";
            };
            return TextBlock.wrapped(
                    List.of(TextBlock.Row.bold(exchange.name()), TextBlock.Row.small(words)), width - 2.0 * MARGIN);
        }

        private TextBlock key(String key, double width) {
            return TextBlock.wrapped(List.of(TextBlock.Row.bold(key)), width * 0.38 - BULLET);
        }

        private double keys(List<String> keys, double width) {
            return keys.stream().mapToDouble(k -> key(k, width).height()).sum();
        }
    }

    /** A selector as a labelled box: its positions, the present one filled, and its locks. */
    record Selector(Device device, String position, List<TextBlock.Row> locks) implements Piece {
        private static final double MARGIN = 5.0;
        private static final double BULLET = 12.0;

        @Override
        public double height(double width) {
            return head(width).height() + positions(width) + locked(width).height() + 15.0;
        }

        @Override
        public void draw(Canvas canvas, double left, double top, double width) {
            canvas.thing("device", device.name(), () -> {
                canvas.box(left, top, left + width, top + height(width) - 7.0, Ink.SYMBOL, "#ffffff");
                TextBlock head = head(width);
                head.draw(canvas, left + MARGIN, top + 3.0);
                double y = top + head.height() + 4.0;
                for (String each : device.positions()) {
                    TextBlock block = position(each, width);
                    canvas.circle(left + MARGIN + 4.0, y + 5.0, 3.2, Ink.THIN, "#ffffff");
                    if (each.equals(position)) {
                        canvas.disc(left + MARGIN + 4.0, y + 5.0, 2.2, "#000000");
                    }
                    block.draw(canvas, left + MARGIN + BULLET, y);
                    y += block.height();
                }
                locked(width).draw(canvas, left + MARGIN, y + 1.0);
            });
        }

        private TextBlock head(double width) {
            List<TextBlock.Row> rows = new ArrayList<>();
            rows.add(TextBlock.Row.bold(device.name()));
            device.label().ifPresent(l -> rows.add(TextBlock.Row.small("marked " + l)));
            String at = position.isEmpty() ? "position unknown" : "at " + position.toUpperCase(Locale.ROOT);
            rows.add(TextBlock.Row.small("selector, " + at));
            return TextBlock.wrapped(rows, width - 2.0 * MARGIN);
        }

        private TextBlock position(String each, double width) {
            TextBlock.Row row = each.equals(position) ? TextBlock.Row.bold(each) : TextBlock.Row.plain(each);
            return TextBlock.wrapped(List.of(row), width - 2.0 * MARGIN - BULLET);
        }

        private double positions(double width) {
            return device.positions().stream()
                    .mapToDouble(p -> position(p, width).height())
                    .sum();
        }

        private TextBlock locked(double width) {
            return TextBlock.wrapped(locks, width - 2.0 * MARGIN);
        }
    }

    /** Everything of the bank that is not on a conductor. */
    static List<Piece> of(Bank bank, DrawingState state) {
        if (bank.isolation().isEmpty()) {
            return List.of(
                    new Heading("Not in the bank's file"),
                    new Note("How the bank is fed, entered and locked: sources, devices, compartments and keys are"
                            + " not drawn. Everything counts as live."));
        }
        Isolation isolation = bank.isolation().get();
        Wording wording = new Wording(bank, state);
        List<Piece> pieces = new ArrayList<>();
        List<Device> boxes =
                isolation.devices().stream().filter(d -> d.between().isEmpty()).toList();
        addAll(
                pieces,
                "Selectors",
                boxes.stream()
                        .map(d -> (Piece)
                                new Selector(d, state.position(d), wording.locks(new Lock.On.OfDevice(d.name()))))
                        .toList());
        addAll(
                pieces,
                "Key exchange",
                isolation.exchanges().stream()
                        .map(e -> (Piece) new Exchange(e, state.exchange(e.name())))
                        .toList());
        addAll(
                pieces,
                "Where each key is",
                isolation.keyNames().stream()
                        .map(k -> (Piece) new Key(
                                k, Optional.ofNullable(state.keys().get(k)).orElse("unknown")))
                        .toList());
        List<Piece> notes = new ArrayList<>();
        interlocks(isolation).forEach(t -> notes.add(new Note(t)));
        isolation.delays().forEach(d -> notes.add(new Note(delay(d))));
        addAll(pieces, "Other interlocks", notes);
        return List.copyOf(pieces);
    }

    private static void addAll(List<Piece> to, String heading, List<Piece> pieces) {
        if (!pieces.isEmpty()) {
            to.add(new Heading(heading));
            to.addAll(pieces);
        }
    }

    /** One sentence for all devices with the same condition. */
    private static List<String> interlocks(Isolation isolation) {
        Map<String, List<String>> byCondition = new java.util.LinkedHashMap<>();
        for (Interlock interlock : isolation.interlocks()) {
            List<String> conditions = interlock.requires().entrySet().stream()
                    .map(e -> e.getKey() + " is " + String.join(" or ", e.getValue()))
                    .toList();
            byCondition
                    .computeIfAbsent(
                            "can go to " + interlock.to() + " only while " + String.join(" and ", conditions),
                            k -> new ArrayList<>())
                    .add(interlock.device());
        }
        return byCondition.entrySet().stream()
                .map(e -> String.join(", ", e.getValue()) + " " + e.getKey())
                .toList();
    }

    private static String delay(Delay delay) {
        String what = switch (delay.of()) {
            case Delay.Of.Bolt bolt -> "Key " + bolt.key() + " of " + bolt.on().name() + " is held back ";
            case Delay.Of.Move move -> move.device() + " can go to " + move.to() + " only ";
        };
        return what + Dimension.TIME.format(delay.afterSeconds()) + " after " + String.join(", ", delay.open())
                + (delay.open().size() == 1 ? " has opened" : " have opened");
    }
}
