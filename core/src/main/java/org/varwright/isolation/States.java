package org.varwright.isolation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.Lock;
import org.varwright.interlock.Move;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** States of a scheme to saved states and back. */
final class States {
    private States() {}

    static SavedState save(
            Scheme scheme, String bank, State state, Map<String, Integer> grounds, Map<String, Integer> shorts) {
        Map<String, Boolean> bolts = new LinkedHashMap<>();
        List<Boolean> extended = scheme.boltsExtended(state);
        List<String> names = lockNames(scheme);
        for (int i = 0; i < extended.size(); i++) {
            bolts.put(names.get(i), extended.get(i));
        }
        return new SavedState(
                bank,
                scheme.positions(state),
                scheme.doors(state),
                bolts,
                scheme.exchangesGiven(state),
                scheme.charges(state),
                grounds,
                shorts);
    }

    /** A name for every lock; locks that would have the same name are told apart by their order. */
    private static List<String> lockNames(Scheme scheme) {
        List<String> names = new ArrayList<>();
        for (Lock lock : scheme.isolation().locks()) {
            String name = SavedState.lockName(lock);
            int same = 1;
            while (names.contains(name)) {
                same++;
                name = SavedState.lockName(lock) + "/" + same;
            }
            names.add(name);
        }
        return names;
    }

    /**
     * The state of a scheme that was saved.
     *
     * @throws VarwrightException where its names are not those of the scheme
     */
    static State load(Scheme scheme, String bank, SavedState saved) {
        List<Problem> problems = new ArrayList<>();
        if (!saved.bank().equals(bank)) {
            problems.add(
                    Problem.of(Message.ISOLATION_STATE_OTHER_BANK, new Place("", 0, 0, "bank"), saved.bank(), bank));
        }
        State any = scheme.start();
        names(
                problems,
                "positions",
                saved.positions().keySet(),
                scheme.positions(any).keySet());
        names(
                problems,
                "openDoors",
                saved.openDoors().keySet(),
                scheme.doors(any).keySet());
        names(problems, "bolts", saved.bolts().keySet(), new LinkedHashSet<>(lockNames(scheme)));
        names(
                problems,
                "exchanges",
                saved.exchanges().keySet(),
                scheme.exchangesGiven(any).keySet());
        names(problems, "charges", saved.charges().keySet(), scheme.charges(any).keySet());
        saved.positions()
                .forEach((name, position) -> scheme.isolation().device(name).ifPresent(device -> {
                    if (!device.positions().contains(position)) {
                        problems.add(Problem.of(
                                Message.ISOLATION_UNKNOWN_POSITION,
                                new Place("", 0, 0, "positions." + name),
                                name,
                                position,
                                String.join(", ", device.positions())));
                    }
                }));
        if (!problems.isEmpty()) {
            throw new VarwrightException(problems);
        }
        List<Boolean> extended = new ArrayList<>();
        lockNames(scheme).forEach(name -> extended.add(saved.bolts().getOrDefault(name, false)));
        return scheme.stateOf(
                saved.positions(),
                trueOnes(saved.openDoors()),
                extended,
                trueOnes(saved.exchanges()),
                trueOnes(saved.charges()));
    }

    private static void names(List<Problem> problems, String part, Set<String> found, Set<String> wanted) {
        if (!new LinkedHashSet<>(found).equals(new LinkedHashSet<>(wanted))) {
            problems.add(Problem.of(
                    Message.ISOLATION_STATE_NAMES, new Place("", 0, 0, part), part, String.join(", ", wanted)));
        }
    }

    private static Set<String> trueOnes(Map<String, Boolean> flags) {
        Set<String> names = new LinkedHashSet<>();
        flags.forEach((name, value) -> {
            if (value) {
                names.add(name);
            }
        });
        return names;
    }

    static SavedState after(OrderOfWork order, int n) {
        Scheme scheme = Scheme.of(order.bank());
        State state = load(scheme, order.bank().name(), order.start());
        Map<String, Integer> grounds = new LinkedHashMap<>(order.start().grounds());
        Map<String, Integer> shorts = new LinkedHashMap<>(order.start().shorts());
        for (OrderStep step : order.steps()) {
            if (step.n() > n) {
                break;
            }
            for (Move move : step.moves()) {
                state = scheme.apply(state, move);
            }
            apply(step.task(), grounds, shorts);
        }
        return save(scheme, order.bank().name(), state, grounds, shorts);
    }

    /** What a task does to the portable grounds and shorts. */
    static void apply(Task task, Map<String, Integer> grounds, Map<String, Integer> shorts) {
        switch (task) {
            case Task.GroundsOn on -> grounds.merge(on.conductor(), on.count(), Integer::sum);
            case Task.GroundsOff off -> grounds.remove(off.conductor());
            case Task.ShortsOn on -> shorts.put(on.stage(), on.count());
            case Task.ShortsOff off -> shorts.remove(off.stage());
            case Task.Moved ignored -> {}
            case Task.Energized ignored -> {}
            case Task.Held ignored -> {}
            case Task.Looked ignored -> {}
            case Task.TesterProved ignored -> {}
            case Task.TestedDead ignored -> {}
            case Task.TestedNoCurrent ignored -> {}
            case Task.TestedBeforeGrounding ignored -> {}
            case Task.TestedFreeOfGround ignored -> {}
            case Task.TestedNoCapacitance ignored -> {}
            case Task.StickUsed ignored -> {}
            case Task.LocksOn ignored -> {}
            case Task.LocksOff ignored -> {}
            case Task.Counted ignored -> {}
            case Task.Confirmed ignored -> {}
        }
    }
}
