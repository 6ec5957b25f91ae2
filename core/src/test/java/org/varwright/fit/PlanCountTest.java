package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Banks;

/** FIT-4: how many plans there are at most. */
class PlanCountTest {
    private static Puzzle puzzle(int parallel, int condemned, int spares, long seed) {
        Bank bank = Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, parallel).bank();
        FitInput input = FitBanks.random(bank, new Random(seed), condemned, spares, 0.08, FitOptions.USUAL);
        Set<UnitPosition> open = input.units().stream()
                .filter(u -> u.role() == Fitted.Role.CONDEMNED)
                .map(Fitted::at)
                .collect(Collectors.toSet());
        return Board.of(bank, bank.stages(), Arrangement.asFound(input.units()), open, Set.of(), input.spares())
                .puzzle();
    }

    /**
     * Six positions, five units that stay, one hole, three spares; counted by hand.
     *
     * <p>No lift more: each spare, 3. One more: a unit out of 5 into the hole or back, a spare into what is left: 5·2·3 = 30. Two more: two units out of 5
     * into three holes, 10·9·3 = 270; or one unit out for good and two spares, 5·3·2 = 30.
     */
    @Test
    void countedByHand() {
        Puzzle puzzle = puzzle(2, 1, 3, 1);
        assertEquals(3.0, Exhaustive.plans(puzzle, 0));
        assertEquals(30.0, Exhaustive.plans(puzzle, 1));
        assertEquals(300.0, Exhaustive.plans(puzzle, 2));
    }

    /** Two holes of one group are alike: 4 spares give 4·3/2 = 6 pairs. */
    @Test
    void placesOfOneGroupAreAlike() {
        long seed = 0;
        Puzzle puzzle;
        do {
            puzzle = puzzle(3, 2, 4, seed++);
        } while (Arrays.stream(puzzle.open()).max().orElseThrow() < 2);
        assertEquals(6.0, Exhaustive.plans(puzzle, 0));
    }

    @Test
    void neverFewerThanTheSearchLooksAt() {
        for (long seed = 1; seed <= 40; seed++) {
            int condemned = 1 + (int) (seed % 2);
            Puzzle puzzle = puzzle(3, condemned, 4, seed);
            Exhaustive search = new Exhaustive(puzzle, 2);
            double atMost = 0.0;
            for (int extra = 0; extra <= 2; extra++) {
                assertTrue(search.best(extra).isPresent(), "seed " + seed);
                atMost += Exhaustive.plans(puzzle, extra);
                assertTrue(search.examined() <= atMost, "seed " + seed + ": " + search.examined() + " of " + atMost);
            }
            assertTrue(search.examined() > 0, "seed " + seed);
        }
    }

    @Test
    void withoutASpareForEveryHoleThereIsNone() {
        assertEquals(0.0, Exhaustive.plans(puzzle(2, 2, 1, 1), 0));
    }
}
