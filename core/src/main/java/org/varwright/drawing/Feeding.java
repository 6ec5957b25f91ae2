package org.varwright.drawing;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Isolation;
import org.varwright.bank.Stage;

/**
 * How conductors hang together, from the sources down: a tree by the smallest number of devices from a source, and the devices that are left over (ties,
 * bypasses). Positions play no part, so a drawing keeps its shape in every state.
 *
 * @param layers conductor to its distance from a source, in devices
 * @param roots conductors of layer 0, in order
 * @param feeders conductor to the device and conductor that it hangs on; none for roots
 * @param extras devices that no feeder is
 * @param toGround devices to ground, by conductor
 */
record Feeding(
        Map<String, Integer> layers,
        List<String> roots,
        Map<String, Feeder> feeders,
        List<Extra> extras,
        Map<String, List<Device>> toGround) {
    /** What a conductor hangs on. */
    record Feeder(Device device, String from) {}

    /** A device between two conductors that hang on others already; {@code upper} is nearer to a source, or of the same layer. */
    record Extra(Device device, String upper, String lower) {}

    static Feeding of(Bank bank) {
        Set<String> names = new LinkedHashSet<>();
        List<Device> devices = new ArrayList<>();
        List<String> starts = new ArrayList<>();
        bank.isolation().ifPresent(i -> {
            i.sources().stream()
                    .filter(s -> !s.isLowVoltage())
                    .map(EnergySource::at)
                    .forEach(starts::add);
            i.sources().stream()
                    .filter(EnergySource::isLowVoltage)
                    .map(EnergySource::at)
                    .forEach(starts::add);
            names.addAll(i.conductors());
            devices.addAll(i.devices());
        });
        bank.stages().stream().map(Stage::name).forEach(names::add);

        Map<String, List<Device>> toGround = new LinkedHashMap<>();
        List<Device> joining = new ArrayList<>();
        for (Device device : devices) {
            if (device.between().isPresent()) {
                Optional<String> conductor = grounds(device.between().get());
                if (conductor.isPresent()) {
                    toGround.computeIfAbsent(conductor.get(), c -> new ArrayList<>())
                            .add(device);
                } else {
                    joining.add(device);
                }
            }
        }
        Map<String, Integer> layers = new LinkedHashMap<>();
        Map<String, Feeder> feeders = new LinkedHashMap<>();
        List<String> roots = new ArrayList<>();
        Set<Device> used = new LinkedHashSet<>();
        starts.removeIf(Isolation.GROUND::equals);
        Map<String, String> switches = new LinkedHashMap<>();
        for (Stage stage : bank.stages()) {
            boolean joined = joining.stream().anyMatch(d -> stage.switchName().equals(Optional.of(d.name())));
            switches.put(stage.name(), joined ? stage.switchName().orElseThrow() : "");
        }
        Spread spread = new Spread(joining, switches, layers, feeders, roots, used);
        spread.from(starts, true);
        spread.from(List.copyOf(layers.keySet()), false);
        for (String name : names) {
            spread.from(List.of(name), false);
        }
        List<Extra> extras = new ArrayList<>();
        for (Device device : joining) {
            if (!used.contains(device)) {
                Device.Between between = device.between().orElseThrow();
                boolean down = layers.getOrDefault(between.first(), 0) <= layers.getOrDefault(between.second(), 0);
                extras.add(new Extra(
                        device, down ? between.first() : between.second(), down ? between.second() : between.first()));
            }
        }
        return new Feeding(layers, List.copyOf(roots), feeders, List.copyOf(extras), toGround);
    }

    /** The conductor that the device grounds; empty where it joins two conductors. */
    private static Optional<String> grounds(Device.Between between) {
        if (between.first().equals(Isolation.GROUND)) {
            return Optional.of(between.second());
        }
        return between.second().equals(Isolation.GROUND) ? Optional.of(between.first()) : Optional.empty();
    }

    /** Grows the tree. Strictly, a stage hangs on its own switch and nothing hangs on a stage; what that leaves out is reached in a second pass. */
    private record Spread(
            List<Device> joining,
            Map<String, String> switches,
            Map<String, Integer> layers,
            Map<String, Feeder> feeders,
            List<String> roots,
            Set<Device> used) {
        void from(List<String> starts, boolean strict) {
            Deque<String> queue = new ArrayDeque<>();
            for (String start : starts) {
                if (!layers.containsKey(start)) {
                    layers.put(start, 0);
                    roots.add(start);
                }
                queue.add(start);
            }
            while (!queue.isEmpty()) {
                String from = queue.remove();
                if (strict && switches.containsKey(from)) {
                    continue;
                }
                for (Device device : joining) {
                    Optional<String> far = far(device, from);
                    if (far.isPresent() && !layers.containsKey(far.get()) && (!strict || feeds(device, far.get()))) {
                        layers.put(far.get(), layers.getOrDefault(from, 0) + 1);
                        feeders.put(far.get(), new Feeder(device, from));
                        used.add(device);
                        queue.add(far.get());
                    }
                }
            }
        }

        private static Optional<String> far(Device device, String from) {
            Device.Between between = device.between().orElseThrow();
            if (between.first().equals(from)) {
                return Optional.of(between.second());
            }
            return between.second().equals(from) ? Optional.of(between.first()) : Optional.empty();
        }

        private boolean feeds(Device device, String to) {
            String own = switches.getOrDefault(to, "");
            return own.isEmpty() || own.equals(device.name());
        }
    }

    int layer(String conductor) {
        return layers.getOrDefault(conductor, 0);
    }

    int deepest() {
        return layers.values().stream().mapToInt(Integer::intValue).max().orElse(0);
    }

    Optional<String> parent(String conductor) {
        return Optional.ofNullable(feeders.get(conductor)).map(Feeder::from);
    }

    /** Conductors that hang on this one, in order of the devices between. */
    List<String> children(String conductor) {
        return feeders.entrySet().stream()
                .filter(e -> e.getValue().from().equals(conductor))
                .map(Map.Entry::getKey)
                .toList();
    }
}
