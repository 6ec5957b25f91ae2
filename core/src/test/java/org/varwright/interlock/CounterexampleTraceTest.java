package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Every counterexample is replayed on {@link PlainSimulator}: each move is allowed there and the last one breaks the property. */
class CounterexampleTraceTest {
    private static int replay(String what, Schemes schemes) {
        Scheme scheme = schemes.scheme();
        Verification verification = Verifier.verify(scheme, 1_000_000_000L, Verifier.Progress.SILENT);
        PlainSimulator plain = new PlainSimulator(schemes.isolation(), schemes.stages());
        int replayed = 0;
        for (Property property : Property.values()) {
            if (!(verification.outcome(property) instanceof Verification.Outcome.NotEnforced broken)) {
                continue;
            }
            replayed++;
            PlainSimulator.Spot spot = plain.start();
            Set<String> brokenLast = new TreeSet<>(plain.brokenIn(spot));
            for (Step step : broken.path()) {
                String name = PlainSimulator.nameOf(step.move());
                PlainSimulator.Spot at = spot;
                PlainSimulator.Action action = plain.actions(spot).stream()
                        .filter(a -> a.name().equals(name))
                        .findFirst()
                        .orElseThrow(() -> new AssertionError(what + ": " + name + " is not allowed in " + at));
                spot = action.after();
                brokenLast = new TreeSet<>(action.breaks());
                brokenLast.addAll(plain.brokenIn(spot));
                assertEquals(spot.devices(), new java.util.TreeMap<>(scheme.positions(step.after())), what);
            }
            if (property == Property.KEY_STRANDED) {
                assertTrue(isStranded(plain, spot), what + ": gets home after all");
            } else {
                assertTrue(brokenLast.contains(property.id()), what + ": " + property.id() + " is not broken");
            }
        }
        return replayed;
    }

    private static boolean isStranded(PlainSimulator plain, PlainSimulator.Spot from) {
        Set<PlainSimulator.Spot> seen = new HashSet<>(Set.of(from));
        List<PlainSimulator.Spot> open = new java.util.ArrayList<>(seen);
        while (!open.isEmpty()) {
            for (PlainSimulator.Action action : plain.actions(open.removeLast())) {
                if (seen.add(action.after())) {
                    open.add(action.after());
                }
            }
        }
        return !seen.contains(plain.inService());
    }

    @Test
    void theExample() {
        assertEquals(3, replay("example", Schemes.enclosed(4)));
    }

    @Test
    void seededRandomSchemes() {
        int replayed = 0;
        for (long seed = 1; seed <= 60; seed++) {
            replayed += replay("seed " + seed, RandomScheme.of(seed));
        }
        assertTrue(replayed > 100, replayed + " counterexamples are too few to mean anything");
    }
}
