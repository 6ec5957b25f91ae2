package org.varwright.isolation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Stage;
import org.varwright.bank.Vocabulary;
import org.varwright.basis.Basis;
import org.varwright.discharge.Discharge;
import org.varwright.discharge.StageDischarge;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;
import org.varwright.interlock.Step;
import org.varwright.quantity.Dimension;

/** Writes the steps back: everything off that was put on, counted, then the moves, then stages one by one. */
final class WayBack {
    private final Bank bank;
    private final Scheme scheme;
    private final Isolation isolation;
    private final Draft draft;
    private final Phrases phrases;
    private final Vocabulary words;
    private final List<String> access;
    private final List<String> lockedAt;
    private final Fillings fillings;
    private boolean readied;
    private boolean waited;

    WayBack(Bank bank, Draft draft, List<String> access, List<String> lockedAt, Fillings fillings) {
        this.bank = bank;
        this.scheme = draft.scheme;
        this.isolation = scheme.isolation();
        this.draft = draft;
        this.phrases = draft.phrases;
        this.words = bank.words();
        this.access = access;
        this.lockedAt = lockedAt;
        this.fillings = fillings;
    }

    void write(State start, List<Step> path, WaySearch search) {
        Reasons reasons = new Reasons(scheme, phrases, start, path);
        takeOff();
        for (int i = 0; i < path.size(); i++) {
            Move move = path.get(i).move();
            State before = draft.state();
            Reasons.Reason reason = reasons.of(i);
            switch (move) {
                case Move.Operate operate ->
                    operate(operate, before, path.get(i).after(), reason, search);
                case Move.Wait wait -> wait(wait, reason);
                case Move.Withdraw ignored -> move(move, reason);
                case Move.Extend ignored -> move(move, reason);
                case Move.OpenDoor ignored -> move(move, reason);
                case Move.CloseDoor ignored -> move(move, reason);
                case Move.Give ignored -> move(move, reason);
                case Move.Return ignored -> move(move, reason);
            }
        }
        finish();
    }

    private void takeOff() {
        draft.line(
                        OrderStep.Kind.COUNT,
                        new Task.Counted(Task.Counted.Things.PEOPLE_AND_TOOLS, access.size()),
                        phrases.inside(access.getFirst()),
                        "Work is over. Count tools, removed and fitted parts, rags and people out of "
                                + Phrases.list(access) + ". Look in with a light.")
                .why("what stays in is found by the first energization")
                .items(List.of(
                        "tools counted out as counted in",
                        "fuses: each end where it belongs, ejectors set",
                        "nobody inside"))
                .secondPerson()
                .holdPoint()
                .add();
        Map<String, Integer> shorts = new LinkedHashMap<>(draft.shorts);
        Map<String, Integer> grounds = new LinkedHashMap<>(draft.grounds);
        int total = total(shorts) + total(grounds);
        for (String stage : reversed(shorts)) {
            int count = shorts.getOrDefault(stage, 0);
            draft.line(
                            OrderStep.Kind.UNGROUND,
                            new Task.ShortsOff(stage, count),
                            phrases.inside(doorExposing(stage)),
                            "Take off the " + (count == 1 ? "short" : count + " shorts") + " of " + stage
                                    + ", with the insulated stick.")
                    .why("they went on one a unit")
                    .expect(count + " off", "nobody goes on before all are found")
                    .items(bank.stage(stage)
                            .map(s -> s.positions().stream().map(p -> p.name()).toList())
                            .orElse(List.of()))
                    .secondPerson()
                    .add();
        }
        for (String conductor : reversed(grounds)) {
            int count = grounds.getOrDefault(conductor, 0);
            String of = conductor.startsWith("neutral of ") ? conductor.substring("neutral of ".length()) : conductor;
            draft.line(
                            OrderStep.Kind.UNGROUND,
                            new Task.GroundsOff(conductor, count),
                            phrases.inside(doorExposing(of)),
                            "Take " + count + " portable " + words.ground() + (count == 1 ? "" : "s") + " off "
                                    + conductor + ", with the insulated stick: conductor first, " + words.ground()
                                    + " end last.")
                    .why("nobody touches it from now on: it counts as live (29 CFR 1910.269(n)(7))")
                    .expect(count + " off", "nobody goes on before all are found")
                    .secondPerson()
                    .add();
        }
        draft.line(
                        OrderStep.Kind.COUNT,
                        new Task.Counted(Task.Counted.Things.SHORTS_AND_GROUNDS, total),
                        phrases.inside(access.getFirst()),
                        "Count the shorts and portable " + words.ground() + "s outside the bank: " + total
                                + ", as many as were counted on.")
                .why("one left on is a short circuit at the first energization")
                .expect(total + " counted", "stop: one is still on")
                .items(counted(shorts, grounds))
                .secondPerson()
                .holdPoint()
                .add();
        draft.line(
                        OrderStep.Kind.LOCK_OFF,
                        new Task.LocksOff(lockedAt),
                        "at " + phrases.lockPlaces(lockedAt),
                        "Each person takes off the own lock, in person, and is ticked off the list of the lock-on step. Nobody takes"
                                + " off another's.")
                .why("a lock that is still on is a person who may still be inside")
                .expect("as many off as on, the same names", "stop: find that person")
                .items(List.of("names ticked off: all of the lock-on list"))
                .secondPerson()
                .holdPoint()
                .add();
    }

