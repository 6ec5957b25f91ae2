package org.varwright.isolation;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.Stage;
import org.varwright.bank.Vocabulary;
import org.varwright.interlock.Move;

/** Every single thing wrong against the step that shows it, found by replaying the steps with it; and what would fill each hole (ISO-6). */
final class FaultTable {
    private static final String[] PHASES = {"A", "B", "C"};

    private final Bank bank;
    private final Isolation isolation;
    private final Vocabulary words;
    private final SavedState start;
    private final List<OrderStep> steps;
    private final Site site;
    private final SavedState atWork;
    private final List<Fault> faults = new ArrayList<>();
    private Fillings fillings;

    private FaultTable(
            Bank bank, SavedState start, List<OrderStep> steps, Site site, SavedState atWork, Fillings fillings) {
        this.bank = bank;
        this.isolation = bank.isolation().orElseThrow();
        this.words = bank.words();
        this.start = start;
        this.steps = steps;
        this.site = site;
        this.atWork = atWork;
        this.fillings = fillings;
    }

    /**
     * The table, and the fillings with what its holes ask for added.
     *
     * @param faults in a fixed order
     * @param fillings the same as before where no hole can be filled
     */
    record Table(List<Fault> faults, Fillings fillings) {
        Table {
            faults = List.copyOf(faults);
        }
    }

    static Table of(
            Bank bank, SavedState start, List<OrderStep> steps, Site site, SavedState atWork, Fillings fillings) {
        FaultTable table = new FaultTable(bank, start, steps, site, atWork, fillings);
        table.poles();
        table.blades();
        table.resistors();
        table.keys();
        table.sources();
        table.leftOn();
        return new Table(table.faults, table.fillings);
    }

    /** Whether the plain replay, with nothing wrong, goes through without harm and without a false alarm. */
    static Optional<String> nothingWrong(Bank bank, SavedState start, List<OrderStep> steps, Site site) {
        return switch (Replay.of(bank, start, steps, site.exposed(), p -> {})) {
            case Replay.Outcome.Nothing ignored -> Optional.empty();
            case Replay.Outcome.Caught caught ->
                Optional.of("step " + caught.step().n() + ": " + caught.how());
            case Replay.Outcome.Harm harm -> Optional.of("step " + harm.step().n() + ": " + harm.how());
        };
    }

    private void poles() {
        for (Device device : isolation.devices()) {
            String handle = atWork.positions().getOrDefault(device.name(), Device.CLOSED);
            boolean opened = steps.stream()
                    .flatMap(s -> s.moves().stream())
                    .anyMatch(m -> m.what().equals(device.name())
                            && m.to().filter(t -> !t.equals(Device.CLOSED)).isPresent());
            if (device.kind() == Device.Kind.SELECTOR
                    || device.kind() == Device.Kind.GROUNDING_SWITCH
                    || (handle.equals(Device.CLOSED) && !opened)) {
                continue;
            }
            eachPhase(
                    Fault.Kind.POLE_STAYED_CLOSED,
                    device.name(),
                    p -> "pole " + p + " of " + device.name() + " stayed closed though its handle says open",
                    "one pole of " + device.name() + " stayed closed though its handle says open",
                    (poles, phase) -> poles.keepClosed(device.name(), Set.of(phase)),
                    "it carries no current and meets no one: what lies behind it is parted by another gap, or proved dead and "
                            + words.grounded());
            Consumer<Poles> all = poles -> poles.keepClosed(device.name(), Set.of(0, 1, 2));
            String harmless = "another gap parts it from every source, and it is proved dead and " + words.grounded();
            add(
                    Fault.Kind.WELDED,
                    device.name(),
                    "all poles of " + device.name()
                            + " stayed closed (welded, or its drive broke) though its handle says open",
                    replay(all),
                    harmless);
            device.indicates()
                    .ifPresent(shown -> add(
                            Fault.Kind.LAMP_LIES,
                            device.name(),
                            "the " + shown + " of " + device.name() + " shows open while it is closed",
                            replay(all),
                            "no step takes the " + shown + "'s word; " + harmless));
        }
    }

