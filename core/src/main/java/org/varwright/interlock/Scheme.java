package org.varwright.interlock;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.KeyExchange;
import org.varwright.bank.Lock;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * The locks, keys and conductors of a bank, compiled: which states there are, which moves each allows and what they do.
 *
 * <p><b>Model.</b> {@code docs/theory/interlocking.md}, ILK-1 to ILK-5. Whatever the locks don't block can happen, in any order.
 * <p><b>Not modelled.</b> Force, broken locks, keys that fit a lock they are not cut for, single poles of a device, what is behind a stage's capacitors.
 */
public final class Scheme {
    private static final int REMEMBERED_CIRCUITS = 200_000;
    private static final Set<Property> NOTHING_BROKEN = Set.of();

    private final Layout layout;
    private final Circuits circuits;
    private final List<Rule> rules;
    private final Map<String, Rule.KeyCount> keys;
    private final State start;
    private final State inService;
    private final long closedMask;
    private final long chargeMask;
    private final long doorMask;
    private final Map<Long, Circuit> remembered = new HashMap<>();

    private Scheme(Isolation isolation, List<StagePoint> stages) {
        SchemeCheck.require(isolation, stages);
        layout = new Layout(isolation, stages);
        circuits = new Circuits(layout);
        if (!layout.fits() || !circuits.fits()) {
            throw new VarwrightException(
                    Message.SCHEME_TOO_LARGE,
                    new Place("", 0, 0, "isolation"),
                    String.valueOf(layout.bits()),
                    String.valueOf(circuits.conductors.size()));
        }
        closedMask = layout.closedMask();
        chargeMask = layout.chargeMask();
        doorMask = layout.doorMask();
        rules = Rules.of(layout, circuits);
        keys = Rules.keys(layout, circuits);
        inService = settled(Map.of());
        start = settled(isolation.start());
        SchemeCheck.requireKeysFor(this);
    }

    /**
     * Compiles the scheme of a bank.
     *
     * @throws VarwrightException {@code SCHEME_MISSING} where the bank has no isolation part, or with everything in it that contradicts itself
     */
    public static Scheme of(Bank bank) {
        Isolation isolation = bank.isolation()
                .orElseThrow(() ->
                        new VarwrightException(Message.SCHEME_MISSING, new Place("", 0, 0, "isolation"), bank.name()));
        return of(isolation, stagesOf(bank));
    }

    /** Compiles a scheme for these stages. */
    public static Scheme of(Isolation isolation, List<StagePoint> stages) {
        return new Scheme(isolation, stages);
    }

    /** The stages of a bank as interlocking sees them. */
    public static List<StagePoint> stagesOf(Bank bank) {
        return bank.stages().stream()
                .map(s -> new StagePoint(s.name(), s.switchName()))
                .toList();
    }

    public Isolation isolation() {
        return layout.isolation;
    }

    public List<StagePoint> stages() {
        return layout.stages;
    }

    /** The state that the file gives, in service unless it gives positions. */
    public State start() {
        return start;
    }

    /** Everything in service: closed, selectors last, doors closed, keys home, stages charged. */
    public State inService() {
        return inService;
    }

    /** Devices in these positions, the others in service; doors closed, exchanges home, stages charged, each lock as its device stands. */
    private State settled(Map<String, String> positions) {
        State state = new State(0, 0);
        for (Device device : layout.isolation.devices()) {
            String position = positions.getOrDefault(device.name(), device.inServicePosition());
            state = layout.device(device, position).applyTo(state);
        }
        for (StagePoint stage : layout.stages) {
            state = Guard.bit(layout.chargeBit(stage.name()), true).applyTo(state);
        }
        for (int i = 0; i < layout.isolation.locks().size(); i++) {
            boolean extended = layout.held(layout.isolation.locks().get(i)).holds(state);
            state = Guard.bit(layout.lockBit(i), !extended).applyTo(state);
        }
        return state;
    }

    /**
     * The state with these parts; what is not named is open, shut, withdrawn, home or discharged. Whether it can be reached is another question.
     *
     * @param positions every device to its position
     * @param openDoors compartments whose door is open
     * @param boltsExtended for every lock in the order of the file
     * @param given exchanges whose keys have been given
     * @param charged stages that are charged
     */
    public State stateOf(
            Map<String, String> positions,
            Set<String> openDoors,
            List<Boolean> boltsExtended,
            Set<String> given,
            Set<String> charged) {
        State state = new State(0, 0);
        for (Device device : layout.isolation.devices()) {
            String position = positions.getOrDefault(device.name(), device.inServicePosition());
            state = layout.device(device, position).applyTo(state);
        }
        for (Compartment compartment : layout.isolation.compartments()) {
            state = layout.door(compartment.name(), openDoors.contains(compartment.name()))
                    .applyTo(state);
        }
        for (int i = 0; i < boltsExtended.size(); i++) {
            state = Guard.bit(layout.lockBit(i), !boltsExtended.get(i)).applyTo(state);
        }
        for (int i = 0; i < layout.isolation.exchanges().size(); i++) {
            boolean isGiven = given.contains(layout.isolation.exchanges().get(i).name());
            state = Guard.bit(layout.exchangeBit(i), isGiven).applyTo(state);
        }
        for (StagePoint stage : layout.stages) {
            state = Guard.bit(layout.chargeBit(stage.name()), charged.contains(stage.name()))
                    .applyTo(state);
        }
        return state;
    }

