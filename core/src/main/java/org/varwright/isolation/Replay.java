package org.varwright.isolation;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Vocabulary;
import org.varwright.interlock.Move;

/** Goes through an order of work pole by pole with one thing wrong, until a step shows it or it does harm (ISO-6). */
final class Replay {
    private final Bank bank;
    private final Isolation isolation;
    private final Vocabulary words;
    private final Set<String> exposed;
    private final Poles poles;
    private final Set<String> forgotten;
    private final Optional<String> fedDuringWork;
    /** A portable ground should be in the hand by now and is not. */
    private boolean missing;

    private Replay(
            Bank bank,
            SavedState start,
            Set<String> exposed,
            Consumer<Poles> fault,
            Set<String> forgotten,
            Optional<String> fedDuringWork) {
        this.bank = bank;
        this.isolation = bank.isolation().orElseThrow();
        this.words = bank.words();
        this.exposed = new LinkedHashSet<>(exposed);
        this.forgotten = forgotten;
        this.fedDuringWork = fedDuringWork;
        poles = new Poles(bank, start);
        fault.accept(poles);
    }

    /** What a replay comes to first. */
    sealed interface Outcome {
        /** A step shows the fault. */
        record Caught(OrderStep step, String how) implements Outcome {}

        /** The fault does harm before any step shows it. */
        record Harm(OrderStep step, Hazard hazard, String what, String how) implements Outcome {}

        /** Neither, to the end. */
        record Nothing() implements Outcome {}
    }

    /** What a fault can do. */
    enum Hazard {
        LOAD_BREAK,
        ARC_TO_GROUND,
        GROUNDED_CHARGED,
        RECHARGE,
        HAND_ON_LIVE,
        HAND_ON_CHARGED,
        HAND_ON_UNGROUNDED
    }

    static Outcome of(Bank bank, SavedState start, List<OrderStep> steps, Set<String> exposed, Consumer<Poles> fault) {
        return new Replay(bank, start, exposed, fault, Set.of(), Optional.empty()).run(steps);
    }

    /** With portable grounds left on these conductors. */
    static Outcome forgetting(
            Bank bank, SavedState start, List<OrderStep> steps, Set<String> exposed, Set<String> conductors) {
        return new Replay(bank, start, exposed, p -> {}, conductors, Optional.empty()).run(steps);
    }

    /** With a source switched on to a conductor after the tests, while people work. */
    static Outcome fedDuringWork(
            Bank bank, SavedState start, List<OrderStep> steps, Set<String> exposed, String conductor) {
        return new Replay(bank, start, exposed, p -> {}, Set.of(), Optional.of(conductor)).run(steps);
    }

    private Outcome run(List<OrderStep> steps) {
        for (OrderStep step : steps) {
            Optional<Outcome> outcome = step(step);
            if (outcome.isPresent()) {
                return outcome.get();
            }
        }
        return new Outcome.Nothing();
    }

    private Optional<Outcome> step(OrderStep step) {
        return switch (step.task()) {
            case Task.Moved moved -> move(step, moved.move());
            case Task.Energized energized -> move(step, energized.move());
            case Task.Held held -> {
                held.waits().forEach(w -> poles.waitFor(w.what()));
                yield Optional.empty();
            }
            case Task.Looked looked -> look(step, looked);
            case Task.TestedDead test ->
                poles.showsVoltage(test.conductor())
                        ? caught(step, "the tester shows voltage on " + test.conductor())
                        : Optional.empty();
            case Task.TestedNoCurrent test ->
                poles.energizedThrough(test.before()).isEmpty()
                        ? Optional.empty()
                        : caught(
                                step,
                                "the current of " + Phrases.list(List.copyOf(poles.energizedThrough(test.before())))
                                        + " is not zero");
            case Task.TestedBeforeGrounding test ->
                poles.showsVoltage(test.conductor())
                        ? caught(step, "the tester shows voltage on " + test.conductor())
                        : Optional.empty();
            case Task.TestedFreeOfGround test -> freeOfGround(step, test.conductor());
            case Task.TestedNoCapacitance test ->
                poles.stagesAt(test.conductor()).isEmpty()
                        ? Optional.empty()
                        : caught(
                                step,
                                "the capacitance of " + Phrases.list(poles.stagesAt(test.conductor()))
                                        + " is measured");
            case Task.StickUsed stick ->
                poles.discharge(stick.stage())
                        ? caught(step, "the stick draws a spark from a unit of " + stick.stage())
                        : Optional.empty();
            case Task.ShortsOn on -> {
                poles.shortUnits(on.stage());
                yield Optional.empty();
            }
            case Task.ShortsOff off -> {
                poles.unshortUnits(off.stage());
                yield Optional.empty();
            }
            case Task.GroundsOn on -> {
                poles.ground(on.conductor());
                yield poles.isShorted()
                        ? harm(
                                step,
                                Hazard.ARC_TO_GROUND,
                                on.conductor(),
                                "a portable " + words.ground() + " would be put on a live conductor")
                        : Optional.empty();
            }
            case Task.GroundsOff off -> {
                if (forgotten.contains(off.conductor())) {
                    missing = true;
                } else {
                    poles.unground(off.conductor());
                }
                yield Optional.empty();
            }
            case Task.Counted counted -> count(step, counted);
            case Task.Confirmed confirmed ->
                confirmed.of() == Task.Confirmed.Point.WORK_MAY_BEGIN ? hand(step) : Optional.empty();
            case Task.TesterProved ignored -> Optional.empty();
            case Task.LocksOn ignored -> Optional.empty();
            case Task.LocksOff ignored -> Optional.empty();
        };
    }

