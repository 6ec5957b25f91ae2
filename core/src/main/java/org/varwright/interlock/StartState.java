package org.varwright.interlock;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** A state that somebody describes by positions and open doors, held against what the locks allow. */
public sealed interface StartState {
    /**
     * The locks allow it.
     *
     * @param state of those that fit, the one with the most stages still charged, then the fewest moves from service
     * @param path how it comes about from service
     */
    record Reachable(State state, List<Step> path) implements StartState {
        public Reachable {
            path = List.copyOf(path);
        }
    }

    /** The locks don't allow it, or it names what doesn't exist; in words. */
    record Refused(List<String> reasons) implements StartState {
        public Refused {
            reasons = List.copyOf(reasons);
        }
    }

    /** Not known: given up after so many states. */
    record Undecided(int limit) implements StartState {}

    /**
     * The state with these positions; devices that are not named stand as in service, doors that are not named are closed. Charges are not given: a stage
     * counts as charged where it can be.
     *
     * @param positions device to position
     * @param openDoors compartments whose door is open
     * @param limit how many states may be looked at
     */
    static StartState of(Scheme scheme, Map<String, String> positions, Set<String> openDoors, int limit) {
        List<String> unknown = unknown(scheme, positions, openDoors);
        if (!unknown.isEmpty()) {
            return new Refused(unknown);
        }
        Map<String, String> inService = scheme.positions(scheme.inService());
        Map<String, String> all = new LinkedHashMap<>(inService);
        all.putAll(positions);
        return switch (search(scheme, Needs.standing(scheme, all, openDoors), limit)) {
            case Search.Result.Found found -> new Reachable(last(scheme, found.path()), found.path());
            case Search.Result.Undecided undecided -> new Undecided(undecided.limit());
            case Search.Result.None none ->
                switch (search(scheme, Needs.standing(scheme, positions, openDoors), limit)) {
                    case Search.Result.Found nearest ->
                        new Refused(List.of("the locks allow these positions only together with others: "
                                + differences(scheme, last(scheme, nearest.path()), positions, inService)
                                + "; name those too"));
                    case Search.Result.None nowhere ->
                        new Refused(
                                List.of(
                                        "no sequence of moves from service leads to these positions"
                                                + (openDoors.isEmpty() ? "" : " with these doors open")
                                                + ": the locks don't allow them together; look again, and if it is really so, a lock is defeated"));
                    case Search.Result.Undecided undecided -> new Undecided(undecided.limit());
                };
        };
    }

    private static Search.Result search(Scheme scheme, Needs needs, int limit) {
        return GuidedSearch.cheapest(
                scheme,
                scheme.inService(),
                needs,
                state -> true,
                (before, move, after) -> true,
                move -> move instanceof Move.Wait ? 1000 : 1,
                limit);
    }

    private static State last(Scheme scheme, List<Step> path) {
        return path.isEmpty() ? scheme.inService() : path.getLast().after();
    }

    private static String differences(
            Scheme scheme, State state, Map<String, String> positions, Map<String, String> inService) {
        List<String> others = new ArrayList<>();
        scheme.positions(state).forEach((device, position) -> {
            if (!positions.containsKey(device) && !position.equals(inService.get(device))) {
                others.add(device + " " + position);
            }
        });
        return Words.list(others);
    }

    private static List<String> unknown(Scheme scheme, Map<String, String> positions, Set<String> openDoors) {
        List<String> reasons = new ArrayList<>();
        positions.forEach((name, position) -> scheme.isolation()
                .device(name)
                .ifPresentOrElse(
                        device -> {
                            if (!device.positions().contains(position)) {
                                reasons.add("\"" + name + "\" has no position \"" + position + "\"; its positions are "
                                        + Words.list(device.positions()));
                            }
                        },
                        () -> reasons.add("there is no device \"" + name + "\"; there are "
                                + Words.list(List.copyOf(
                                        scheme.positions(scheme.inService()).keySet())))));
        for (String door : openDoors) {
            if (scheme.isolation().compartment(door).isEmpty()) {
                reasons.add("there is no compartment \"" + door + "\"; there are "
                        + Words.list(
                                List.copyOf(scheme.doors(scheme.inService()).keySet())));
            }
        }
        return reasons;
    }
}