    /** Every move that the locks allow here, in a fixed order: locks, devices, doors, exchanges, waits. */
    public List<Move> moves(State state) {
        List<Move> moves = new ArrayList<>();
        for (Rule rule : rules) {
            if (allows(rule, state)) {
                moves.add(rule.move());
            }
        }
        return moves;
    }

    /** Every allowed move with the state after it, in the order of {@link #moves}. */
    public List<Step> steps(State state) {
        List<Step> steps = new ArrayList<>();
        for (Rule rule : rules) {
            if (allows(rule, state)) {
                steps.add(new Step(rule.move(), after(rule, state)));
            }
        }
        return steps;
    }

    private State after(Rule rule, State state) {
        State moved = rule.effect().applyTo(state);
        return rule.switching() == 0 ? moved : charged(moved);
    }

    private boolean allows(Rule rule, State state) {
        return rule.allows(state.plant(), state.access())
                && (rule.waits() == 0 || (circuit(state).liveStages & rule.waits()) == 0);
    }

    private Optional<Rule> ruleFor(State state, Move move) {
        return rules.stream()
                .filter(r -> r.move().equals(move) && allows(r, state))
                .findFirst();
    }

    public boolean allows(State state, Move move) {
        return ruleFor(state, move).isPresent();
    }

    /** Why the move is not allowed here, every reason in words; empty where it is allowed. */
    public List<String> refusals(State state, Move move) {
        return allows(state, move) ? List.of() : new Refusals(this, state).of(move);
    }

    /**
     * The state after a move.
     *
     * @throws IllegalArgumentException where the move is not allowed
     */
    public State apply(State state, Move move) {
        Rule rule = ruleFor(state, move)
                .orElseThrow(() -> new IllegalArgumentException("not allowed here: " + move.text()));
        return after(rule, state);
    }

    private State charged(State state) {
        return new State(state.plant() | circuit(state).liveStages, state.access());
    }

    /** What each conductor is, in order of first mention, ground left out. */
    public Map<String, ConductorState> conductors(State state) {
        Circuit circuit = circuit(state);
        long charged = circuits.joinedTo(circuit.closed, chargedBits(state));
        Map<String, ConductorState> all = new LinkedHashMap<>();
        for (int c = 1; c < circuits.conductors.size(); c++) {
            all.put(circuits.conductors.get(c), stateOf(circuit, charged, c));
        }
        return all;
    }

    private static ConductorState stateOf(Circuit circuit, long charged, int conductor) {
        if ((circuit.live >> conductor & 1) != 0) {
            return ConductorState.LIVE;
        } else if ((circuit.lowVoltage >> conductor & 1) != 0) {
            return ConductorState.LIVE_LOW_VOLTAGE;
        } else if ((circuit.grounded >> conductor & 1) != 0) {
            return ConductorState.GROUNDED;
        }
        return (charged >> conductor & 1) != 0 ? ConductorState.CHARGED : ConductorState.FLOATING;
    }

    /** Position of every device, in the order of the file. */
    public Map<String, String> positions(State state) {
        Map<String, String> all = new LinkedHashMap<>();
        layout.isolation.devices().forEach(d -> all.put(d.name(), position(state, d)));
        return all;
    }

    private String position(State state, Device device) {
        return device.positions().stream()
                .filter(p -> layout.device(device, p).holds(state))
                .findFirst()
                .orElseThrow();
    }

    /** For every compartment, whether its door is open. */
    public Map<String, Boolean> doors(State state) {
        Map<String, Boolean> all = new LinkedHashMap<>();
        for (Compartment compartment : layout.isolation.compartments()) {
            all.put(compartment.name(), layout.door(compartment.name(), true).holds(state));
        }
        return all;
    }

    /** For every lock in the order of the file, whether its bolt is extended. */
    public List<Boolean> boltsExtended(State state) {
        List<Boolean> all = new ArrayList<>();
        for (int i = 0; i < layout.isolation.locks().size(); i++) {
            all.add(Guard.bit(layout.lockBit(i), false).holds(state));
        }
        return all;
    }

