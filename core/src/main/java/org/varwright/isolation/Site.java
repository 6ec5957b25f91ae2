package org.varwright.isolation;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;

/** Which devices stand between the sources and what is opened, and which ground it. */
final class Site {
    private final Scheme scheme;
    private final Isolation isolation;
    private final Set<String> exposed = new LinkedHashSet<>();

    Site(Scheme scheme, List<String> access) {
        this.scheme = scheme;
        isolation = scheme.isolation();
        access.forEach(a -> isolation.compartment(a).ifPresent(c -> exposed.addAll(c.exposes())));
    }

    /** Everything that the wanted doors expose, in order of first mention. */
    Set<String> exposed() {
        return exposed;
    }

    /** Conductors joined to one through closed devices, without ground. */
    Set<String> joined(State state, String conductor) {
        Map<String, String> positions = scheme.positions(state);
        return reach(Set.of(conductor), Set.of(), d -> Device.CLOSED.equals(positions.get(d.name())));
    }

    private Set<String> reach(Set<String> from, Set<String> not, java.util.function.Predicate<Device> over) {
        Set<String> reached = new LinkedHashSet<>(from);
        Deque<String> open = new ArrayDeque<>(from);
        while (!open.isEmpty()) {
            String at = open.remove();
            for (Device device : isolation.devices()) {
                if (device.between().isEmpty() || !over.test(device)) {
                    continue;
                }
                Device.Between ends = device.between().get();
                String other =
                        ends.first().equals(at) ? ends.second() : ends.second().equals(at) ? ends.first() : at;
                if (!other.equals(Isolation.GROUND) && !not.contains(other) && reached.add(other)) {
                    open.add(other);
                }
            }
        }
        return reached;
    }

    /** Whether an exposed conductor is joined to the source. */
    boolean exposes(State state, EnergySource source) {
        return joined(state, source.at()).stream().anyMatch(exposed::contains);
    }

    /** The open devices that part a source from what is exposed. */
    List<Device> parting(State state, EnergySource source) {
        Set<String> live = joined(state, source.at());
        Map<String, String> positions = scheme.positions(state);
        List<Device> parting = new ArrayList<>();
        for (Device device : isolation.devices()) {
            if (device.between().isEmpty() || Device.CLOSED.equals(positions.get(device.name()))) {
                continue;
            }
            Device.Between ends = device.between().get();
            boolean first = live.contains(ends.first());
            boolean second = live.contains(ends.second());
            String far = first ? ends.second() : ends.first();
            if (first != second
                    && !far.equals(Isolation.GROUND)
                    && reach(Set.of(far), live, d -> true).stream().anyMatch(exposed::contains)) {
                parting.add(device);
            }
        }
        return parting;
    }

    /** The same in words, {@code 89-2 (open)}. */
    List<String> keptOffBy(State state, EnergySource source) {
        Map<String, String> positions = scheme.positions(state);
        return parting(state, source).stream()
                .map(d -> d.name() + " (" + positions.get(d.name()) + ")")
                .toList();
    }

    /** Closed grounding switches that ground an exposed conductor. */
    List<Device> grounding(State state) {
        Map<String, String> positions = scheme.positions(state);
        List<Device> grounding = new ArrayList<>();
        for (Device device : isolation.devices()) {
            if (device.kind() == Device.Kind.GROUNDING_SWITCH
                    && Device.CLOSED.equals(positions.get(device.name()))
                    && device.between()
                            .map(b -> b.first().equals(Isolation.GROUND) ? b.second() : b.first())
                            .filter(c -> joined(state, c).stream().anyMatch(exposed::contains))
                            .isPresent()) {
                grounding.add(device);
            }
        }
        return grounding;
    }

    /** Devices that get personal locks: those that part a source of 1 kV or more from what is exposed, those that ground it, and those that the faults asked for. */
    List<String> lockPoints(State state, Fillings fillings) {
        Set<String> names = new LinkedHashSet<>();
        for (EnergySource source : isolation.sources()) {
            if (!source.isLowVoltage()) {
                parting(state, source).forEach(d -> names.add(d.name()));
            }
        }
        grounding(state).forEach(d -> names.add(d.name()));
        names.addAll(fillings.locksOn());
        return List.copyOf(names);
    }
}