    private static Optional<Outcome> caught(OrderStep step, String how) {
        return Optional.of(new Outcome.Caught(step, how));
    }

    private static Optional<Outcome> harm(OrderStep step, Hazard hazard, String what, String how) {
        return Optional.of(new Outcome.Harm(step, hazard, what, how));
    }

    private Optional<Outcome> move(OrderStep step, Move move) {
        if (!(move instanceof Move.Operate operate)) {
            return Optional.empty();
        }
        Device device = isolation.device(operate.device()).orElseThrow();
        boolean shorted = poles.isShorted();
        Set<String> energized = poles.energized();
        Set<String> charged = new LinkedHashSet<>(poles.charged());
        List<String> onGround = poles.chargedOnGround();
        Set<String> through = poles.energizedThrough(device.name());
        poles.move(device.name(), operate.position());
        boolean breaksNothing =
                device.kind() == Device.Kind.DISCONNECTOR || operate.position().equals(Device.WITHDRAWN);
        if (breaksNothing && !through.isEmpty()) {
            return harm(
                    step,
                    Hazard.LOAD_BREAK,
                    device.name(),
                    device.name() + " would be moved while it carries the current of "
                            + Phrases.list(List.copyOf(through)));
        }
        if (!shorted && poles.isShorted()) {
            return harm(
                    step,
                    Hazard.ARC_TO_GROUND,
                    device.name(),
                    "a live conductor would be joined to " + words.ground() + " by " + device.name());
        }
        List<String> newOnGround = poles.chargedOnGround();
        newOnGround.removeAll(onGround);
        newOnGround.retainAll(charged);
        if (!newOnGround.isEmpty()) {
            return harm(
                    step,
                    Hazard.GROUNDED_CHARGED,
                    device.name(),
                    Phrases.list(newOnGround) + " would be joined to " + words.ground() + " by " + device.name()
                            + " while charged");
        }
        Set<String> again = poles.energized();
        again.removeAll(energized);
        if (device.kind() == Device.Kind.DISCONNECTOR && !again.isEmpty()) {
            return harm(
                    step,
                    Hazard.LOAD_BREAK,
                    device.name(),
                    device.name() + " would switch " + Phrases.list(List.copyOf(again))
                            + " on, which it is not made for");
        }
        again.retainAll(charged);
        return again.isEmpty()
                ? Optional.empty()
                : harm(
                        step,
                        Hazard.RECHARGE,
                        device.name(),
                        Phrases.list(List.copyOf(again)) + " would be made live while charged");
    }

    private Optional<Outcome> look(OrderStep step, Task.Looked look) {
        if (!look.blades()) {
            return Optional.empty();
        }
        Device device = isolation.device(look.device()).orElseThrow();
        boolean wanted = look.position().equals(Device.CLOSED);
        for (int p = 0; p < Poles.PHASES; p++) {
            if (poles.isClosed(device, p) != wanted) {
                return caught(step, "the blade is seen " + (wanted ? "out of its contact" : "still in its contact"));
            }
        }
        return Optional.empty();
    }

    private Optional<Outcome> freeOfGround(OrderStep step, String conductor) {
        for (int p = 0; p < Poles.PHASES; p++) {
            if (poles.grounded(p).contains(conductor)) {
                return caught(step, "a path to " + words.ground() + " is measured on " + conductor);
            }
        }
        return Optional.empty();
    }

    private Optional<Outcome> count(OrderStep step, Task.Counted counted) {
        return missing && counted.of() == Task.Counted.Things.SHORTS_AND_GROUNDS
                ? caught(step, "one is missing from the count")
                : Optional.empty();
    }

    /** A hand goes in: everything in reach must be dead, discharged, and joined to ground on every phase. */
    private Optional<Outcome> hand(OrderStep step) {
        fedDuringWork.ifPresent(poles::feed);
        for (String conductor : exposed) {
            boolean low = isolation.sources().stream().anyMatch(s -> s.isLowVoltage() && s.at().equals(conductor));
            for (int p = 0; p < Poles.PHASES; p++) {
                boolean grounded = poles.grounded(p).contains(conductor);
                if (poles.live(p).contains(conductor) && !grounded) {
                    return harm(
                            step,
                            Hazard.HAND_ON_LIVE,
                            conductor,
                            "a hand would reach " + conductor + " while it is live");
                }
                if (!grounded && !low) {
                    return harm(
                            step,
                            Hazard.HAND_ON_UNGROUNDED,
                            conductor,
                            "a hand would reach " + conductor + " believing that it is " + words.grounded()
                                    + ", and one phase is not");
                }
            }
            if (bank.stage(conductor).isPresent() && (poles.isCharged(conductor) || poles.hasHiddenCharge(conductor))) {
                return harm(
                        step, Hazard.HAND_ON_CHARGED, conductor, "a hand would reach a charged unit of " + conductor);
            }
        }
        return Optional.empty();
    }
}
