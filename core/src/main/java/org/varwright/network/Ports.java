package org.varwright.network;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.varwright.quantity.Complex;

/**
 * Where failures touch a circuit, and what is read from it: both as sparse vectors over the unknowns.
 *
 * <p>A port is a pair of nodes with groups between them, or a pole that may open: the {@code u} and {@code v} of NET-6. Pairs come first.
 */
final class Ports {
    /** One change is made along {@code u} and measured along {@code v}. */
    record Port(List<LowRank.Entry> u, List<LowRank.Entry> v) {}

    private final List<Port> ports = new ArrayList<>();
    private final List<List<LowRank.Entry>> probes = new ArrayList<>();
    private final int[] ofGroup;
    private final Map<Integer, Integer> ofPole = new HashMap<>();
    private final int pairs;
    private final int sensors;

    Ports(Circuit circuit, Assembly assembly, List<Sensor> sensors) {
        Map<Long, Integer> known = new HashMap<>();
        ofGroup = new int[circuit.groups().size()];
        for (int g = 0; g < ofGroup.length; g++) {
            Circuit.Group group = circuit.groups().get(g);
            long pair = circuit.pair(group);
            ofGroup[g] = known.computeIfAbsent(pair, p -> ports.size());
            if (ofGroup[g] == ports.size()) {
                ports.add(port(LowRank.Update.shortBetween(group.from(), group.to())));
            }
        }
        pairs = ports.size();
        this.sensors = sensors.size();
        sensors.forEach(s -> probes.add(entries(s, assembly)));
        for (Circuit.StagePlaces places : circuit.stages()) {
            for (int pole : places.poles()) {
                Circuit.Link link = circuit.links().get(pole);
                ofPole.put(pole, ports.size());
                ports.add(port(LowRank.Update.open(
                        link.from(),
                        link.to(),
                        circuit.nodes() + pole,
                        link.ohms().times(assembly.baseSiemens()))));
                probes.add(List.of(amperes(assembly, pole, 1.0)));
                probes.add(List.of(volts(assembly, link.from(), 1.0)));
            }
        }
    }

    private static Port port(LowRank.Update update) {
        return new Port(update.u(), update.v());
    }

    private static List<LowRank.Entry> entries(Sensor sensor, Assembly assembly) {
        return sensor.parts().stream()
                .map(part -> switch (part) {
                    case Sensor.Part.Volts v -> volts(assembly, v.node(), v.weight());
                    case Sensor.Part.Amperes a -> amperes(assembly, a.link(), a.weight());
                })
                .toList();
    }

    private static LowRank.Entry volts(Assembly assembly, int node, double weight) {
        return new LowRank.Entry(node, new Complex(weight * assembly.baseVolts(), 0.0));
    }

    private static LowRank.Entry amperes(Assembly assembly, int link, double weight) {
        return new LowRank.Entry(assembly.nodes() + link, new Complex(weight * assembly.baseAmperes(), 0.0));
    }

    int count() {
        return ports.size();
    }

    /** Ports that are pairs of nodes. */
    int pairs() {
        return pairs;
    }

    /** All that is read: sensors, then of each pole the current and the voltage before it. */
    List<List<LowRank.Entry>> probes() {
        return probes;
    }

    Port port(int port) {
        return ports.get(port);
    }

    int ofGroup(int group) {
        return ofGroup[group];
    }

    int ofPole(int link) {
        Integer port = ofPole.get(link);
        if (port == null) {
            throw new IllegalStateException("no pole is link " + link);
        }
        return port;
    }

    /** Probe of the current of the n-th pole, stage by stage. */
    int poleAmperes(int n) {
        return sensors + 2 * n;
    }

    /** Probe of the voltage before the n-th pole. */
    int poleVolts(int n) {
        return sensors + 2 * n + 1;
    }
}
