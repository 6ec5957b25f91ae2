package org.varwright.unbalance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.network.Banks;
import org.varwright.network.Capacitances;
import org.varwright.network.Failure;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;
import org.varwright.quantity.Complex;

/** UNB-6: two failures at once are found where no single one explains the reading. The reading is the network's own, solved afresh. */
class LocatePairsTest {
    private static final Supply SUPPLY = new Supply.Balanced(13800.0);

    private static Locate located(Bank bank, List<String> positions) {
        Stage stage = bank.stages().getFirst();
        Map<UnitPosition, Double> readings = new HashMap<>();
        bank.positions().forEach(p -> readings.put(p, stage.unit().capacitanceFarads()));
        List<Failure> failures = bank.positions().stream()
                .filter(p -> positions.contains(p.name()))
                .<Failure>map(Failure.UnitOut::new)
                .toList();
        assertEquals(positions.size(), failures.size(), "positions of " + bank.positions());
        Solution.Solved solved = assertInstanceOf(
                Solution.Solved.class,
                Network.of(bank, stage, Capacitances.nameplate(bank), SUPPLY).solveAfresh(failures));
        Complex shown = solved.sensors().getFirst().primary();
        Sighting sighting = new Sighting(
                solved.sensors().getFirst().name(),
                shown.magnitude(),
                true,
                OptionalDouble.of(shown.degrees()),
                0.01,
                Optional.of(Complex.ZERO),
                Map.of());
        return Locator.locate(bank, readings, SUPPLY, Assumptions.USUAL, sighting);
    }

    private static Set<String> places(Candidate candidate) {
        return candidate.parts().stream().map(Candidate.Part::place).collect(Collectors.toSet());
    }

    /**
     * A unit out in leg A of the first star, another in leg B of the second: the neutrals see the sum of two phasors 60° apart, √3 times one, which no single
     * failure gives.
     */
    @Test
    void twoLegs() {
        Bank bank = Banks.plan(Connection.DOUBLE_WYE_UNGROUNDED, 1, 1, 4)
                .rated(100e3, 7960.0)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 50.0, 5.0))
                .bank();
        Locate locate = located(bank, List.of("F/A1/u1", "F/B2/u1"));
        assertTrue(locate.isExplained(), LocateText.of(locate));
        Candidate best = locate.candidates().getFirst();
        assertEquals(2, best.parts().size(), LocateText.of(locate));
        assertTrue(
                locate.candidates().stream()
                        .anyMatch(c -> c.parts().size() == 2
                                && places(c).equals(Set.of("F/A1", "F/B2"))
                                && c.parts().stream().allMatch(p -> p.count() == 1)
                                && c.distance() < 0.1),
                LocateText.of(locate));
        assertTrue(
                locate.candidates().stream().noneMatch(c -> c.parts().size() == 1 && c.distance() < 1.0),
                LocateText.of(locate));
    }

    /** A unit out in each of two groups in series of one leg is not two out of one group: a quarter less current, not a third. */
    @Test
    void twoGroupsOfOneLeg() {
        Bank bank = Banks.plan(Connection.WYE_GROUNDED, 1, 2, 4)
                .rated(100e3, 3980.0)
                .sensing(Banks.sensor(Protection.Senses.NEUTRAL_CURRENT, 50.0, 5.0))
                .bank();
        Locate locate = located(bank, List.of("F/A/g1u1", "F/A/g2u1"));
        assertTrue(
                locate.candidates().stream()
                        .anyMatch(c -> c.parts().size() == 2
                                && places(c).equals(Set.of("F/A"))
                                && c.parts().stream()
                                        .allMatch(
                                                p -> p.count() == 1 && p.kind().equals("unit-out"))
                                && c.distance() < 0.1),
                LocateText.of(locate));
        Locate inOne = located(bank, List.of("F/A/g1u1", "F/A/g1u2"));
        Candidate best = inOne.candidates().getFirst();
        assertTrue(best.distance() < 0.1, LocateText.of(inOne));
        assertTrue(
                inOne.candidates().stream()
                        .filter(c -> c.parts().size() == 2 && places(c).equals(Set.of("F/A")))
                        .noneMatch(c -> c.parts().stream()
                                        .allMatch(
                                                p -> p.count() == 1 && p.kind().equals("unit-out"))
                                && c.distance() < 1.0),
                LocateText.of(inOne));
    }
}
