package org.varwright.bank;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How the bank is fed, entered and locked.
 *
 * @param sources what makes conductors live
 * @param devices what joins conductors
 * @param compartments spaces with a door
 * @param locks trapped-key locks
 * @param keys keys with more than one copy, or spelled out
 * @param exchanges key exchanges
 * @param interlocks what blocks a move without a key
 * @param delays what holds a key or a move back
 * @param start positions of devices in the start state where they differ from those in service
 */
public record Isolation(
        List<EnergySource> sources,
        List<Device> devices,
        List<Compartment> compartments,
        List<Lock> locks,
        List<KeyCopies> keys,
        List<KeyExchange> exchanges,
        List<Interlock> interlocks,
        List<Delay> delays,
        Map<String, String> start) {
    /** The conductor that is ground. */
    public static final String GROUND = "ground";

    public Isolation {
        sources = List.copyOf(sources);
        devices = List.copyOf(devices);
        compartments = List.copyOf(compartments);
        locks = List.copyOf(locks);
        keys = List.copyOf(keys);
        exchanges = List.copyOf(exchanges);
        interlocks = List.copyOf(interlocks);
        delays = List.copyOf(delays);
        start = Collections.unmodifiableMap(new LinkedHashMap<>(start));
    }

    public Optional<Device> device(String name) {
        return devices.stream().filter(d -> d.name().equals(name)).findFirst();
    }

    public Optional<Compartment> compartment(String name) {
        return compartments.stream().filter(c -> c.name().equals(name)).findFirst();
    }

    /** Every conductor named by a source, a device or a compartment, in order of first mention, without ground. */
    public Set<String> conductors() {
        Set<String> names = new LinkedHashSet<>();
        sources.forEach(s -> names.add(s.at()));
        devices.forEach(d -> d.between().ifPresent(b -> {
            names.add(b.first());
            names.add(b.second());
        }));
        compartments.forEach(c -> names.addAll(c.exposes()));
        names.remove(GROUND);
        return names;
    }

    /** Every key named by a lock or an exchange or listed, in order of first mention. */
    public Set<String> keyNames() {
        Set<String> names = new LinkedHashSet<>();
        locks.forEach(l -> names.addAll(l.keys()));
        exchanges.forEach(e -> {
            names.addAll(e.in());
            names.addAll(e.out());
        });
        keys.forEach(k -> names.add(k.name()));
        return names;
    }
}