    private void blades() {
        for (Device device : isolation.devices()) {
            if (device.kind() != Device.Kind.GROUNDING_SWITCH) {
                continue;
            }
            boolean closed = Device.CLOSED.equals(atWork.positions().getOrDefault(device.name(), Device.OPEN));
            if (closed) {
                eachPhase(
                        Fault.Kind.BLADE_DID_NOT_CLOSE,
                        device.name(),
                        p -> "blade " + p + " of " + device.name() + " did not close",
                        "one blade of " + device.name() + " did not close",
                        (poles, phase) -> poles.keepOpen(device.name(), Set.of(phase)),
                        "portable " + words.ground() + "s join the same conductor to " + words.ground()
                                + ", or nobody reaches it");
                eachPhase(
                        Fault.Kind.BLADE_DID_NOT_OPEN,
                        device.name(),
                        p -> "blade " + p + " of " + device.name() + " did not open on the way back",
                        "one blade of " + device.name() + " did not open on the way back",
                        (poles, phase) -> poles.keepClosed(device.name(), Set.of(phase)),
                        "nothing that it stands on is made live");
            }
        }
    }

    private void resistors() {
        for (Stage stage : bank.stages()) {
            add(
                    Fault.Kind.RESISTOR_OPEN,
                    stage.name(),
                    "a discharge resistor of " + stage.name() + " is open",
                    replay(poles -> poles.openResistor(stage.name(), false)),
                    "nobody reaches " + stage.name() + " behind the doors that are opened");
            boolean series = stage.layout().groups() > 1;
            if (stage.fuse().isPresent() || series) {
                add(
                        Fault.Kind.RESISTOR_OPEN,
                        stage.name(),
                        "a discharge resistor of " + stage.name()
                                + " is open in a unit that its conductors don't show ("
                                + (stage.fuse().isPresent() ? "behind an operated fuse" : "")
                                + (stage.fuse().isPresent() && series ? ", or " : "")
                                + (series ? "against another in series" : "") + ")",
                        replay(poles -> poles.openResistor(stage.name(), true)),
                        "nobody reaches " + stage.name() + " behind the doors that are opened");
            }
        }
    }

    /**
     * With a second copy of a key others may move what the locks would hold. Whatever they move, the devices with personal locks stand: with all others closed
     * nothing exposed may become live, and with all others open nothing may lose its ground.
     */
    private void keys() {
        List<OrderStep> locksOn =
                steps.stream().filter(s -> s.task() instanceof Task.LocksOn).toList();
        if (locksOn.isEmpty()) {
            return;
        }
        OrderStep step = locksOn.getFirst();
        Set<String> locked = new LinkedHashSet<>(((Task.LocksOn) step.task()).devices());
        Optional<String> harm = othersMove(locked, true).or(() -> othersMove(locked, false));
        for (String key : isolation.keyNames()) {
            faults.add(new Fault(
                    Fault.Kind.SECOND_KEY,
                    key,
                    "there is a second copy of key " + key,
                    harm.isEmpty() ? OptionalInt.of(step.n()) : OptionalInt.empty(),
                    harm.orElse("others could move what the locks hold; but with every device moved at will that has no"
                            + " personal lock (" + Phrases.list(List.copyOf(locked))
                            + "), nothing exposed becomes live and"
                            + " nothing loses its " + words.ground()),
                    site.exposed().stream().anyMatch(c -> !isLow(c))));
        }
        if (harm.isPresent()) {
            isolation.devices().stream()
                    .filter(d -> d.between().isPresent() && !locked.contains(d.name()))
                    .forEach(d -> fillings = fillings.lockOn(d.name()));
        }
    }

