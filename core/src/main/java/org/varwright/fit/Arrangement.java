package org.varwright.fit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.varwright.bank.UnitPosition;

/**
 * Which unit is in which position.
 *
 * @param contents every position of the bank, in its order
 */
record Arrangement(Map<UnitPosition, Content> contents) {

    /** As it is now. */
    static Arrangement asFound(List<Fitted> units) {
        Map<UnitPosition, Content> contents = new LinkedHashMap<>();
        for (Fitted unit : units) {
            contents.put(
                    unit.at(), unit.role() == Fitted.Role.EMPTY ? new Content.Nothing() : new Content.InPlace(unit));
        }
        return new Arrangement(contents);
    }

    Content at(UnitPosition position) {
        Content content = contents.get(position);
        if (content == null) {
            throw new IllegalArgumentException(position.name());
        }
        return content;
    }

    double farads(UnitPosition position) {
        return at(position).farads();
    }

    /** The same with other contents of some positions. */
    Arrangement with(Map<UnitPosition, Content> changes) {
        Map<UnitPosition, Content> copy = new LinkedHashMap<>(contents);
        copy.putAll(changes);
        return new Arrangement(copy);
    }

    /** The lifts that lead from {@code before} to this: out first, then from place to place as places come free, then spares in. */
    List<Move> movesFrom(Arrangement before) {
        Map<Fitted, UnitPosition> target = new HashMap<>();
        contents.forEach((position, content) -> {
            if (content instanceof Content.InPlace u) {
                target.put(u.unit(), position);
            }
        });
        List<Move> moves = new ArrayList<>();
        List<Fitted> moving = new ArrayList<>();
        Set<UnitPosition> occupied = new HashSet<>();
        before.contents.forEach((position, content) -> {
            if (content instanceof Content.InPlace u) {
                UnitPosition to = target.get(u.unit());
                if (to == null) {
                    moves.add(new Move(
                            moves.size() + 1,
                            Move.Kind.TAKE_OUT,
                            u.unit().name(),
                            position.name(),
                            u.unit().role() == Fitted.Role.CONDEMNED ? Move.OUT : Move.ASIDE,
                            false,
                            u.unit().why()));
                    return;
                }
                occupied.add(position);
                if (!to.equals(position)) {
                    moving.add(u.unit());
                }
            }
        });
        relocate(moving, target, before, occupied, moves);
        contents.forEach((position, content) -> {
            if (content instanceof Content.FromStock s) {
                moves.add(new Move(
                        moves.size() + 1,
                        Move.Kind.PUT_IN,
                        s.spare().serial(),
                        Move.SPARES,
                        position.name(),
                        false,
                        ""));
            }
        });
        return moves;
    }

    private static void relocate(
            List<Fitted> moving,
            Map<Fitted, UnitPosition> target,
            Arrangement before,
            Set<UnitPosition> occupied,
            List<Move> moves) {
        Map<Fitted, UnitPosition> from = new HashMap<>();
        before.contents.forEach((position, content) -> {
            if (content instanceof Content.InPlace u) {
                from.put(u.unit(), position);
            }
        });
        List<Fitted> left = new ArrayList<>(moving);
        while (!left.isEmpty()) {
            Fitted next = left.stream()
                    .filter(u -> !occupied.contains(target.get(u)))
                    .findFirst()
                    .orElse(left.getFirst());
            UnitPosition to = target.get(next);
            UnitPosition here = from.get(next);
            if (to == null || here == null) {
                throw new IllegalStateException(next.name());
            }
            moves.add(new Move(
                    moves.size() + 1,
                    Move.Kind.RELOCATE,
                    next.name(),
                    here.name(),
                    to.name(),
                    occupied.contains(to),
                    next.why()));
            occupied.remove(here);
            left.remove(next);
        }
    }
}
