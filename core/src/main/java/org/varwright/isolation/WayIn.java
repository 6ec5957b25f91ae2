package org.varwright.isolation;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;
import org.varwright.bank.Stage;
import org.varwright.bank.Vocabulary;
import org.varwright.discharge.Discharge;
import org.varwright.discharge.Wait;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;
import org.varwright.interlock.Step;

/** Writes the steps in: moves with what belongs to them, then what people do at the open doors until work may begin. */
final class WayIn {
    private final Bank bank;
    private final Scheme scheme;
    private final Isolation isolation;
    private final Draft draft;
    private final Phrases phrases;
    private final Vocabulary words;
    private final List<String> access;
    private final Site site;
    private final Fillings fillings;
    private final Set<String> confirmed = new LinkedHashSet<>();

    WayIn(Bank bank, Draft draft, List<String> access, Site site, Fillings fillings) {
        this.bank = bank;
        this.scheme = draft.scheme;
        this.isolation = scheme.isolation();
        this.draft = draft;
        this.phrases = draft.phrases;
        this.words = bank.words();
        this.access = access;
        this.site = site;
        this.fillings = fillings;
    }

    void write(State start, List<Step> path) {
        Reasons reasons = new Reasons(scheme, phrases, start, path);
        confirmBank();
        if (!draft.grounds.isEmpty() || !draft.shorts.isEmpty()) {
            countWhatIsOn();
        }
        int doors = firstDoorMove(path);
        for (int i = 0; i < path.size(); i++) {
            if (i == doors) {
                secure();
            }
            Move move = path.get(i).move();
            switch (move) {
                case Move.Wait ignored -> {
                    List<Move> waits = new ArrayList<>();
                    int last = i;
                    while (last < path.size() && path.get(last).move() instanceof Move.Wait) {
                        waits.add(path.get(last).move());
                        last++;
                    }
                    hold(waits, reasons.of(i));
                    i = last - 1;
                }
                case Move.Operate operate -> operate(operate, reasons.of(i));
                case Move.OpenDoor door -> {
                    confirmCompartment(door.compartment());
                    move(move, reasons.of(i));
                }
                case Move.Withdraw withdraw -> {
                    if (withdraw.lock().on() instanceof Lock.On.OfDoor door) {
                        confirmCompartment(door.name());
                    }
                    move(move, reasons.of(i));
                }
                case Move.Extend ignored -> move(move, reasons.of(i));
                case Move.CloseDoor ignored -> move(move, reasons.of(i));
                case Move.Give ignored -> move(move, reasons.of(i));
                case Move.Return ignored -> move(move, reasons.of(i));
            }
        }
        if (doors == path.size()) {
            secure();
        }
        new DoorWork(bank, draft, access, site, fillings).write();
    }

    /** The first opening of a wanted door, or the unlocking of doors straight before it. */
    private int firstDoorMove(List<Step> path) {
        int first = 0;
        while (first < path.size()
                && !(path.get(first).move() instanceof Move.OpenDoor door && access.contains(door.compartment()))) {
            first++;
        }
        if (first == path.size()) {
            return first;
        }
        while (first > 0
                && path.get(first - 1).move() instanceof Move.Withdraw withdraw
                && withdraw.lock().on() instanceof Lock.On.OfDoor) {
            first--;
        }
        return first;
    }

    private void confirmBank() {
        List<String> items = new ArrayList<>();
        items.add("bank: " + phrases.bankLabel());
        access.forEach(a -> items.add("compartment: " + phrases.compartment(a)));
        draft.line(
                        OrderStep.Kind.CONFIRM,
                        new Task.Confirmed(Task.Confirmed.Point.BANK, bank.name()),
                        "at the bank",
                        "Read the label of the bank and of each compartment on this sheet, standing in front of it.")
                .why("people have opened the wrong panel of the right bank, and the right panel of the wrong one")
                .expect(
                        "every label says what this sheet says",
                        "stop: this is not the place, or the sheet is not of it")
                .items(items)
                .challenge(
                        "\"Which bank are we at, by its label?\"",
                        "\"" + phrases.readAloud(bank.name(), bank.label()) + ", read from the label.\"")
                .secondPerson()
                .holdPoint()
                .add();
    }

    private void countWhatIsOn() {
        List<String> items = new ArrayList<>();
        draft.grounds.forEach((name, count) -> items.add(name + ": " + count + " portable " + words.ground() + "s"));
        draft.shorts.forEach((name, count) -> items.add(name + ": " + count + " units shorted"));
        draft.line(
                        OrderStep.Kind.COUNT,
                        new Task.Counted(
                                Task.Counted.Things.SHORTS_AND_GROUNDS, total(draft.grounds) + total(draft.shorts)),
                        "at the bank",
                        "Count the " + words.ground()
                                + "s and shorts that are on from before. They stay on and come off on the way"
                                + " back of this sheet.")
                .why("this sheet replaces the one that put them on")
                .items(items)
                .secondPerson()
                .add();
    }

    private static int total(Map<String, Integer> counts) {
        return counts.values().stream().mapToInt(Integer::intValue).sum();
    }

