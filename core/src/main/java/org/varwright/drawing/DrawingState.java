package org.varwright.drawing;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.Isolation;
import org.varwright.bank.Lock;

/**
 * What is where at one moment, as a drawing shows it. What a map does not hold is drawn as unknown, never as safe.
 *
 * @param name of the state, for the title block, such as {@code in service} or {@code after step 7}
 * @param positions device to position
 * @param doors compartment to door
 * @param conductors conductor to what it is
 * @param bolts of the locks, in the order of the bank's locks; a list that is too short leaves the rest unknown
 * @param exchanges key exchange to which side's keys are out
 * @param keys key to the words for where it is
 */
public record DrawingState(
        String name,
        Map<String, String> positions,
        Map<String, Door> doors,
        Map<String, ConductorState> conductors,
        List<Bolt> bolts,
        Map<String, Exchange> exchanges,
        Map<String, String> keys) {
    /** Words for a key that no lock and no exchange holds. */
    public static final String FREE = "free (in hand)";

    public DrawingState {
        positions = ordered(positions);
        doors = ordered(doors);
        conductors = ordered(conductors);
        bolts = List.copyOf(bolts);
        exchanges = ordered(exchanges);
        keys = ordered(keys);
    }

    /** A door. */
    public enum Door {
        CLOSED,
        OPEN,
        UNKNOWN
    }

    /** The bolt of a trapped-key lock. */
    public enum Bolt {
        /** It holds the position; its keys can be taken. */
        EXTENDED,
        /** The thing can move; its keys are trapped. */
        WITHDRAWN,
        UNKNOWN
    }

    /** A key exchange. */
    public enum Exchange {
        /** The {@code out} keys are trapped in it. */
        HOME,
        /** The {@code in} keys are trapped in it. */
        GIVEN,
        UNKNOWN
    }

    /** The state in service by {@code interlocking}: devices in service, doors closed, exchanges home, stages charged. */
    public static DrawingState inService(Bank bank) {
        Map<String, String> positions = new LinkedHashMap<>();
        bank.isolation().ifPresent(i -> i.devices().forEach(d -> positions.put(d.name(), d.inServicePosition())));
        return atRest(bank, "in service", positions);
    }

    /** The start state: in service but for the positions that the bank's file gives under {@code start}. */
    public static DrawingState atStart(Bank bank) {
        Map<String, String> positions = new LinkedHashMap<>();
        bank.isolation().ifPresent(i -> {
            i.devices().forEach(d -> positions.put(d.name(), d.inServicePosition()));
            positions.putAll(i.start());
        });
        return atRest(bank, "start", positions);
    }

    private static DrawingState atRest(Bank bank, String name, Map<String, String> positions) {
        List<Lock> locks = bank.isolation().map(Isolation::locks).orElse(List.of());
        List<Bolt> bolts = locks.stream()
                .map(l -> holdsAtRest(l, positions) ? Bolt.EXTENDED : Bolt.WITHDRAWN)
                .toList();
        Set<String> stages = new LinkedHashSet<>();
        bank.stages().forEach(s -> stages.add(s.name()));
        return of(bank, name, positions, Set.of(), bolts, Set.of(), stages);
    }

    private static boolean holdsAtRest(Lock lock, Map<String, String> positions) {
        return switch (lock.on()) {
            case Lock.On.OfDevice device -> lock.holds().equals(positions.getOrDefault(device.name(), ""));
            case Lock.On.OfDoor door -> lock.holds().equals(Device.CLOSED);
        };
    }

    /**
     * The drawn state that follows from positions, doors, bolts, exchanges and charges by the rules of {@code interlocking}.
     *
     * @param positions of every device; one left out is unknown, and so is every conductor that it might join
     * @param openDoors compartments whose door is open
     * @param bolts one a lock, in the order of the bank
     * @param given key exchanges that have given their {@code out} keys
     * @param charged stages that hold a charge
     */
    public static DrawingState of(
            Bank bank,
            String name,
            Map<String, String> positions,
            Set<String> openDoors,
            List<Bolt> bolts,
            Set<String> given,
            Set<String> charged) {
        if (bank.isolation().isEmpty()) {
            return new DrawingState(name, positions, Map.of(), Map.of(), bolts, Map.of(), Map.of());
        }
        Isolation isolation = bank.isolation().get();
        Map<String, Door> doors = new LinkedHashMap<>();
        isolation
                .compartments()
                .forEach(c -> doors.put(c.name(), openDoors.contains(c.name()) ? Door.OPEN : Door.CLOSED));
        Map<String, Exchange> exchanges = new LinkedHashMap<>();
        isolation
                .exchanges()
                .forEach(e -> exchanges.put(e.name(), given.contains(e.name()) ? Exchange.GIVEN : Exchange.HOME));
        return new DrawingState(
                name,
                positions,
                doors,
                Joined.of(isolation, positions).states(charged),
                bolts,
                exchanges,
                KeyPlaces.of(isolation, bolts, exchanges));
    }

    /** Position of a device; empty text where it is not known. */
    String position(Device device) {
        return positions.getOrDefault(device.name(), "");
    }

    Door door(String compartment) {
        return doors.getOrDefault(compartment, Door.UNKNOWN);
    }

    ConductorState conductor(String conductor) {
        return conductor.equals(Isolation.GROUND)
                ? ConductorState.GROUNDED
                : conductors.getOrDefault(conductor, ConductorState.UNKNOWN);
    }

    Bolt bolt(int lock) {
        return lock < bolts.size() ? bolts.get(lock) : Bolt.UNKNOWN;
    }

    Exchange exchange(String exchange) {
        return exchanges.getOrDefault(exchange, Exchange.UNKNOWN);
    }

    private static <V> Map<String, V> ordered(Map<String, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