    /** What others could do with every device that has no personal lock; empty where it reaches nobody. */
    private Optional<String> othersMove(Set<String> locked, boolean closing) {
        Poles poles = new Poles(bank, atWork);
        for (Device device : isolation.devices()) {
            if (device.between().isPresent() && !locked.contains(device.name())) {
                boolean grounding = device.kind() == Device.Kind.GROUNDING_SWITCH;
                if (closing && !grounding) {
                    poles.move(device.name(), Device.CLOSED);
                } else if (!closing) {
                    poles.move(device.name(), Device.OPEN);
                }
            }
        }
        for (String conductor : site.exposed()) {
            if (isLow(conductor)) {
                continue;
            }
            if (closing && poles.live(0).contains(conductor)) {
                return Optional.of("others could make " + conductor + " live");
            }
            if (!closing && !poles.grounded(0).contains(conductor)) {
                return Optional.of("others could take the " + words.ground() + " off " + conductor);
            }
        }
        return Optional.empty();
    }

    private boolean isLow(String conductor) {
        return isolation.sources().stream().anyMatch(s -> s.isLowVoltage() && s.at().equals(conductor));
    }

    private void sources() {
        for (String conductor : site.exposed()) {
            add(
                    Fault.Kind.SOURCE_FROM_ELSEWHERE,
                    conductor,
                    conductor
                            + " is fed from elsewhere (another source, a tie, a transformer's secondary) before it is tested",
                    replay(poles -> poles.feed(conductor)),
                    "it is never reached");
            if (isLow(conductor)) {
                lowVoltage(conductor);
            } else {
                add(
                        Fault.Kind.SOURCE_FROM_ELSEWHERE,
                        conductor,
                        conductor + " is fed from elsewhere while people work",
                        Replay.fedDuringWork(bank, start, steps, site.exposed(), conductor),
                        "it is joined to " + words.ground() + " on every phase (step " + groundStep(conductor)
                                + "): the source trips, and what people touch stays at " + words.ground()
                                + " potential");
            }
        }
    }

    private void lowVoltage(String conductor) {
        for (EnergySource source : isolation.sources()) {
            if (source.at().equals(conductor)) {
                OptionalInt at = steps.stream()
                        .filter(s -> s.task() instanceof Task.Confirmed c
                                && c.of() == Task.Confirmed.Point.SOURCE
                                && c.name().equals(source.name()))
                        .mapToInt(OrderStep::n)
                        .findFirst();
                faults.add(new Fault(
                        Fault.Kind.SOURCE_FROM_ELSEWHERE,
                        conductor,
                        source.name() + " is switched on again while people work",
                        at,
                        "it is locked off where it comes from when it is crossed off",
                        true));
            }
        }
    }

    private String groundStep(String conductor) {
        return steps.stream()
                .filter(s -> s.conductors().get(conductor) == org.varwright.interlock.ConductorState.GROUNDED)
                .map(s -> String.valueOf(s.n()))
                .findFirst()
                .orElse("none");
    }

    private void leftOn() {
        for (OrderStep step : steps) {
            if (step.task() instanceof Task.GroundsOff off) {
                add(
                        Fault.Kind.GROUND_LEFT_ON,
                        off.conductor(),
                        "a portable " + words.ground() + " is left on " + off.conductor(),
                        Replay.forgetting(bank, start, steps, site.exposed(), Set.of(off.conductor())),
                        "nothing there is made live");
            }
        }
    }

    private Replay.Outcome replay(Consumer<Poles> fault) {
        return Replay.of(bank, start, steps, site.exposed(), fault);
    }

    /** What a fault does to the poles in one phase. */
    private interface InPhase {
        void apply(Poles poles, int phase);
    }

    /** One row where all three phases come to the same, else one a phase. */
    private void eachPhase(
            Fault.Kind kind,
            String what,
            Function<String, String> single,
            String together,
            InPhase fault,
            String harmless) {
        List<Replay.Outcome> outcomes = new ArrayList<>();
        for (int p = 0; p < Poles.PHASES; p++) {
            int phase = p;
            outcomes.add(replay(poles -> fault.apply(poles, phase)));
        }
        if (outcomes.stream()
                        .map(FaultTable::summary)
                        .collect(Collectors.toSet())
                        .size()
                == 1) {
            add(kind, what, together, outcomes.getFirst(), harmless);
        } else {
            for (int p = 0; p < Poles.PHASES; p++) {
                add(kind, what, single.apply(PHASES[p]), outcomes.get(p), harmless);
            }
        }
    }

