package org.varwright.drawing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Compartment;
import org.varwright.bank.Isolation;

/**
 * Which compartment's outline a conductor or device is drawn inside. A bus that runs through many compartments is drawn whole; the outline of each takes
 * the piece of it above what is its own. Everything that a compartment exposes is also written on it, so the outline may be simpler than the steel.
 *
 * @param conductors conductor to the compartment that it is drawn in; none where it is in no outline
 * @param devices device to the compartment that it is drawn in
 * @param visits compartments with nothing of their own, by the conductor that they get a piece of
 */
record Claims(Map<String, String> conductors, Map<String, String> devices, Map<String, List<Compartment>> visits) {
    static Claims of(Bank bank, Feeding feeding) {
        Map<String, String> conductors = new LinkedHashMap<>();
        Map<String, String> devices = new LinkedHashMap<>();
        List<Compartment> all = bank.isolation().map(Isolation::compartments).orElse(List.of());
        List<String> order = feeding.layers().keySet().stream()
                .sorted((a, b) -> Integer.compare(feeding.layer(a), feeding.layer(b)))
                .toList();
        for (String conductor : order) {
            owner(conductor, bank.stage(conductor).isPresent(), all, feeding, conductors)
                    .ifPresent(c -> conductors.put(conductor, c));
        }
        for (String conductor : order) {
            Feeding.Feeder feeder = feeding.feeders().get(conductor);
            if (feeder != null) {
                deviceOwner(feeder.from(), conductor, all, conductors, devices)
                        .ifPresent(c -> devices.put(feeder.device().name(), c));
            }
        }
        for (Feeding.Extra extra : feeding.extras()) {
            deviceOwner(extra.upper(), extra.lower(), all, conductors, devices)
                    .ifPresent(c -> devices.put(extra.device().name(), c));
        }
        Map<String, List<Compartment>> visits = new LinkedHashMap<>();
        for (Compartment compartment : all) {
            if (!conductors.containsValue(compartment.name()) && !devices.containsValue(compartment.name())) {
                compartment.exposes().stream()
                        .filter(feeding.layers()::containsKey)
                        .max((a, b) -> Integer.compare(feeding.layer(a), feeding.layer(b)))
                        .ifPresent(c -> visits.computeIfAbsent(c, v -> new ArrayList<>())
                                .add(compartment));
            }
        }
        return new Claims(conductors, devices, visits);
    }

    /**
     * The only one that exposes it; else the one that has what feeds it; else one with nothing to itself; else none. Capacitors go the other way about:
     * rather to one with nothing to itself than to the one that feeds them.
     */
    private static Optional<String> owner(
            String conductor, boolean stage, List<Compartment> all, Feeding feeding, Map<String, String> owners) {
        List<Compartment> exposing =
                all.stream().filter(c -> c.exposes().contains(conductor)).toList();
        if (exposing.size() <= 1) {
            return exposing.stream().map(Compartment::name).findFirst();
        }
        Optional<String> above = feeding.parent(conductor)
                .map(owners::get)
                .filter(o -> exposing.stream().anyMatch(c -> c.name().equals(o)));
        Optional<String> bare = exposing.stream()
                .filter(c -> !owners.containsValue(c.name()))
                .filter(c -> !joinsTwo(c, feeding) && exclusive(c, all).isEmpty())
                .map(Compartment::name)
                .findFirst();
        return stage ? bare.or(() -> above) : above.or(() -> bare);
    }

    /** Whether it holds a device that is no feeder with both ends: a tie's or bypass's own compartment. */
    private static boolean joinsTwo(Compartment compartment, Feeding feeding) {
        return feeding.extras().stream()
                .anyMatch(e -> compartment.exposes().contains(e.upper())
                        && compartment.exposes().contains(e.lower()));
    }

    private static Set<String> exclusive(Compartment compartment, List<Compartment> all) {
        Set<String> own = new LinkedHashSet<>(compartment.exposes());
        all.stream()
                .filter(c -> !c.equals(compartment))
                .forEach(c -> c.exposes().forEach(own::remove));
        return own;
    }

    /** A compartment that exposes both ends: the lower end's before the upper end's before one that has nothing yet before any. */
    private static Optional<String> deviceOwner(
            String upper,
            String lower,
            List<Compartment> all,
            Map<String, String> conductors,
            Map<String, String> devices) {
        List<String> both = all.stream()
                .filter(c -> c.exposes().contains(upper) && c.exposes().contains(lower))
                .map(Compartment::name)
                .toList();
        for (String end : List.of(lower, upper)) {
            String owner = conductors.get(end);
            if (owner != null && both.contains(owner)) {
                return Optional.of(owner);
            }
        }
        return both.stream()
                .filter(c -> !conductors.containsValue(c) && !devices.containsValue(c))
                .findFirst()
                .or(() -> both.stream().findFirst());
    }
}