    private void move(Move move, Reasons.Reason reason) {
        draft.line(OrderStep.Kind.MOVE, new Task.Moved(move), phrases.where(move), phrases.text(move))
                .why(reason.why())
                .byLock(reason.byLock())
                .expect(phrases.expected(move), Phrases.ifNot(move))
                .add();
    }

    private void operate(Move.Operate move, Reasons.Reason reason) {
        Device device = isolation.device(move.device()).orElseThrow();
        if (fillings.noCurrentBefore().contains(Fillings.opening(move))) {
            noCurrent(device);
        }
        boolean grounds =
                device.kind() == Device.Kind.GROUNDING_SWITCH && move.position().equals(Device.CLOSED);
        if (fillings.deadBefore().contains(device.name()) && move.position().equals(Device.CLOSED)) {
            deadBefore(device);
        }
        Draft.Line line = draft.line(OrderStep.Kind.MOVE, new Task.Moved(move), phrases.where(move), phrases.text(move))
                .why(reason.why())
                .byLock(reason.byLock())
                .expect(phrases.expected(move), Phrases.ifNot(move));
        if (device.remote()) {
            line.secondPerson()
                    .challenge(
                            "\"" + phrases.text(move).replace(" (the person there does it, on your word).", "")
                                    + ", please.\"",
                            "\"" + phrases.readAloud(device.name(), device.label()) + " is " + move.position()
                                    + ", and its control is blocked.\"");
        }
        line.add();
        if (device.kind() != Device.Kind.SELECTOR) {
            if (grounds || !move.position().equals(Device.CLOSED)) {
                Looks.add(draft, device, move.position());
            }
        }
    }

    private void noCurrent(Device device) {
        draft.line(
                        OrderStep.Kind.TEST,
                        new Task.TestedNoCurrent(device.name()),
                        "at the meter or relay that shows the bank's current",
                        "Read the current of each phase before " + device.name() + " is opened: zero on all three.")
                .why(device.name() + " can't break the current of a " + words.stage()
                        + ", and a welded switch would still" + " carry it; its handle and lamp would not show that")
                .expect(
                        "A 0, B 0, C 0",
                        "stop: a switch is still closed. If nothing shows the current, this order can't be used: have the"
                                + " feeder opened elsewhere and a new order made")
                .items(List.of("phase A: 0", "phase B: 0", "phase C: 0"))
                .secondPerson()
                .holdPoint()
                .add();
    }

    private void deadBefore(Device device) {
        Map<String, ConductorState> now = scheme.conductors(draft.state());
        Device.Between ends = device.between().orElseThrow();
        boolean firstIsGround =
                ends.first().equals(Isolation.GROUND) || now.get(ends.first()) == ConductorState.GROUNDED;
        String conductor = firstIsGround ? ends.second() : ends.first();
        draft.line(
                        OrderStep.Kind.TEST,
                        new Task.TestedBeforeGrounding(device.name(), conductor),
                        "at the voltage detecting points of " + conductor + ", or with a tester on an insulated stick",
                        "Test " + conductor + " for absence of voltage, phase by phase, before " + device.name()
                                + " is closed on it. Prove the tester before and after.")
                .why("dead is proved before it is " + words.grounded()
                        + " (EN 50110-1): a pole that stayed closed, a feed from"
                        + " elsewhere or a charge that stayed would make an arc in " + device.name())
                .expect(
                        "no voltage on A, B and C, alternating or direct",
                        "stop. If there is no point where it can be tested, this order can't be used: the owner says how it"
                                + " is proved dead, or has it " + words.grounded()
                                + " from a distance by a switch made to close onto a fault")
                .items(List.of(
                        "tester proved", conductor + " A", conductor + " B", conductor + " C", "tester proved again"))
                .secondPerson()
                .holdPoint()
                .add();
    }

    private void hold(List<Move> waits, Reasons.Reason reason) {
        List<String> stages = waits.stream().map(Move::what).toList();
        Optional<Wait> longest = stages.stream()
                .map(s -> Discharge.waitOf(bank, s))
                .max(java.util.Comparator.comparingDouble(Wait::seconds));
        double seconds = longest.orElseThrow().seconds();
        boolean known = stages.stream().allMatch(s -> Discharge.waitOf(bank, s).decayKnown());
        List<String> items = new ArrayList<>();
        for (String stage : stages) {
            items.add(stage + ": " + Phrases.time(Discharge.waitOf(bank, stage).seconds()));
        }
        draft.line(
                        OrderStep.Kind.HOLD,
                        new Task.Held(waits, stages),
                        phrases.clear(),
                        "Wait at least " + Phrases.time(seconds) + ", counted from the last opening that took "
                                + Phrases.list(stages) + " off the source. Doors stay shut.")
                .seconds(seconds)
                .why("the discharge resistors need this time" + (reason.byLock() ? "; " + reason.why() : "")
                        + ". A failed resistor makes any waiting worthless"
                        + (known ? "" : "; the resistors of this bank are not known, so count every unit as charged"))
                .byLock(reason.byLock())
                .expect("minimum wait over: now prove dead", "never shorten it; start it anew if anything was closed")
                .items(items)
                .holdPoint()
                .basis(longest.orElseThrow().basis())
                .add();
    }

