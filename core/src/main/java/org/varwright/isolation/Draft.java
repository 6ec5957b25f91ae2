package org.varwright.isolation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.basis.Basis;
import org.varwright.interlock.ConductorState;
import org.varwright.interlock.Move;
import org.varwright.interlock.Scheme;
import org.varwright.interlock.State;

/** Steps as they are written, with the state that each leaves. */
final class Draft {
    final Scheme scheme;
    final Phrases phrases;
    final Map<String, Integer> grounds;
    final Map<String, Integer> shorts;

    private final List<OrderStep> steps = new ArrayList<>();
    private final Map<String, String> keyAt = new LinkedHashMap<>();
    private State state;
    private int next;

    Draft(Scheme scheme, Phrases phrases, State start, Map<String, Integer> grounds, Map<String, Integer> shorts) {
        this.scheme = scheme;
        this.phrases = phrases;
        this.state = start;
        this.grounds = new LinkedHashMap<>(grounds);
        this.shorts = new LinkedHashMap<>(shorts);
        next = 1;
    }

    State state() {
        return state;
    }

    int size() {
        return steps.size();
    }

    List<OrderStep> from(int index) {
        return List.copyOf(steps.subList(index, steps.size()));
    }

    /** Starts a step; nothing happens before {@link Line#add}. */
    Line line(OrderStep.Kind kind, Task task, String where, String text) {
        return new Line(kind, task, where, text);
    }

    /** One step being put together. */
    final class Line {
        private final OrderStep.Kind kind;
        private final Task task;
        private final String where;
        private final String text;
        private OptionalDouble seconds = OptionalDouble.empty();
        private OrderStep.EnforcedBy enforcedBy = OrderStep.EnforcedBy.RULE;
        private String why = "";
        private String expected = "";
        private String ifNot = "";
        private boolean secondPerson;
        private boolean holdPoint;
        private Optional<OrderStep.Challenge> challenge = Optional.empty();
        private List<String> items = List.of();
        private Optional<Basis> basis = Optional.empty();

        private Line(OrderStep.Kind kind, Task task, String where, String text) {
            this.kind = kind;
            this.task = task;
            this.where = where;
            this.text = text;
        }

        Line seconds(double value) {
            seconds = OptionalDouble.of(value);
            return this;
        }

        Line byLock(boolean lock) {
            enforcedBy = lock ? OrderStep.EnforcedBy.LOCK : OrderStep.EnforcedBy.RULE;
            return this;
        }

        Line why(String value) {
            why = value;
            return this;
        }

        Line expect(String value, String otherwise) {
            expected = value;
            ifNot = otherwise;
            return this;
        }

        Line secondPerson() {
            secondPerson = true;
            return this;
        }

        Line holdPoint() {
            holdPoint = true;
            return this;
        }

        Line challenge(String say, String answer) {
            challenge = Optional.of(new OrderStep.Challenge(say, answer));
            return this;
        }

        Line items(List<String> value) {
            items = value;
            return this;
        }

        Line basis(Basis value) {
            basis = Optional.of(value);
            return this;
        }

        void add() {
            List<OrderStep.KeyMove> keys = new ArrayList<>();
            List<Move> moves = movesOf(task);
            for (Move move : moves) {
                keys.addAll(keysOf(move));
                state = scheme.apply(state, move);
            }
            States.apply(task, grounds, shorts);
            steps.add(new OrderStep(
                    next++,
                    kind,
                    task,
                    text,
                    where,
                    seconds,
                    conductors(),
                    enforcedBy,
                    why,
                    keys,
                    expected,
                    ifNot,
                    secondPerson,
                    holdPoint,
                    challenge,
                    items,
                    basis));
        }
    }

    private static List<Move> movesOf(Task task) {
        return task instanceof Task.Moved moved
                ? List.of(moved.move())
                : task instanceof Task.Energized energized
                        ? List.of(energized.move())
                        : task instanceof Task.Held held ? held.waits() : List.of();
    }

    /** What the conductors are, portable grounds counted in. */
    Map<String, ConductorState> conductors() {
        Map<String, ConductorState> all = new LinkedHashMap<>(scheme.conductors(state));
        all.replaceAll((name, is) -> grounds.getOrDefault(name, 0) >= Poles.PHASES
                        && (is == ConductorState.FLOATING || is == ConductorState.CHARGED)
                ? ConductorState.GROUNDED
                : is);
        return all;
    }

    private List<OrderStep.KeyMove> keysOf(Move move) {
        List<OrderStep.KeyMove> keys = new ArrayList<>();
        switch (move) {
            case Move.Withdraw withdraw -> withdraw.keys().forEach(k -> keys.add(in(k, phrases.lock(withdraw.lock()))));
            case Move.Extend extend -> extend.keys().forEach(k -> keys.add(out(k, phrases.lock(extend.lock()))));
            case Move.Give give -> {
                give.exchange().in().forEach(k -> keys.add(in(k, give.exchange().name())));
                give.exchange()
                        .out()
                        .forEach(k -> keys.add(out(k, give.exchange().name())));
            }
            case Move.Return back -> {
                back.exchange()
                        .out()
                        .forEach(k -> keys.add(in(k, back.exchange().name())));
                back.exchange()
                        .in()
                        .forEach(k -> keys.add(out(k, back.exchange().name())));
            }
            case Move.Operate ignored -> {}
            case Move.OpenDoor ignored -> {}
            case Move.CloseDoor ignored -> {}
            case Move.Wait ignored -> {}
        }
        return keys;
    }

    private OrderStep.KeyMove in(String key, String to) {
        String taken = keyAt.remove(key);
        return new OrderStep.KeyMove(
                key, taken == null ? "in hand, or hanging where it is free" : "in hand, from " + taken, to);
    }

    private OrderStep.KeyMove out(String key, String from) {
        keyAt.put(key, from);
        return new OrderStep.KeyMove(key, from, "in hand, kept by the person in charge");
    }
}
