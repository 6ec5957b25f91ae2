package org.varwright.bankfile;

import static org.varwright.bankfile.JsonValues.list;
import static org.varwright.bankfile.JsonValues.text;

import java.util.List;
import java.util.Map;
import org.varwright.bank.Compartment;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyCopies;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;
import org.varwright.bank.SwitchType;
import org.varwright.json.Json;

/** How a bank is fed, entered and locked, as JSON. */
record IsolationPartJson(Isolation isolation) {
    static Json of(Isolation isolation) {
        return new IsolationPartJson(isolation).write();
    }

    /** Devices that choose how the bank is controlled, with what they can be set to. */
    static Json selectors(Isolation isolation) {
        return list(
                isolation.devices().stream()
                        .filter(d -> d.kind() == Device.Kind.SELECTOR)
                        .toList(),
                d -> Json.object()
                        .put("name", d.name())
                        .put("label", text(d.label()))
                        .put("positions", Json.strings(d.positions()))
                        .put("inService", d.inServicePosition())
                        .build());
    }

    private Json write() {
        return Json.object()
                .put("conductors", Json.strings(isolation.conductors()))
                .put("devices", list(isolation.devices(), this::device))
                .put("compartments", list(isolation.compartments(), this::compartment))
                .put("locks", list(isolation.locks(), IsolationPartJson::lock))
                .put("keys", list(List.copyOf(isolation.keyNames()), this::key))
                .put("exchanges", list(isolation.exchanges(), IsolationPartJson::exchange))
                .put("interlocks", list(isolation.interlocks(), IsolationPartJson::interlock))
                .put("delays", list(isolation.delays(), IsolationPartJson::delay))
                .build();
    }

    /** {@code where}: the compartments that expose a conductor which it joins; the file says no more of where it stands. */
    private Json device(Device d) {
        List<String> joins =
                d.between().map(b -> List.of(b.first(), b.second())).orElse(List.of());
        return Json.object()
                .put("name", d.name())
                .put("label", text(d.label()))
                .put("note", text(d.note()))
                .put("kind", d.kind().code())
                .put("between", Json.strings(joins))
                .put("positions", Json.strings(d.positions()))
                .put("inService", d.inServicePosition())
                .put("start", isolation.start().getOrDefault(d.name(), d.inServicePosition()))
                .put("type", text(d.type().map(SwitchType::name)))
                .put("withdrawable", d.withdrawable())
                .put("remote", d.remote())
                .put("indicates", text(d.indicates()))
                .put("seenThrough", text(d.seenThrough()))
                .put(
                        "where",
                        Json.strings(isolation.compartments().stream()
                                .filter(c -> c.exposes().stream().anyMatch(joins::contains))
                                .map(Compartment::name)
                                .toList()))
                .build();
    }

    private Json compartment(Compartment c) {
        return Json.object()
                .put("name", c.name())
                .put("label", text(c.label()))
                .put("note", text(c.note()))
                .put("exposes", Json.strings(c.exposes()))
                .put(
                        "keys",
                        Json.strings(isolation.locks().stream()
                                .filter(l -> l.on() instanceof Lock.On.OfDoor door
                                        && door.name().equals(c.name()))
                                .flatMap(l -> l.keys().stream())
                                .toList()))
                .build();
    }

    private static Json.Builder on(Lock.On on) {
        return switch (on) {
            case Lock.On.OfDevice device -> Json.object().put("on", "device").put("name", device.name());
            case Lock.On.OfDoor door -> Json.object().put("on", "door").put("name", door.name());
        };
    }

    private static Json lock(Lock l) {
        return on(l.on())
                .put("keys", Json.strings(l.keys()))
                .put("holds", l.holds())
                .put("note", text(l.note()))
                .build();
    }

    private Json key(String name) {
        return Json.object()
                .put("name", name)
                .put(
                        "copies",
                        isolation.keys().stream()
                                .filter(k -> k.name().equals(name))
                                .mapToInt(KeyCopies::copies)
                                .findFirst()
                                .orElse(1))
                .build();
    }

    private static Json exchange(KeyExchange e) {
        return Json.object()
                .put("name", e.name())
                .put("label", text(e.label()))
                .put("note", text(e.note()))
                .put("in", Json.strings(e.in()))
                .put("out", Json.strings(e.out()))
                .build();
    }

    private static Json interlock(Interlock i) {
        Json.Builder requires = Json.object();
        for (Map.Entry<String, List<String>> one : i.requires().entrySet()) {
            requires.put(one.getKey(), Json.strings(one.getValue()));
        }
        return Json.object()
                .put("device", i.device())
                .put("to", i.to())
                .put("requires", requires.build())
                .put("note", text(i.note()))
                .build();
    }

    private static Json delay(Delay d) {
        Json.Builder of = switch (d.of()) {
            case Delay.Of.Bolt bolt -> on(bolt.on()).put("key", bolt.key());
            case Delay.Of.Move move ->
                Json.object().put("on", "move").put("name", move.device()).put("to", move.to());
        };
        return of.put("afterSeconds", d.afterSeconds())
                .put("open", Json.strings(d.open()))
                .put("note", text(d.note()))
                .build();
    }
}
