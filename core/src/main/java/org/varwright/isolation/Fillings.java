package org.varwright.isolation;

import java.util.Collections;
import java.util.LinkedHashSet;
import java.util.Set;
import org.varwright.interlock.Move;

/**
 * Steps that the table of single faults asked for.
 *
 * @param noCurrentBefore openings, as {@link #opening} writes them, before which the current is read
 * @param deadBefore grounding switches before whose closing their conductor is tested
 * @param groundsOn conductors that get portable grounds beside their grounding switch
 * @param locksOn devices that get personal locks too
 * @param freeOfGroundAfter grounding switches after whose opening their conductor is proved free of ground
 * @param noCapacitanceBefore disconnectors before whose closing no stage must be joined behind them
 */
record Fillings(
        Set<String> noCurrentBefore,
        Set<String> deadBefore,
        Set<String> groundsOn,
        Set<String> locksOn,
        Set<String> freeOfGroundAfter,
        Set<String> noCapacitanceBefore) {
    static final Fillings NONE = new Fillings(Set.of(), Set.of(), Set.of(), Set.of(), Set.of(), Set.of());

    Fillings {
        noCurrentBefore = keep(noCurrentBefore);
        deadBefore = keep(deadBefore);
        groundsOn = keep(groundsOn);
        locksOn = keep(locksOn);
        freeOfGroundAfter = keep(freeOfGroundAfter);
        noCapacitanceBefore = keep(noCapacitanceBefore);
    }

    /** A device with the position that it is moved to. */
    static String opening(Move move) {
        return move.what() + " " + move.to().orElse("");
    }

    private static Set<String> keep(Set<String> names) {
        return Collections.unmodifiableSet(new LinkedHashSet<>(names));
    }

    private static Set<String> with(Set<String> names, String name) {
        Set<String> more = new LinkedHashSet<>(names);
        more.add(name);
        return more;
    }

    Fillings noCurrentBefore(String opening) {
        return new Fillings(
                with(noCurrentBefore, opening), deadBefore, groundsOn, locksOn, freeOfGroundAfter, noCapacitanceBefore);
    }

    Fillings deadBefore(String device) {
        return new Fillings(
                noCurrentBefore, with(deadBefore, device), groundsOn, locksOn, freeOfGroundAfter, noCapacitanceBefore);
    }

    Fillings groundOn(String conductor) {
        return new Fillings(
                noCurrentBefore,
                deadBefore,
                with(groundsOn, conductor),
                locksOn,
                freeOfGroundAfter,
                noCapacitanceBefore);
    }

    Fillings lockOn(String device) {
        return new Fillings(
                noCurrentBefore, deadBefore, groundsOn, with(locksOn, device), freeOfGroundAfter, noCapacitanceBefore);
    }

    Fillings freeOfGroundAfter(String device) {
        return new Fillings(
                noCurrentBefore, deadBefore, groundsOn, locksOn, with(freeOfGroundAfter, device), noCapacitanceBefore);
    }

    Fillings noCapacitanceBefore(String device) {
        return new Fillings(
                noCurrentBefore, deadBefore, groundsOn, locksOn, freeOfGroundAfter, with(noCapacitanceBefore, device));
    }
}
