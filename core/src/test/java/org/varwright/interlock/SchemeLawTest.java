package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Isolation;

/** Laws that hold for every scheme; the seed that breaks one is printed. */
class SchemeLawTest {
    private static final int SEEDS = 60;

    private static Verification verify(Isolation isolation, List<StagePoint> stages) {
        return Verifier.verify(Scheme.of(isolation, stages), 1_000_000_000L, Verifier.Progress.SILENT);
    }

    private static <T> List<T> shuffled(List<T> items, Random random) {
        List<T> copy = new ArrayList<>(items);
        Collections.shuffle(copy, random);
        return copy;
    }

    @Test
    void theOrderOfTheFileChangesNothing() {
        for (long seed = 1; seed <= SEEDS; seed++) {
            Random random = new Random(seed);
            Schemes schemes = RandomScheme.of(seed);
            Isolation in = schemes.isolation();
            Isolation other = new Isolation(
                    shuffled(in.sources(), random),
                    shuffled(in.devices(), random),
                    shuffled(in.compartments(), random),
                    shuffled(in.locks(), random),
                    in.keys(),
                    shuffled(in.exchanges(), random),
                    shuffled(in.interlocks(), random),
                    shuffled(in.delays(), random),
                    in.start());
            Verification before = verify(in, schemes.stages());
            Verification after = verify(other, shuffled(schemes.stages(), random));
            assertEquals(before.states(), after.states(), "seed " + seed);
            assertEquals(before.moves(), after.moves(), "seed " + seed);
            assertEquals(TwinOracleTest.shortest(before), TwinOracleTest.shortest(after), "seed " + seed);
        }
    }

    /** One more copy of a key only adds moves, so what was broken stays broken, and by no longer a way. */
    @Test
    void anotherCopyOfAKeyNeverMakesASchemeSafer() {
        int compared = 0;
        for (long seed = 1; seed <= SEEDS; seed++) {
            Schemes schemes = RandomScheme.of(seed);
            Scheme scheme = schemes.scheme();
            Verification before = verify(schemes.isolation(), schemes.stages());
            for (String key : schemes.isolation().keyNames()) {
                Verification after =
                        verify(Changed.copies(schemes.isolation(), key, scheme.copies(key) + 1), schemes.stages());
                assertTrue(after.states() >= before.states(), "seed " + seed + " key " + key);
                Set<String> broken =
                        new TreeSet<>(TwinOracleTest.shortest(before).keySet());
                broken.remove(Property.KEY_STRANDED.id());
                for (String property : broken) {
                    Integer longer = TwinOracleTest.shortest(after).get(property);
                    assertTrue(
                            longer != null
                                    && longer <= TwinOracleTest.shortest(before).getOrDefault(property, 0),
                            "seed " + seed + " key " + key + " " + property);
                    compared++;
                }
            }
        }
        assertTrue(compared > SEEDS, compared + " comparisons are too few to mean anything");
    }
}