    private List<String> counted(Map<String, Integer> shorts, Map<String, Integer> grounds) {
        List<String> items = new ArrayList<>();
        grounds.forEach((name, count) -> items.add(count + " from " + name));
        shorts.forEach((name, count) -> items.add(count + (count == 1 ? " short" : " shorts") + " from " + name));
        return items;
    }

    private static int total(Map<String, Integer> counts) {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    private static List<String> reversed(Map<String, Integer> counts) {
        List<String> names = new ArrayList<>(counts.keySet());
        Collections.reverse(names);
        return names;
    }

    private String doorExposing(String conductor) {
        return isolation.compartments().stream()
                .filter(c -> access.contains(c.name()) && c.exposes().contains(conductor))
                .map(c -> c.name())
                .findFirst()
                .orElse(access.getFirst());
    }

    private void move(Move move, Reasons.Reason reason) {
        draft.line(OrderStep.Kind.MOVE, new Task.Moved(move), phrases.where(move), phrases.text(move))
                .why(reason.why())
                .byLock(reason.byLock())
                .expect(phrases.expected(move), Phrases.ifNot(move))
                .add();
    }

    private void wait(Move.Wait wait, Reasons.Reason reason) {
        double seconds = Discharge.waitOf(bank, wait.stage()).seconds();
        draft.line(
                        OrderStep.Kind.HOLD,
                        new Task.Held(List.of(wait), List.of(wait.stage())),
                        phrases.clear(),
                        "Wait at least " + Phrases.time(seconds) + " since " + wait.stage() + " was last live.")
                .seconds(seconds)
                .why("a charged " + words.stage() + " is not switched on again; " + reason.why())
                .byLock(reason.byLock())
                .expect("minimum wait over", "start it anew if it was switched on in between")
                .holdPoint()
                .basis(Discharge.waitOf(bank, wait.stage()).basis())
                .add();
    }

    private void operate(Move.Operate move, State before, State after, Reasons.Reason reason, WaySearch search) {
        Device device = isolation.device(move.device()).orElseThrow();
        boolean unground =
                device.kind() == Device.Kind.GROUNDING_SWITCH && move.position().equals(Device.OPEN);
        List<String> stages = search.stagesMadeLive(before, after);
        if (!readied && makesLive(before, after)) {
            ready();
        }
        if (fillings.noCapacitanceBefore().contains(device.name())
                && move.position().equals(Device.CLOSED)) {
            noCapacitance(device);
        }
        if (!stages.isEmpty() && !waited) {
            recloseDelay(stages);
        }
        if (stages.isEmpty()) {
            Draft.Line line = draft.line(
                            OrderStep.Kind.MOVE, new Task.Moved(move), phrases.where(move), phrases.text(move))
                    .why(reason.why())
                    .byLock(reason.byLock())
                    .expect(phrases.expected(move), Phrases.ifNot(move));
            spoken(line, device, move);
            line.add();
        } else {
            energize(move, device, stages, reason);
        }
        if (device.kind() == Device.Kind.DISCONNECTOR || unground) {
            Looks.add(draft, device, move.position());
        }
        if (unground && fillings.freeOfGroundAfter().contains(device.name())) {
            freeOfGround(device);
        }
    }

    private void spoken(Draft.Line line, Device device, Move.Operate move) {
        if (device.remote()) {
            line.secondPerson()
                    .challenge(
                            "\"" + phrases.text(move).replace(" (the person there does it, on your word).", "")
                                    + ", please; everybody here is clear.\"",
                            "\"" + phrases.readAloud(device.name(), device.label()) + " is " + move.position() + ".\"");
        }
    }

    private boolean makesLive(State before, State after) {
        Map<String, ConductorState> was = scheme.conductors(before);
        return scheme.conductors(after).entrySet().stream()
                .anyMatch(e -> e.getValue() == ConductorState.LIVE && was.get(e.getKey()) != ConductorState.LIVE);
    }

    private void ready() {
        readied = true;
        draft.line(
                        OrderStep.Kind.CONFIRM,
                        new Task.Confirmed(Task.Confirmed.Point.READY_TO_ENERGIZE, bank.name()),
                        phrases.clear(),
                        "Before anything becomes live: everybody clear and accounted for, every door shut, all "
                                + words.ground() + "s and shorts counted off, the operator of the system told.")
                .why("the next move makes a part of the bank live")
                .items(List.of(
                        "everybody clear, by name",
                        "doors shut",
                        "operator of the system told",
                        "bank: " + phrases.bankLabel()))
                .challenge("\"Who is still on the list?\"", "\"Nobody. All names are off.\"")
                .secondPerson()
                .holdPoint()
                .add();
    }

    private void recloseDelay(List<String> stages) {
        waited = true;
        OptionalDouble control =
                bank.control().map(c -> c.recloseDelaySeconds()).orElse(OptionalDouble.empty());
        double trapped = 0.0;
        boolean known = true;
        for (StageDischarge stage :
                Discharge.of(bank, java.util.Optional.empty()).stages()) {
            trapped = Math.max(trapped, stage.recloseSeconds().orElse(stage.waitSeconds()));
            known &= stage.recloseSeconds().isPresent();
        }
        double seconds = Math.ceil(Math.max(control.orElse(0.0), trapped));
        List<String> items = new ArrayList<>();
        control.ifPresent(s -> items.add("the control's reclosing delay: " + Phrases.time(s)));
        items.add("trapped charge" + (known ? "" : " (decay not known: the standard's wait)") + ": "
                + Phrases.time(Math.ceil(trapped)));
        draft.line(
                        OrderStep.Kind.HOLD,
                        new Task.Held(List.of(), stages),
                        phrases.clear(),
                        "Reclosing delay: no " + words.stage() + " is switched on within " + Phrases.time(seconds)
                                + " of the moment when it was last live. The same holds between two tries from here on.")
                .seconds(seconds)
                .why("closing onto trapped charge doubles the inrush and can reach three times the peak voltage")
                .expect("that time is over (after a long job it is)", "wait; never close to see whether it works")
                .items(items)
                .holdPoint()
                .add();
    }

    private void energize(Move.Operate move, Device device, List<String> stages, Reasons.Reason reason) {
        List<String> items = new ArrayList<>();
        StringBuilder expected = new StringBuilder();
        Draft.Line line = draft.line(
                        OrderStep.Kind.ENERGIZE,
                        new Task.Energized(move, stages),
                        phrases.where(move),
                        phrases.text(move) + " " + Phrases.capital(Phrases.list(stages))
                                + (stages.size() == 1 ? " is" : " are")
                                + " live from here. Read the current of each phase and the unbalance sensor.")
                .why(reason.why())
                .byLock(reason.byLock());
        for (String name : stages) {
            Stage stage = bank.stage(name).orElseThrow();
            Basis basis = NominalCurrent.of(bank, stage);
            String amperes = Dimension.CURRENT.format(NominalCurrent.amperes(basis), 3);
            expected.append(expected.isEmpty() ? "" : "; ")
                    .append(name)
                    .append(": about ")
                    .append(amperes)
                    .append(" on each phase");
            List.of("A", "B", "C").forEach(p -> items.add(name + " phase " + p + ", about " + amperes + ": ______ A"));
            bank.protection().stream()
                    .filter(p -> p.stage().equals(name))
                    .forEach(p -> items.add(name + ", " + p.senses().code() + " at the relay: ______ "
                            + p.senses().unit()));
            line.basis(basis);
        }
        line.expect(
                        expected + " (nameplate, nominal voltage), alike within a few per cent; no unusual sound",
                        "open it again at once and keep clear; a phase that differs is a failed unit or an open fuse. Then the"
                                + " reclosing delay starts anew")
                .items(items)
                .holdPoint();
        line.secondPerson();
        if (device.remote()) {
            spoken(line, device, move);
        }
        line.add();
    }

    private void noCapacitance(Device device) {
        Device.Between ends = device.between().orElseThrow();
        boolean firstIsLive = scheme.conductors(draft.state()).get(ends.first()) == ConductorState.LIVE;
        String conductor = firstIsLive ? ends.second() : ends.first();
        draft.line(
                        OrderStep.Kind.TEST,
                        new Task.TestedNoCapacitance(device.name(), conductor),
                        "at the test points of " + conductor,
                        "Measure the capacitance between the phases of " + conductor + " before " + device.name()
                                + " is closed on it: none but that of the bars and cables.")
                .why("a " + words.stage() + " switch that stayed closed would show microfarads here; " + device.name()
                        + " must not switch a " + words.stage())
                .expect(
                        "no microfarads from A to B, B to C, C to A",
                        "stop: a switch is still closed. If it can't be measured here, have the feeder opened elsewhere"
                                + " before it is closed")
                .items(List.of(conductor + " A to B", conductor + " B to C", conductor + " C to A"))
                .secondPerson()
                .holdPoint()
                .add();
    }

    private void freeOfGround(Device device) {
        String conductor = device.between()
                .map(b -> b.first().equals(Isolation.GROUND) ? b.second() : b.first())
                .orElse("");
        draft.line(
                        OrderStep.Kind.TEST,
                        new Task.TestedFreeOfGround(device.name(), conductor),
                        "at the test points of " + conductor,
                        "Measure that " + conductor + " is free of " + words.ground()
                                + ", phase by phase, before it is made live.")
                .why("the blades of " + device.name() + " can't be seen: one may have stayed closed")
                .expect("no path to " + words.ground() + " on A, B and C", "stop: it is still " + words.grounded())
                .items(List.of(conductor + " A", conductor + " B", conductor + " C"))
                .secondPerson()
                .holdPoint()
                .add();
    }

    private void finish() {
        List<String> keys = new ArrayList<>();
        scheme.keys(draft.state()).forEach((key, places) -> keys.add("key " + key + ": " + KeyPlaces.words(places)));
        if (!keys.isEmpty()) {
            draft.line(
                            OrderStep.Kind.COUNT,
                            new Task.Counted(Task.Counted.Things.KEYS_HOME, keys.size()),
                            "at the locks",
                            "Find every key at home.")
                    .why("a key in a pocket is missing at the next job, or opens something it should not")
                    .items(keys)
                    .secondPerson()
                    .add();
        }
        for (Device device : isolation.devices()) {
            if (device.kind() == Device.Kind.SELECTOR) {
                String position = scheme.positions(draft.state()).getOrDefault(device.name(), "");
                draft.line(
                                OrderStep.Kind.CONFIRM,
                                new Task.Confirmed(Task.Confirmed.Point.SELECTOR, device.name()),
                                phrases.at(device),
                                "Read the position of selector " + phrases.device(device.name()) + " as it is left.")
                        .why("banks are left in manual, and nobody notices until the next bill")
                        .expect("it stands at \"" + position + "\"", "turn it there, or write down why not")
                        .challenge("\"How is " + device.name() + " left?\"", "\"At " + position + ".\"")
                        .secondPerson()
                        .add();
            }
        }
        draft.line(
                        OrderStep.Kind.CONFIRM,
                        new Task.Confirmed(Task.Confirmed.Point.IN_SERVICE, bank.name()),
                        "at the bank",
                        "Tell the operator that the bank is back, and how every device was left. Sign this sheet.")
                .why("the next person starts from what is written here")
                .items(scheme.positions(draft.state()).entrySet().stream()
                        .map(e -> e.getKey() + ": " + e.getValue())
                        .toList())
                .secondPerson()
                .add();
    }
}
