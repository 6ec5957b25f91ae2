package org.varwright.isolation;

import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.varwright.bank.Device;
import org.varwright.bank.EnergySource;
import org.varwright.bank.Interlock;
import org.varwright.bank.Isolation;
import org.varwright.interlock.GuidedSearch;
import org.varwright.interlock.Move;
import org.varwright.interlock.Needs;
import org.varwright.interlock.Property;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.Search;
import org.varwright.interlock.State;
import org.varwright.interlock.Step;

/** Cheapest ways in and back on which every state and every move is safe (ISO-1 to ISO-3). */
final class WaySearch {
    private static final int BOLT_COST = 1;
    private static final int WAIT_COST = 1;
    private static final int LOCAL_COST = 2;
    private static final int DOOR_COST = 2;
    private static final int REMOTE_COST = 10;
    private static final int OTHER_DOOR_COST = 30;
    /** The search over all safe states keeps more of each state. */
    private static final int SLOWER = 2;

    private final Scheme scheme;
    private final Exposure exposure;
    private final PlanRequest request;
    private final long wantedDoors;
    private final long wanted;

    WaySearch(Scheme scheme, Exposure exposure, PlanRequest request) {
        this.scheme = scheme;
        this.exposure = exposure;
        this.request = request;
        wantedDoors = exposure.doorBits(request.compartments());
        wanted = exposure.exposedBy(wantedDoors);
    }

    /** What a search for a way comes to. */
    sealed interface Way {
        /**
         * A way.
         *
         * @param path cheapest, proven so
         * @param cost of it
         * @param explored states looked at in all searches together
         * @param shortfall what it leaves to people
         * @param manner what it keeps beyond safety
         */
        record Found(List<Step> path, int cost, int explored, Shortfall shortfall, Manner manner) implements Way {
            public Found {
                path = List.copyOf(path);
            }

            State end(State start) {
                return path.isEmpty() ? start : path.getLast().after();
            }
        }

        /** No safe way. */
        record None(int explored) implements Way {}

        /** Given up. */
        record Undecided(int limit) implements Way {}
    }

    /**
     * Cost of a move (ISO-1): a bolt, an exchange or a wait 1, a device at hand 2, a wanted door 2, a device that somebody else works from elsewhere 10, a door
     * that nobody asked for 30.
     */
    int cost(Move move) {
        return switch (move) {
            case Move.Withdraw ignored -> BOLT_COST;
            case Move.Extend ignored -> BOLT_COST;
            case Move.Give ignored -> BOLT_COST;
            case Move.Return ignored -> BOLT_COST;
            case Move.Wait ignored -> WAIT_COST;
            case Move.Operate operate -> isRemote(operate.device()) ? REMOTE_COST : LOCAL_COST;
            case Move.OpenDoor door ->
                request.compartments().contains(door.compartment()) ? DOOR_COST : OTHER_DOOR_COST;
            case Move.CloseDoor ignored -> DOOR_COST;
        };
    }

    private boolean isRemote(String device) {
        return scheme.isolation().device(device).map(Device::remote).orElse(false);
    }

    /** The way in. */
    Way in(State start) {
        Way least = in(start, List.of(leastShortfall(start)), 0);
        if (!(least instanceof Way.None none)) {
            return least;
        }
        Set<Shortfall> seen = new TreeSet<>(Shortfall.LEAST_FIRST);
        Search.Result all = Search.cheapest(
                scheme,
                start,
                state -> {
                    if (isOpen(state)) {
                        seen.add(shortfall(state));
                    }
                    return false;
                },
                (before, move, after) ->
                        mayUse(move) && harms(before, move, after).isEmpty(),
                this::cost,
                request.limit() / SLOWER);
        return all instanceof Search.Result.Undecided undecided
                ? new Way.Undecided(undecided.limit())
                : in(start, List.copyOf(seen), none.explored() + exploredBy(all));
    }

    /** A shortfall that is part of every state with the wanted doors open: what no source can be parted from, and what no closable device joins to ground. */
    private Shortfall leastShortfall(State start) {
        Isolation isolation = scheme.isolation();
        long low = 0;
        for (EnergySource source : isolation.sources()) {
            low |= source.isLowVoltage() ? exposure.bits(List.of(source.at())) & wanted : 0;
        }
        Set<String> closable = GuidedSearch.closableWithOpenDoors(scheme, start, openDoors());
        Set<String> groundable = new HashSet<>(Set.of(Isolation.GROUND));
        boolean grew = true;
        while (grew) {
            grew = false;
            for (Device device : isolation.devices()) {
                if (device.between().isPresent() && closable.contains(device.name())) {
                    Device.Between ends = device.between().get();
                    if (groundable.contains(ends.first()) != groundable.contains(ends.second())) {
                        groundable.add(ends.first());
                        groundable.add(ends.second());
                        grew = true;
                    }
                }
            }
        }
        return new Shortfall(low, wanted & ~low & ~exposure.bits(groundable));
    }

