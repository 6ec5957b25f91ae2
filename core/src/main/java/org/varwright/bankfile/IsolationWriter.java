package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;
import org.varwright.bank.SwitchType;
import org.varwright.bankfile.BankWriter.Flow;

/** The isolation part of a bank as YAML. */
final class IsolationWriter {
    private final Spelling spelling;
    private final StringBuilder out;

    IsolationWriter(Spelling spelling, StringBuilder out) {
        this.spelling = spelling;
        this.out = out;
    }

    void write(Isolation isolation) {
        out.append("isolation:\n");
        items(
                "sources",
                isolation.sources().stream()
                        .map(s -> new Flow()
                                .text("name", s.name())
                                .text("at", spelling.conductor(s.at()))
                                .quantity("voltage", s.volts(), VOLTAGE)
                                .text("note", s.note()))
                        .toList());
        items("devices", isolation.devices().stream().map(this::device).toList());
        items(
                "compartments",
                isolation.compartments().stream()
                        .map(c -> new Flow()
                                .text("name", c.name())
                                .text("label", c.label())
                                .text("note", c.note())
                                .texts("exposes", spelling.conductors(c.exposes())))
                        .toList());
        items("locks", isolation.locks().stream().map(IsolationWriter::lock).toList());
        items(
                "keys",
                isolation.keys().stream()
                        .map(k -> new Flow()
                                .text("name", k.name())
                                .raw("copies", String.valueOf(k.copies()))
                                .text("note", k.note()))
                        .toList());
        items(
                "exchanges",
                isolation.exchanges().stream()
                        .map(e -> new Flow()
                                .text("name", e.name())
                                .text("label", e.label())
                                .text("note", e.note())
                                .texts("in", e.in())
                                .texts("out", e.out()))
                        .toList());
        items(
                "interlocks",
                isolation.interlocks().stream().map(IsolationWriter::interlock).toList());
        items("delays", isolation.delays().stream().map(IsolationWriter::delay).toList());
        if (!isolation.start().isEmpty()) {
            out.append("  start: ")
                    .append(isolation.start().entrySet().stream()
                            .map(e -> Written.text(e.getKey()) + ": " + Written.text(e.getValue()))
                            .collect(Collectors.joining(", ", "{", "}")))
                    .append('\n');
        }
    }

    private void items(String key, List<Flow> items) {
        if (!items.isEmpty()) {
            out.append("  ").append(key).append(":\n");
            items.forEach(item -> out.append("    - ").append(item.print()).append('\n'));
        }
    }

    private Flow device(Device d) {
        Flow flow = new Flow()
                .text("name", d.name())
                .text("label", d.label())
                .text("note", d.note())
                .word("kind", Optional.of(spelling.word(d.kind().code())));
        d.between().ifPresent(b -> flow.texts("between", spelling.conductors(List.of(b.first(), b.second()))));
        if (d.kind() == Device.Kind.SELECTOR) {
            flow.texts("positions", d.positions());
        }
        return flow.text("type", d.type().map(SwitchType::name))
                .flag("withdrawable", d.withdrawable())
                .flag("remote", d.remote())
                .text("indicates", d.indicates())
                .text("seen-through", d.seenThrough());
    }

    private static Flow on(Flow flow, Lock.On on) {
        return switch (on) {
            case Lock.On.OfDevice device -> flow.text("device", device.name());
            case Lock.On.OfDoor door -> flow.text("door", door.name());
        };
    }

    private static Flow lock(Lock lock) {
        Flow flow = on(new Flow(), lock.on());
        if (lock.keys().size() == 1) {
            flow.text("key", lock.keys().getFirst());
        } else {
            flow.texts("keys", lock.keys());
        }
        if (lock.on() instanceof Lock.On.OfDevice) {
            flow.text("holds", lock.holds());
        }
        return flow.text("note", lock.note());
    }

    private static Flow interlock(Interlock i) {
        return new Flow()
                .text("device", i.device())
                .text("to", i.to())
                .raw(
                        "requires",
                        i.requires().entrySet().stream()
                                .map((Map.Entry<String, List<String>> e) ->
                                        Written.text(e.getKey()) + ": " + Written.list(e.getValue()))
                                .collect(Collectors.joining(", ", "{", "}")))
                .text("note", i.note());
    }

    private static Flow delay(Delay d) {
        Flow flow = new Flow();
        switch (d.of()) {
            case Delay.Of.Bolt bolt ->
                flow.raw(
                        "lock",
                        on(new Flow(), bolt.on()).text("key", bolt.key()).print());
            case Delay.Of.Move move ->
                flow.raw(
                        "move",
                        new Flow()
                                .text("device", move.device())
                                .text("to", move.to())
                                .print());
        }
        return flow.quantity("after", d.afterSeconds(), TIME)
                .texts("open", d.open())
                .text("note", d.note());
    }
}
