package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;
import org.varwright.resonance.BankText;

/** Scarce spares: as many stages as possible are made whole, those that need fewest first; a spare that fits two stages goes where no other does. */
class AllotmentTest {
    private static final Bank BANK = BankText.bank(BankText.system("12.47", "200", ""), """
            unit-types:
              - {name: U, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %], bil: 95 kV}
              - {name: V, rating: 200 kvar, voltage: 7.2 kV, frequency: 60 Hz, tolerance: [0 %, +10 %], bil: 75 kV}
            stages:
              - {name: one, connection: wye-ungrounded, groups: 1, units: 3, unit: U}
              - {name: two, connection: wye-ungrounded, groups: 1, units: 3, unit: V}
              - {name: three, connection: wye-ungrounded, groups: 1, units: 3, unit: V}
            """);

    /** Type U has the higher BIL and may stand for V; V may not stand for U. */
    private static Spare spare(String serial, String type) {
        UnitType unit = BANK.unitTypes().stream()
                .filter(t -> t.name().equals(type))
                .findFirst()
                .orElseThrow();
        return new Spare(serial, unit, OptionalDouble.of(1.05 * unit.capacitanceFarads()), Optional.empty());
    }

    private static List<String> whole(Set<String> open, Spare... spares) {
        Set<UnitPosition> positions =
                BANK.positions().stream().filter(p -> open.contains(p.name())).collect(Collectors.toSet());
        assertEquals(open.size(), positions.size(), "every name is a position");
        return Allotment.whole(BANK, positions, List.of(spares)).stream()
                .map(Stage::name)
                .toList();
    }

    @Test
    void whichStagesAreMadeWhole() {
        Set<String> open = Set.of("one/A/u1", "two/A/u1", "two/B/u1", "three/C/u3");
        assertEquals(List.of(), whole(open));
        assertEquals(List.of("two", "three"), whole(Set.of("one/A/u1")), "what needs nothing is whole");
        assertEquals(List.of("three"), whole(open, spare("S1", "V")), "V doesn't fit stage one");
        assertEquals(List.of("one"), whole(open, spare("S1", "U")), "of equals the first");
        // Both fit three, only U fits one: the search must not give U to three.
        assertEquals(List.of("one", "three"), whole(open, spare("S1", "U"), spare("S2", "V")));
        assertEquals(List.of("one", "three"), whole(open, spare("S1", "V"), spare("S2", "U")));
        // Three spares: one and three need one each; two needs two, and the third is not enough for it.
        assertEquals(List.of("one", "three"), whole(open, spare("S1", "U"), spare("S2", "V"), spare("S3", "V")));
        assertEquals(
                List.of("one", "two", "three"),
                whole(open, spare("S1", "V"), spare("S2", "V"), spare("S3", "U"), spare("S4", "V")));
        assertEquals(
                List.of("two", "three"),
                whole(open, spare("S1", "V"), spare("S2", "V"), spare("S3", "V"), spare("S4", "V")),
                "no V goes into stage one");
    }

    /** The plan does as the allotment says: what is not made whole gets run-on advice, and is called short. */
    @Test
    void thePlanFollows() {
        double farads = 1.05 * BANK.stages().getFirst().unit().capacitanceFarads();
        List<Fitted> units = BANK.positions().stream()
                .map(p -> FitBanks.fitted(
                        p,
                        farads,
                        Set.of("one/A/u1", "two/A/u1", "two/B/u1").contains(p.name())
                                ? Fitted.Role.CONDEMNED
                                : Fitted.Role.KEPT))
                .toList();
        FitResult result =
                Fit.plan(FitBanks.input(BANK, units, List.of(spare("S1", "V"), spare("S2", "U")), FitOptions.USUAL));
        assertEquals(FitResult.Outcome.SPARES_MISSING, result.outcome());
        assertTrue(
                result.moves().stream().anyMatch(m -> m.serial().equals("S2") && m.to().equals("one/A/u1")),
                result.moves().toString());
        assertEquals(List.of("two"), result.runOn().stream().map(RunOn::stage).toList());
        assertEquals(1, result.runOn().getFirst().missing());
    }
}