    private Needs openDoors() {
        return Needs.open(scheme, request.compartments());
    }

    private Way in(State start, List<Shortfall> candidates, int exploredBefore) {
        int explored = exploredBefore;
        for (Shortfall shortfall : candidates) {
            for (Manner manner : Manner.ON_THE_WAY_IN) {
                Search.Result result = GuidedSearch.cheapest(
                        scheme,
                        start,
                        openDoors(),
                        state -> isOpen(state) && shortfall(state).equals(shortfall),
                        (before, move, after) -> mayUse(move)
                                && harms(before, move, after).isEmpty()
                                && leavesNoMore(before, after, shortfall)
                                && keeps(manner, before, move, after),
                        this::cost,
                        request.limit());
                switch (result) {
                    case Search.Result.Found found -> {
                        return new Way.Found(
                                together(
                                        start, later(start, moves(found.path()), shortfall, manner), shortfall, manner),
                                found.cost(),
                                explored + found.explored(),
                                shortfall,
                                manner);
                    }
                    case Search.Result.Undecided undecided -> {
                        return new Way.Undecided(undecided.limit());
                    }
                    case Search.Result.None none -> explored += none.explored();
                }
            }
        }
        return new Way.None(explored);
    }

    /** The way back to a state with these positions, doors, bolts and exchanges. */
    Way back(State from, State goal, Shortfall shortfall) {
        int explored = 0;
        for (Manner manner : Manner.STRICTEST_FIRST) {
            Search.Result result = GuidedSearch.cheapest(
                    scheme,
                    from,
                    Needs.everythingOf(scheme, goal),
                    state -> true,
                    (before, move, after) -> mayUse(move)
                            && harms(before, move, after).isEmpty()
                            && leavesNoMore(before, after, shortfall)
                            && keeps(manner, before, move, after)
                            && !(manner.groundedBySwitchOnly() && groundsByTheWay(before, move, after)),
                    this::cost,
                    request.limit());
            switch (result) {
                case Search.Result.Found found -> {
                    return new Way.Found(
                            together(from, moves(found.path()), shortfall, manner),
                            found.cost(),
                            explored + found.explored(),
                            shortfall,
                            manner);
                }
                case Search.Result.Undecided undecided -> {
                    return new Way.Undecided(undecided.limit());
                }
                case Search.Result.None none -> explored += none.explored();
            }
        }
        return new Way.None(explored);
    }

    /** The shortest way to the doors over any moves at all, safe or not. */
    Search.Result anyWay(State start) {
        return GuidedSearch.cheapest(
                scheme,
                start,
                openDoors(),
                state -> true,
                (before, move, after) -> mayUse(move),
                move -> 1,
                request.limit());
    }

    /** Properties that no plan may break and that this move breaks, by itself or by the state that it leads to. */
    Set<Property> harms(State before, Move move, State after) {
        Set<Property> broken = scheme.brokenBy(before, new Step(move, after));
        if (broken.isEmpty()) {
            return broken;
        }
        Set<Property> harms = EnumSet.copyOf(broken);
        harms.retainAll(Exposure.NEVER);
        return harms;
    }

    boolean isOpen(State state) {
        return (exposure.openDoors(state) & wantedDoors) == wantedDoors;
    }

    private boolean mayUse(Move move) {
        return !(move instanceof Move.Operate operate
                && request.devicesNotToUse().contains(operate.device()));
    }

    private Shortfall shortfall(State state) {
        Exposure.Conductors all = exposure.conductors(state);
        return new Shortfall(wanted & all.lowVoltage(), wanted & ~all.grounded() & ~all.lowVoltage());
    }

    /** No door stands open on more than the shortfall allows, except where that was so before the move. */
    private boolean leavesNoMore(State before, State after, Shortfall shortfall) {
        long low = exposure.lowVoltage(after) & ~shortfall.lowVoltage();
        long bare = bare(after, shortfall);
        return (low & ~exposure.lowVoltage(before)) == 0 && (bare & ~bare(before, shortfall)) == 0;
    }

    /** Behind an open wanted door, what is to be grounded must be; behind any other, what has no open stage switch before it. */
    private long bare(State state, Shortfall shortfall) {
        long open = exposure.openDoors(state) & wantedDoors;
        Exposure.Conductors all = exposure.conductors(state);
        long mustBe = exposure.exposedBy(open) & ~all.grounded() & ~all.lowVoltage();
        return (mustBe | exposure.ungrounded(state)) & ~shortfall.ungrounded();
    }