    /** Sources crossed off, keys counted, personal locks on: everything before the first door. */
    private void secure() {
        crossOff();
        List<String> keys = new ArrayList<>();
        scheme.keys(draft.state()).forEach((key, places) -> keys.add("key " + key + ": " + KeyPlaces.words(places)));
        if (!keys.isEmpty()) {
            draft.line(
                            OrderStep.Kind.COUNT,
                            new Task.Counted(Task.Counted.Things.KEYS_OUT, keys.size()),
                            "at the locks",
                            "Find every key of this bank where it should be now. Ask for spare and duplicate keys.")
                    .why("a second copy of a key undoes the locks")
                    .expect("each key is where the list says, and there is no other copy", "stop: find the key first")
                    .items(keys)
                    .secondPerson()
                    .add();
        }
        List<String> at = site.lockPoints(draft.state(), fillings);
        String places = phrases.lockPlaces(at);
        draft.line(
                        OrderStep.Kind.LOCK_ON,
                        new Task.LocksOn(at),
                        "at " + places,
                        "Every person who will reach in puts an own lock and tag on " + places
                                + ", and keeps the key. Write the names down.")
                .why(
                        "your own lock is the only one that nobody else opens; keys of the bank can have copies. One person is"
                                + " responsible for all; a shift hands over lock by lock (29 CFR 1910.147(f)(3)–(4); a utility's"
                                + " crews: 1910.269(m))")
                .expect("try each handle: it does not move", "stop: a handle that moves is not locked")
                .items(List.of(
                        "name ______________________ lock no. ______  on at ______",
                        "name ______________________ lock no. ______  on at ______",
                        "name ______________________ lock no. ______  on at ______"))
                .secondPerson()
                .holdPoint()
                .add();
    }

    private void crossOff() {
        for (EnergySource source : isolation.sources()) {
            List<String> held = site.keptOffBy(draft.state(), source);
            boolean low = source.isLowVoltage();
            boolean exposed = site.exposes(draft.state(), source);
            String by = held.isEmpty()
                    ? (exposed
                            ? "No device of this bank isolates it: switch it off where it comes from, lock it there and test it dead."
                            : "It stays on, and reaches nothing that is opened here.")
                    : "Kept off by " + Phrases.list(held) + ".";
            draft.line(
                            OrderStep.Kind.CONFIRM,
                            new Task.Confirmed(Task.Confirmed.Point.SOURCE, source.name()),
                            "at the list of sources",
                            "Cross off source \"" + source.name() + "\" (at " + source.at() + "). " + by)
                    .why("a second source has fed back into dead gear; each is crossed off by itself"
                            + (low ? ", control supplies too" : ""))
                    .secondPerson()
                    .challenge(
                            "\"What keeps " + source.name() + " off?\"",
                            held.isEmpty()
                                    ? exposed
                                            ? "\"It is off, locked and tested where it comes from.\""
                                            : "\"Nothing; it reaches nothing here.\""
                                    : "\"" + Phrases.list(held) + ", seen and locked.\"")
                    .add();
        }
        draft.line(
                        OrderStep.Kind.CONFIRM,
                        new Task.Confirmed(Task.Confirmed.Point.BACK_FEED, "back-feed"),
                        "at the transformers and control cubicle",
                        "Cross off back-feed: open and lock the secondary circuits of every voltage and control transformer of"
                                + " this bank; look for test sets, generators and ties that this sheet does not know.")
                .why("a voltage transformer fed from its secondary makes its primary live")
                .items(List.of(
                        "voltage transformers: secondary open",
                        "control supply: no feed from elsewhere",
                        "no portable generator or test set connected"))
                .secondPerson()
                .add();
    }

    private void confirmCompartment(String name) {
        if (!confirmed.add(name)) {
            return;
        }
        Compartment compartment = isolation.compartment(name).orElseThrow();
        draft.line(
                        OrderStep.Kind.CONFIRM,
                        new Task.Confirmed(Task.Confirmed.Point.COMPARTMENT, name),
                        phrases.inFrontOf(name),
                        "Read the label of this door aloud before it is opened.")
                .why("the doors look alike")
                .expect("it says " + phrases.readAloud(name, compartment.label()), "stop: wrong door")
                .challenge(
                        "\"Which door is this, by its label?\"",
                        "\"" + phrases.readAloud(name, compartment.label()) + ", read from the door.\"")
                .secondPerson()
                .holdPoint()
                .add();
    }

    /** Stages of which something is in reach behind these doors. */
    static List<Stage> stagesAt(Bank bank, Isolation isolation, List<String> compartments) {
        Set<String> exposed = new LinkedHashSet<>();
        compartments.forEach(c -> isolation.compartment(c).ifPresent(k -> exposed.addAll(k.exposes())));
        return bank.stages().stream().filter(s -> exposed.contains(s.name())).toList();
    }

    /** Low voltage, for words. */
    static boolean isLow(ConductorState state) {
        return state == ConductorState.LIVE_LOW_VOLTAGE;
    }
}
