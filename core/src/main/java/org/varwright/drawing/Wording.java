package org.varwright.drawing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Connection;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.FuseType;
import org.varwright.bank.Isolation;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Lock;
import org.varwright.bank.Protection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.quantity.Dimension;
import org.varwright.svg.FontWidths;
import org.varwright.svg.SvgText;

/** What is drawn and written for each thing of the bank in a state. */
final class Wording {
    private final Bank bank;
    private final DrawingState state;

    Wording(Bank bank, DrawingState state) {
        this.bank = bank;
        this.state = state;
    }

    List<TextBlock.Row> conductor(String name) {
        return List.of(
                TextBlock.Row.bold(name),
                TextBlock.Row.bold(state.conductor(name).label(bank.words())));
    }

    Part source(EnergySource source) {
        double volts = source.volts().orElse(bank.system().nominalVolts());
        return new Part(
                new Symbol.Source(),
                List.of(
                        TextBlock.Row.bold(source.name()),
                        TextBlock.Row.small("source " + Dimension.VOLTAGE.format(volts))));
    }

    /** A device as a symbol in its position, with its locks. */
    Part device(Device device) {
        List<TextBlock.Row> rows = new ArrayList<>();
        rows.add(TextBlock.Row.bold(device.name()));
        rows.add(TextBlock.Row.plain(position(device)));
        device.label().ifPresent(l -> rows.add(TextBlock.Row.small("marked " + l)));
        device.seenThrough().ifPresent(s -> rows.add(TextBlock.Row.small("seen through " + s)));
        if (device.remote()) {
            rows.add(TextBlock.Row.small("remote"));
        }
        rows.addAll(locks(new Lock.On.OfDevice(device.name())));
        return new Part(
                new Symbol.Switch(device.kind(), device.withdrawable(), state.position(device), bank.standard()), rows);
    }

    String position(Device device) {
        String position = state.position(device);
        return position.isEmpty() ? "POSITION UNKNOWN" : position.toUpperCase(Locale.ROOT);
    }

    List<Part> toGround(Device device) {
        return List.of(device(device), new Part(new Symbol.Ground(), List.of()));
    }

    /** The locks on a device or door: which keys, what the bolt holds, where the bolt is. */
    List<TextBlock.Row> locks(Lock.On on) {
        List<TextBlock.Row> rows = new ArrayList<>();
        List<Lock> locks = bank.isolation().map(Isolation::locks).orElse(List.of());
        for (int i = 0; i < locks.size(); i++) {
            Lock lock = locks.get(i);
            if (!lock.on().equals(on)) {
                continue;
            }
            DrawingState.Bolt bolt = state.bolt(i);
            rows.add(new TextBlock.Row(
                    String.join(
                            " + ", lock.keys().stream().map(FontWidths::name).toList()),
                    TextBlock.SIZE,
                    true,
                    switch (bolt) {
                        case EXTENDED -> TextBlock.Glyph.LOCK_EXTENDED;
                        case WITHDRAWN -> TextBlock.Glyph.LOCK_WITHDRAWN;
                        case UNKNOWN -> TextBlock.Glyph.LOCK_UNKNOWN;
                    }));
            String holds = lock.holds();
            String keys = lock.keys().size() == 1 ? "key" : "keys";
            rows.add(TextBlock.Row.small(
                    switch (bolt) {
                        case EXTENDED -> "bolt out, holds " + holds;
                        case WITHDRAWN -> "bolt in, " + keys + " trapped; would hold " + holds;
                        case UNKNOWN -> "bolt unknown; would hold " + holds;
                    }));
        }
        return rows;
    }

    List<TextBlock.Row> compartment(Compartment compartment) {
        List<TextBlock.Row> rows = new ArrayList<>();
        rows.add(TextBlock.Row.title(compartment.name()));
        compartment.label().ifPresent(l -> rows.add(TextBlock.Row.small("marked " + l)));
        switch (state.door(compartment.name())) {
            case CLOSED -> rows.add(TextBlock.Row.plain("door closed"));
            case OPEN -> rows.add(TextBlock.Row.bold("DOOR OPEN"));
            case UNKNOWN -> rows.add(TextBlock.Row.bold("DOOR UNKNOWN"));
        }
        rows.addAll(locks(new Lock.On.OfDoor(compartment.name())));
        rows.add(TextBlock.Row.small(
                compartment.exposes().isEmpty()
                        ? "exposes nothing"
                        : "exposes "
                                + String.join(
                                        ", ",
                                        compartment.exposes().stream()
                                                .map(FontWidths::name)
                                                .toList())));
        return rows;
    }

