package org.varwright.bankfile;

import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.varwright.bank.Compartment;
import org.varwright.bank.Delay;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Interlock;
import org.varwright.bank.Lock;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.quantity.Dimension;

/** Holds devices, conductors, compartments, interlocks and delays against each other. */
final class IsolationCheck {
    private final Draft draft;
    private final Draft.IsolationDraft isolation;
    private final Findings findings;

    private IsolationCheck(Draft draft, Draft.IsolationDraft isolation, Findings findings) {
        this.draft = draft;
        this.isolation = isolation;
        this.findings = findings;
    }

    static void check(Draft draft, Findings findings) {
        draft.isolation().ifPresent(isolation -> {
            IsolationCheck check = new IsolationCheck(draft, isolation, findings);
            check.stages();
            check.stageSwitches();
            check.feeds();
            isolation.compartments().forEach(check::compartment);
            isolation.interlocks().forEach(check::interlock);
            isolation.delays().forEach(check::delay);
            isolation
                    .start()
                    .forEach((device, position) -> check.position(device, position, "isolation.start." + device));
            KeyCheck.check(isolation, findings);
        });
    }

    private void stages() {
        for (Item<Stage> item : draft.stages()) {
            Stage stage = item.value();
            if (!draft.declared().joined().contains(stage.name())) {
                findings.error(Message.STAGE_NOT_A_CONDUCTOR, findings.place(item.path() + ".name"), stage.name());
            }
            stage.switchName().flatMap(isolation::device).ifPresent(device -> {
                var place = findings.place(item.path() + ".switch");
                switch (device.kind()) {
                    case BREAKER, STAGE_SWITCH, LOAD_BREAK_SWITCH -> {
                        // these switch a stage
                    }
                    case DISCONNECTOR, GROUNDING_SWITCH, SELECTOR ->
                        findings.error(
                                Message.SWITCH_KIND,
                                place,
                                device.name(),
                                device.kind().code());
                }
                device.between().ifPresent(ends -> {
                    if (!ends.first().equals(stage.name()) && !ends.second().equals(stage.name())) {
                        findings.error(
                                Message.SWITCH_ELSEWHERE,
                                place,
                                device.name(),
                                "\"" + ends.first() + "\"",
                                "\"" + ends.second() + "\"",
                                stage.name());
                    }
                });
            });
        }
    }

    private void stageSwitches() {
        if (draft.stages().size() < draft.declared().stages().size()) {
            return; // a stage with faults of its own may use it
        }
        Set<String> used = draft.stages().stream()
                .flatMap(s -> s.value().switchName().stream())
                .collect(Collectors.toSet());
        for (Item<Device> item : isolation.devices()) {
            Device device = item.value();
            if (device.kind() == Device.Kind.STAGE_SWITCH && !used.contains(device.name())) {
                findings.error(Message.STAGE_SWITCH_UNUSED, findings.place(item.path() + ".name"), device.name());
            }
        }
    }

    /** Whether something feeds each stage in service; only said when every device and source could be read. */
    private void feeds() {
        if (!isolation.complete()) {
            return;
        }
        if (isolation.sources().isEmpty()) {
            findings.error(Message.NO_SOURCE, findings.place("isolation.sources"));
            return;
        }
        Set<String> fed = highVoltageInService();
        for (Item<Stage> item : draft.stages()) {
            if (!fed.contains(item.value().name())) {
                findings.warning(
                        Message.STAGE_NEVER_FED,
                        findings.place(item.path() + ".name"),
                        item.value().name());
            }
        }
    }

    /** Conductors joined in service to a source that is not low voltage. */
    private Set<String> highVoltageInService() {
        Set<String> reached = new LinkedHashSet<>();
        isolation.sources().stream()
                .map(Item::value)
                .filter(s -> !s.isLowVoltage())
                .map(EnergySource::at)
                .forEach(reached::add);
        boolean grew = true;
        while (grew) {
            grew = false;
            for (Item<Device> item : isolation.devices()) {
                Optional<Device.Between> ends = item.value().between();
                if (ends.isPresent() && item.value().inServicePosition().equals(Device.CLOSED)) {
                    String first = ends.get().first();
                    String second = ends.get().second();
                    if (reached.contains(first) != reached.contains(second)) {
                        reached.add(first);
                        reached.add(second);
                        grew = true;
                    }
                }
            }
        }
        return reached;
    }