    private boolean keeps(Manner manner, State before, Move move, State after) {
        if (!(move instanceof Move.Operate operate)) {
            return true;
        }
        if (manner.doorsLast() && (exposure.openDoors(before) & wantedDoors) != 0) {
            return false;
        }
        if (manner.outOfAutomatic() && governedInAutomatic(before, operate.device())) {
            return false;
        }
        return !manner.oneStageAtATime() || stagesMadeLive(before, after).size() <= 1;
    }

    /** Whether a move other than that of a grounding switch grounds a conductor. */
    private boolean groundsByTheWay(State before, Move move, State after) {
        return move instanceof Move.Operate operate
                && scheme.isolation()
                        .device(operate.device())
                        .filter(d -> d.kind() != Device.Kind.GROUNDING_SWITCH)
                        .isPresent()
                && (exposure.conductors(after).grounded()
                                & ~exposure.conductors(before).grounded())
                        != 0;
    }

    private boolean governedInAutomatic(State state, String device) {
        Map<String, String> positions = scheme.positions(state);
        for (Interlock interlock : scheme.isolation().interlocks()) {
            if (interlock.device().equals(device)) {
                for (String other : interlock.requires().keySet()) {
                    if (isAutomatic(other, positions.getOrDefault(other, ""))) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    private boolean isAutomatic(String device, String position) {
        return scheme.isolation()
                        .device(device)
                        .filter(d -> d.kind() == Device.Kind.SELECTOR)
                        .isPresent()
                && position.toLowerCase(Locale.ROOT).startsWith("auto");
    }

    /** Stages that a move makes live. */
    List<String> stagesMadeLive(State before, State after) {
        long made =
                exposure.conductors(after).live() & ~exposure.conductors(before).live();
        List<String> names = new ArrayList<>();
        scheme.stages().forEach(s -> {
            if ((exposure.bits(List.of(s.name())) & made) != 0) {
                names.add(s.name());
            }
        });
        return names;
    }

    private static List<Move> moves(List<Step> path) {
        return path.stream().map(Step::move).toList();
    }

    /** The same moves with every wait as late as the locks and the properties allow, so that waits run together (ISO-4). */
    private List<Move> later(State start, List<Move> path, Shortfall shortfall, Manner manner) {
        List<Move> moves = new ArrayList<>(path);
        boolean changed = true;
        while (changed) {
            changed = false;
            for (int i = 0; i + 1 < moves.size(); i++) {
                if (moves.get(i) instanceof Move.Wait && !(moves.get(i + 1) instanceof Move.Wait)) {
                    List<Move> swapped = new ArrayList<>(moves);
                    Collections.swap(swapped, i, i + 1);
                    if (isSafe(start, swapped, shortfall, manner)) {
                        moves = swapped;
                        changed = true;
                    }
                }
            }
        }
        return moves;
    }

    /** The same moves with those on one thing done one after the other where locks and properties allow, so that people walk less (ISO-4). */
    private List<Step> together(State start, List<Move> path, Shortfall shortfall, Manner manner) {
        List<Move> moves = new ArrayList<>(path);
        for (int i = 0; i < moves.size(); i++) {
            for (int j = i + 2; j < moves.size(); j++) {
                if (!moves.get(j).what().equals(moves.get(i).what())
                        || moves.get(i + 1).what().equals(moves.get(i).what())) {
                    continue;
                }
                List<Move> moved = new ArrayList<>(moves);
                moved.add(i + 1, moved.remove(j));
                if (changesOfPlace(moved) < changesOfPlace(moves) && isSafe(start, moved, shortfall, manner)) {
                    moves = moved;
                }
            }
        }
        return steps(start, moves);
    }

    private static int changesOfPlace(List<Move> moves) {
        int changes = 0;
        for (int i = 1; i < moves.size(); i++) {
            changes += moves.get(i).what().equals(moves.get(i - 1).what()) ? 0 : 1;
        }
        return changes;
    }

    private boolean isSafe(State start, List<Move> moves, Shortfall shortfall, Manner manner) {
        State state = start;
        for (Move move : moves) {
            if (!scheme.allows(state, move)) {
                return false;
            }
            State after = scheme.apply(state, move);
            if (!mayUse(move)
                    || !harms(state, move, after).isEmpty()
                    || !leavesNoMore(state, after, shortfall)
                    || !keeps(manner, state, move, after)
                    || (manner.groundedBySwitchOnly() && groundsByTheWay(state, move, after))) {
                return false;
            }
            state = after;
        }
        return true;
    }

    private List<Step> steps(State start, List<Move> moves) {
        List<Step> steps = new ArrayList<>();
        State state = start;
        for (Move move : moves) {
            state = scheme.apply(state, move);
            steps.add(new Step(move, state));
        }
        return steps;
    }

    private static int exploredBy(Search.Result result) {
        return switch (result) {
            case Search.Result.Found found -> found.explored();
            case Search.Result.None none -> none.explored();
            case Search.Result.Undecided undecided -> undecided.limit();
        };
    }
}