    /** The legs of a stage from the line end to the neutral. */
    List<Part> legs(Stage stage) {
        List<Part> parts = new ArrayList<>();
        stage.fuse().ifPresent(f -> parts.add(new Part(new Symbol.Fuse(), List.of(TextBlock.Row.small(fuse(f))))));
        Optional<Reactor> line = stage.reactor().filter(r -> r.position() == Reactor.Position.LINE);
        line.ifPresent(r -> parts.add(reactor(r)));
        parts.add(new Part(
                new Symbol.Plates(bank.standard()),
                List.of(TextBlock.Row.bold(Dimension.REACTIVE_POWER.format(stage.ratedVars())))));
        List<TextBlock.Row> rows = new ArrayList<>();
        rows.add(TextBlock.Row.small(bank.words().connection(stage.connection())));
        rows.add(TextBlock.Row.small(layout(stage)));
        parts.add(new Part(new Symbol.Joint(stage.connection()), rows));
        stage.reactor().filter(r -> r.position() == Reactor.Position.NEUTRAL).ifPresent(r -> parts.add(reactor(r)));
        boolean voltageToGround = false;
        for (Protection sensor : bank.protection()) {
            if (sensor.stage().equals(stage.name())) {
                parts.add(sensor(sensor));
                voltageToGround |= sensor.senses() == Protection.Senses.NEUTRAL_VOLTAGE;
            }
        }
        if (stage.connection().isGrounded()) {
            parts.add(new Part(new Symbol.Ground(), List.of()));
        } else if (voltageToGround) {
            parts.add(new Part(new Symbol.Ground(), List.of(TextBlock.Row.small("sensor only"))));
        } else if (stage.connection() != Connection.DELTA) {
            parts.add(new Part(new Symbol.Loose(), List.of(TextBlock.Row.small("neutral floats"))));
        }
        return parts;
    }

    private static Part reactor(Reactor reactor) {
        return new Part(
                new Symbol.Coil(),
                List.of(
                        TextBlock.Row.small(Dimension.INDUCTANCE.format(reactor.henries())),
                        TextBlock.Row.small(reactor.purpose().name().toLowerCase(Locale.ROOT) + " reactor")));
    }

    private static String fuse(FuseType fuse) {
        return fuse.link().map(l -> fuse.name() + ", " + l).orElse(fuse.name());
    }

    private static String layout(Stage stage) {
        if (stage.hasThreePhaseUnits()) {
            return counted(stage.positions().size(), "three-phase unit");
        }
        String first = layout(stage.layout());
        return stage.second()
                        .filter(s -> !s.equals(stage.layout()))
                        .map(s -> first + " and " + layout(s))
                        .orElse(first)
                + (stage.connection().isBridge() ? " a quarter" : " a leg");
    }

    private static String layout(LegLayout layout) {
        List<String> factors = new ArrayList<>();
        if (layout.strings() > 1) {
            factors.add(layout.strings() + " strings");
        }
        if (layout.groups() > 1) {
            factors.add(layout.groups() + " in series");
        }
        if (layout.units() > 1 || factors.isEmpty()) {
            factors.add(factors.isEmpty() ? counted(layout.units(), "unit") : layout.units() + " in parallel");
        }
        return String.join(" × ", factors);
    }

    private static String counted(int count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }

    private static Part sensor(Protection sensor) {
        List<TextBlock.Row> rows = new ArrayList<>();
        rows.add(TextBlock.Row.small(sensor.senses().code().replace('-', ' ') + " sensor"));
        sensor.ratio()
                .ifPresent(r -> rows.add(
                        TextBlock.Row.small(SvgText.number(r.primary()) + ":" + SvgText.number(r.secondary()))));
        return new Part(
                switch (sensor.senses()) {
                    case NEUTRAL_VOLTAGE, PHASE_VOLTAGE -> new Symbol.VoltageTransformer();
                    case NEUTRAL_CURRENT, NEUTRAL_DIFFERENTIAL, BRIDGE_CURRENT -> new Symbol.CurrentTransformer();
                },
                rows);
    }
}