    /** For every exchange, whether its keys have been given. */
    public Map<String, Boolean> exchangesGiven(State state) {
        Map<String, Boolean> all = new LinkedHashMap<>();
        for (int i = 0; i < layout.isolation.exchanges().size(); i++) {
            all.put(
                    layout.isolation.exchanges().get(i).name(),
                    Guard.bit(layout.exchangeBit(i), true).holds(state));
        }
        return all;
    }

    /** For every stage, whether it is charged. */
    public Map<String, Boolean> charges(State state) {
        Map<String, Boolean> all = new LinkedHashMap<>();
        layout.stages.forEach(s ->
                all.put(s.name(), Guard.bit(layout.chargeBit(s.name()), true).holds(state)));
        return all;
    }

    /** For every key, where each copy of it is: as many places as it has copies. */
    public Map<String, List<KeyPlace>> keys(State state) {
        List<Boolean> extended = boltsExtended(state);
        Map<String, Boolean> given = exchangesGiven(state);
        Map<String, List<KeyPlace>> all = new LinkedHashMap<>();
        keys.forEach((key, count) -> {
            List<KeyPlace> places = new ArrayList<>();
            for (int i = 0; i < extended.size(); i++) {
                Lock lock = layout.isolation.locks().get(i);
                if (!extended.get(i) && lock.keys().contains(key)) {
                    places.add(new KeyPlace.InLock(lock));
                }
            }
            for (KeyExchange exchange : layout.isolation.exchanges()) {
                List<String> held = given.getOrDefault(exchange.name(), false) ? exchange.in() : exchange.out();
                if (held.contains(key)) {
                    places.add(new KeyPlace.InExchange(exchange.name()));
                }
            }
            for (int copies = copies(key); places.size() < copies; ) {
                places.add(new KeyPlace.Free());
            }
            all.put(key, List.copyOf(places));
        });
        return all;
    }

    /** How many copies of a key there are. */
    public int copies(String key) {
        return layout.isolation.keys().stream()
                .filter(k -> k.name().equals(key))
                .mapToInt(org.varwright.bank.KeyCopies::copies)
                .findFirst()
                .orElse(1);
    }

    /** The properties that this state itself breaks; those that only a move breaks are never among them. */
    public Set<Property> broken(State state) {
        Circuit circuit = circuit(state);
        return setOf(Broken.byState(circuit, openDoors(state), chargedBits(state)));
    }

    /** The properties that an allowed move breaks on the way, not counting those that the state after it breaks. */
    public Set<Property> brokenBy(State state, Move move) {
        Rule rule = ruleFor(state, move)
                .orElseThrow(() -> new IllegalArgumentException("not allowed here: " + move.text()));
        if (rule.switching() == 0) {
            return EnumSet.noneOf(Property.class);
        }
        Circuit before = circuit(state);
        Circuit after = circuit(rule.effect().applyTo(state));
        return setOf(Broken.byMove(before, after, chargedBits(state), rule.switching()));
    }

    /**
     * The properties that an allowed step breaks: by its move, or by the state after it where the state before did not break them.
     *
     * @param step one of {@link #steps} of {@code before}
     */
    public Set<Property> brokenBy(State before, Step step) {
        State after = step.after();
        Circuit was = circuit(before);
        Circuit is = circuit(after);
        int broken = Broken.byState(is, openDoors(after), chargedBits(after))
                & ~Broken.byState(was, openDoors(before), chargedBits(before));
        if (step.move() instanceof Move.Operate operate) {
            Device device = layout.isolation.device(operate.device()).orElseThrow();
            broken |= layout.switching.contains(device)
                    ? Broken.byMove(was, is, chargedBits(before), layout.closedMask(device))
                    : 0;
        }
        return broken == 0 ? NOTHING_BROKEN : setOf(broken);
    }

    private static Set<Property> setOf(int bits) {
        EnumSet<Property> set = EnumSet.noneOf(Property.class);
        for (Property property : Property.values()) {
            if ((bits & property.bit()) != 0) {
                set.add(property);
            }
        }
        return set;
    }

    Layout layout() {
        return layout;
    }

    Circuits circuits() {
        return circuits;
    }

    List<Rule> rules() {
        return rules;
    }

    Map<String, Rule.KeyCount> keyCounts() {
        return keys;
    }

    long openDoors(State state) {
        return state.access() & doorMask;
    }

    long chargedBits(State state) {
        return state.plant() & chargeMask;
    }

    synchronized Circuit circuit(State state) {
        long closed = state.plant() & closedMask;
        Circuit known = remembered.get(closed);
        if (known == null) {
            if (remembered.size() >= REMEMBERED_CIRCUITS) {
                remembered.clear();
            }
            known = circuits.of(closed);
            remembered.put(closed, known);
        }
        return known;
    }
}