    private void compartment(Item<Compartment> item) {
        Compartment compartment = item.value();
        if (!isolation.complete()) {
            return; // its lock may be among what could not be read
        }
        if (compartment.exposes().isEmpty()) {
            findings.warning(Message.COMPARTMENT_EMPTY, findings.place(item.path() + ".exposes"));
        }
        Set<String> dangerous = new LinkedHashSet<>(compartment.exposes());
        Set<String> high = highVoltageInService();
        dangerous.removeIf(c -> !high.contains(c) && !draft.declared().stages().contains(c));
        boolean locked = isolation.locks().stream()
                .anyMatch(l -> l.value().on() instanceof Lock.On.OfDoor door
                        && door.name().equals(compartment.name()));
        if (!locked && !dangerous.isEmpty()) {
            findings.warning(Message.DOOR_WITHOUT_LOCK, findings.place(item.path() + ".name"), Shown.list(dangerous));
        }
    }

    private void position(String device, String position, String path) {
        isolation.device(device).ifPresent(d -> {
            if (!d.positions().contains(position)) {
                findings.error(
                        Message.UNKNOWN_NAME,
                        findings.place(path),
                        "position of \"" + d.name() + "\"",
                        Shown.of(position),
                        Nearest.hint(position, d.positions()),
                        Shown.list(d.positions()));
            }
        });
    }

    private void interlock(Item<Interlock> item) {
        Interlock interlock = item.value();
        position(interlock.device(), interlock.to(), item.path() + ".to");
        interlock.requires().forEach((device, positions) -> {
            String path = item.path() + ".requires." + device;
            for (int i = 0; i < positions.size(); i++) {
                position(device, positions.get(i), path + "[" + i + "]");
            }
            if (isolation
                    .device(device)
                    .filter(d -> positions.containsAll(d.positions()))
                    .isPresent()) {
                findings.warning(Message.ALWAYS_SATISFIED, findings.place(path), device);
            }
        });
    }

    private void delay(Item<Delay> item) {
        Delay delay = item.value();
        switch (delay.of()) {
            case Delay.Of.Bolt bolt -> bolt(item, bolt);
            case Delay.Of.Move move -> position(move.device(), move.to(), item.path() + ".move.to");
        }
        List<String> open = delay.open();
        for (int i = 0; i < open.size(); i++) {
            String name = open.get(i);
            if (isolation
                    .device(name)
                    .filter(d -> !d.positions().contains(Device.OPEN))
                    .isPresent()) {
                findings.error(Message.DELAY_NO_OPEN, findings.place(item.path() + ".open[" + i + "]"), name);
            }
        }
        draft.stages().stream()
                .map(Item::value)
                .filter(stage -> stage.switchName().filter(open::contains).isPresent())
                .map(stage -> discharged(stage.unit()))
                .max(Comparator.comparingDouble(Wait::seconds))
                .filter(wait -> delay.afterSeconds() < wait.seconds() * (1.0 - 1e-3))
                .ifPresent(wait -> findings.warning(
                        Message.DELAY_SHORT,
                        findings.place(item.path() + ".after"),
                        Dimension.TIME.format(delay.afterSeconds()),
                        Dimension.TIME.format(wait.seconds(), 3),
                        wait.by()));
    }

    /** How long units take to discharge, and by what. */
    private record Wait(double seconds, String by) {}

    /** The longer of what the standard allows a unit and what its own resistor takes. */
    private Wait discharged(UnitType unit) {
        DischargeRule rule = DischargeRule.of(draft.standard(), unit.ratedVolts());
        double own = UnitDuty.dischargeSeconds(unit, rule.volts()).orElse(0.0);
        return own > rule.seconds()
                ? new Wait(own, "the resistors of \"" + unit.name() + "\"")
                : new Wait(rule.seconds(), rule.source());
    }

    private void bolt(Item<Delay> item, Delay.Of.Bolt bolt) {
        List<Lock> on = isolation.locks().stream()
                .map(Item::value)
                .filter(l -> l.on().equals(bolt.on()))
                .toList();
        if (on.stream().noneMatch(l -> l.keys().contains(bolt.key()))) {
            Set<String> keys = new LinkedHashSet<>();
            on.forEach(l -> keys.addAll(l.keys()));
            findings.error(
                    Message.LOCK_UNKNOWN,
                    findings.place(item.path() + ".lock.key"),
                    "\"" + bolt.on().name() + "\"",
                    Shown.of(bolt.key()),
                    Nearest.hint(bolt.key(), keys) + "its locks have the keys " + Shown.list(keys));
        }
    }
}