    private static String summary(Replay.Outcome outcome) {
        return switch (outcome) {
            case Replay.Outcome.Caught caught -> "caught " + caught.step().n();
            case Replay.Outcome.Harm harm -> "harm " + harm.step().n() + harm.hazard();
            case Replay.Outcome.Nothing ignored -> "nothing";
        };
    }

    private void add(Fault.Kind kind, String what, String text, Replay.Outcome outcome, String harmless) {
        switch (outcome) {
            case Replay.Outcome.Caught caught ->
                faults.add(
                        new Fault(kind, what, text, OptionalInt.of(caught.step().n()), caught.how(), true));
            case Replay.Outcome.Nothing ignored ->
                faults.add(new Fault(kind, what, text, OptionalInt.empty(), harmless, false));
            case Replay.Outcome.Harm harm
            when harm.hazard() == Replay.Hazard.RECHARGE ->
                // an inrush with everybody clear of the bank: it stresses the switch, it reaches no hand
                faults.add(new Fault(
                        kind,
                        what,
                        text,
                        OptionalInt.empty(),
                        "no hand reaches it; at step " + harm.step().n() + " " + harm.how()
                                + ", a heavy inrush with everybody clear",
                        false));
            case Replay.Outcome.Harm harm -> {
                faults.add(new Fault(
                        kind,
                        what,
                        text,
                        OptionalInt.empty(),
                        "nothing shows it before step " + harm.step().n() + ", where " + harm.how(),
                        true));
                fill(harm);
            }
        }
    }

    private void fill(Replay.Outcome.Harm harm) {
        switch (harm.hazard()) {
            case LOAD_BREAK -> {
                if (isBack(harm.step())) {
                    // found on the way in while it still carries current, else before it is switched on
                    Optional<String> opening = openedWithoutLoad().stream()
                            .filter(d -> !fillings.noCurrentBefore().contains(d))
                            .findFirst();
                    fillings = opening.isPresent()
                            ? fillings.noCurrentBefore(opening.get())
                            : fillings.noCapacitanceBefore(harm.what());
                } else {
                    fillings = fillings.noCurrentBefore(
                            Fillings.opening(harm.step().moves().getFirst()));
                }
            }
            case ARC_TO_GROUND -> {
                if (isBack(harm.step())) {
                    isolation.devices().stream()
                            .filter(d -> d.kind() == Device.Kind.GROUNDING_SWITCH)
                            .forEach(d -> fillings = fillings.freeOfGroundAfter(d.name()));
                } else {
                    fillings = fillings.deadBefore(harm.what());
                }
            }
            case GROUNDED_CHARGED -> fillings = fillings.deadBefore(harm.what());
            case HAND_ON_UNGROUNDED -> fillings = fillings.groundOn(harm.what());
            case RECHARGE -> {}
            case HAND_ON_LIVE -> {}
            case HAND_ON_CHARGED -> {}
        }
    }

    /** Devices that, with nothing wrong, carry no current when they are opened on the way in. */
    private List<String> openedWithoutLoad() {
        Poles poles = new Poles(bank, start);
        List<String> devices = new ArrayList<>();
        for (OrderStep step : steps) {
            for (Move move : step.moves()) {
                if (isBack(step) || !(move instanceof Move.Operate operate)) {
                    continue;
                }
                boolean joins = isolation
                        .device(operate.device())
                        .filter(d -> d.between().isPresent() && d.kind() != Device.Kind.GROUNDING_SWITCH)
                        .isPresent();
                if (joins
                        && !operate.position().equals(Device.CLOSED)
                        && poles.energizedThrough(operate.device()).isEmpty()) {
                    devices.add(Fillings.opening(operate));
                }
                poles.move(operate.device(), operate.position());
            }
        }
        return devices;
    }

    private boolean isBack(OrderStep step) {
        int off = steps.stream()
                .filter(s -> s.task() instanceof Task.LocksOff)
                .mapToInt(OrderStep::n)
                .findFirst()
                .orElse(Integer.MAX_VALUE);
        return step.n() > off;
    }
}
