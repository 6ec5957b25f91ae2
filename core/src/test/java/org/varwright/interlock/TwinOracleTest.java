package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** The verifier against {@link PlainSimulator}: the same states, moves and fewest moves to every broken property. */
class TwinOracleTest {
    private static final int SCHEMES = 80;

    static Map<String, Integer> shortest(Verification verification) {
        Map<String, Integer> shortest = new TreeMap<>();
        verification.outcomes().forEach((property, outcome) -> {
            if (outcome instanceof Verification.Outcome.NotEnforced broken) {
                shortest.put(property.id(), broken.path().size());
            }
        });
        return shortest;
    }

    private static Set<String> same(String what, Schemes schemes) {
        Verification verification = Verifier.verify(schemes.scheme(), 1_000_000_000L, Verifier.Progress.SILENT);
        PlainSimulator.Walk walk = new PlainSimulator(schemes.isolation(), schemes.stages()).walk();
        assertEquals(walk.states(), verification.states(), what + ": states");
        assertEquals(walk.moves(), verification.moves(), what + ": moves");
        assertEquals(walk.shortest(), shortest(verification), what + ": fewest moves to harm");
        return walk.shortest().keySet();
    }

    @Test
    void theExample() {
        same("example", Schemes.enclosed(4));
    }

    @Test
    void seededRandomSchemes() {
        Map<String, Integer> broken = new TreeMap<>();
        for (long seed = 1; seed <= SCHEMES; seed++) {
            same("seed " + seed, RandomScheme.of(seed)).forEach(p -> broken.merge(p, 1, Integer::sum));
        }
        Set<String> all = new TreeSet<>();
        for (Property property : Property.values()) {
            all.add(property.id());
        }
        assertEquals(all, broken.keySet(), "every property is broken somewhere, else this compares nothing: " + broken);
        assertTrue(broken.values().stream().allMatch(n -> n < SCHEMES), "and kept somewhere: " + broken);
    }

    /** Thirty doors that never open blow the state up past one number: the numbered halves must count the same. */
    @Test
    void aStateTooWideForOneNumber() {
        Schemes schemes = Schemes.enclosed(2)
                .exchange("never 1", List.of("P"), List.of("Q"))
                .exchange("never 2", List.of("Q"), List.of("P"));
        for (int i = 1; i <= 30; i++) {
            schemes.compartment("spare " + i, "bus").doorLock("spare " + i, "Q");
        }
        assertFalse(schemes.scheme().layout().isNarrow());
        same("wide", schemes);
    }
}
