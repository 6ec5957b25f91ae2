package org.varwright.unbalance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.network.Banks;
import org.varwright.quantity.Complex;

/** UNB-7: what is measured next is what settles most of the doubt; worked out by hand for two or three candidates. */
class NextMeasurementsTest {
    private static final Bank BANK =
            Banks.plan(Connection.WYE_UNGROUNDED, 1, 1, 4).bank();
    private static final List<Double> LINES = List.of(40.0, 40.0, 40.0);

    private static Candidate candidate(
            String leg, String kind, double probability, double degrees, List<Double> lines) {
        return new Candidate(
                List.of(new Candidate.Part("F/" + leg, kind, 1, 1, 4, List.of())),
                probability,
                Complex.polar(100.0, degrees),
                lines,
                0.0);
    }

    private static List<String> next(Candidate... candidates) {
        return NextMeasurements.of(
                BANK,
                List.of(candidates),
                Sighting.of("F neutral-voltage", 1.4),
                BANK.protection().getFirst());
    }

    /** Same lines, same look from outside, sensor turned by 120°: only the angle settles it, and settles all of it, short of taking the bank out. */
    @Test
    void theAngleTellsLegsApart() {
        List<String> next = next(
                candidate("A", "sections-shorted", 0.5, 0.0, LINES),
                candidate("B", "sections-shorted", 0.5, -120.0, LINES));
        assertEquals(2, next.size(), next.toString());
        assertTrue(next.getFirst().startsWith("The angle of the sensor"), next.toString());
        assertTrue(next.getLast().contains("capacitance of every unit of F/A, F/B"), next.toString());
    }

    /** 15° is too near to be told apart by a relay's angle, 16° is not. */
    @Test
    void anAngleNearbyTellsNothing() {
        assertTrue(next(
                        candidate("A", "sections-shorted", 0.5, 0.0, LINES),
                        candidate("B", "sections-shorted", 0.5, 14.9, LINES))
                .stream()
                .noneMatch(n -> n.startsWith("The angle")));
        assertTrue(next(
                        candidate("A", "sections-shorted", 0.5, 0.0, LINES),
                        candidate("B", "sections-shorted", 0.5, -15.1, LINES))
                .stream()
                .anyMatch(n -> n.startsWith("The angle")));
    }

    /** A clamp meter tells lines 4 % apart. */
    @Test
    void linesFarEnoughApartAreMeasured() {
        List<String> near = next(
                candidate("A", "sections-shorted", 0.5, 0.0, LINES),
                candidate("B", "sections-shorted", 0.5, 0.0, List.of(40.0, 40.0, 38.5)));
        assertTrue(near.stream().noneMatch(n -> n.contains("the current in lines")), near.toString());
        List<String> far = next(
                candidate("A", "sections-shorted", 0.5, 0.0, LINES),
                candidate("B", "sections-shorted", 0.5, 0.0, List.of(40.0, 40.0, 38.3)));
        assertTrue(far.getFirst().contains("the current in lines"), far.toString());
        assertTrue(far.getFirst().contains("likeliest: 40 A, 40 A, 40 A; next: 40 A, 40 A, 38.3 A"), far.toString());
    }

    /** An operated unit fuse is seen from outside: against a failure inside a unit, and which leg it is in; a failure inside is not seen. */
    @Test
    void fusesAreLookedAtFromOutside() {
        List<String> kinds =
                next(candidate("A", "unit-out", 0.5, 0.0, LINES), candidate("A", "sections-shorted", 0.5, 0.0, LINES));
        assertTrue(kinds.getFirst().startsWith("Look at the unit fuses of F/A from outside"), kinds.toString());
        List<String> legs =
                next(candidate("A", "unit-out", 0.5, 0.0, LINES), candidate("B", "unit-out", 0.5, 0.0, LINES));
        assertTrue(legs.getFirst().startsWith("Look at the unit fuses of F/A, F/B"), legs.toString());
        List<String> inside = next(
                candidate("A", "sections-shorted", 0.5, 0.0, LINES),
                candidate("B", "sections-shorted", 0.5, 0.0, LINES));
        assertTrue(inside.stream().noneMatch(n -> n.startsWith("Look at")), inside.toString());
    }

    /**
     * Three candidates 0.5, 0.3, 0.2. The angle tells the first from both others: 0.5·0.3 + 0.5·0.2 = 0.25. Fuses seen from outside tell the third from
     * both others: 0.5·0.2 + 0.3·0.2 = 0.16. Every unit measured: 0.31, halved 0.155. So they come in this order.
     */
    @Test
    void byHowMuchOfTheDoubtIsSettled() {
        List<String> next = next(
                candidate("A", "sections-shorted", 0.5, 0.0, LINES),
                candidate("B", "sections-shorted", 0.3, -120.0, LINES),
                candidate("C", "unit-out", 0.2, -120.0, LINES));
        assertEquals(3, next.size(), next.toString());
        assertTrue(next.get(0).startsWith("The angle"), next.toString());
        assertTrue(next.get(1).startsWith("Look at the unit fuses of F/A, F/B, F/C"), next.toString());
        assertTrue(next.get(2).contains("capacitance of every unit"), next.toString());
    }

    /** What is known already is not asked for. */
    @Test
    void whatWasReadIsNotAskedAgain() {
        Sighting all = new Sighting(
                "F neutral-voltage",
                1.4,
                false,
                OptionalDouble.of(0.0),
                0.03,
                Optional.empty(),
                Map.of("A", 40.0, "B", 40.0, "C", 40.0));
        List<String> next = NextMeasurements.of(
                BANK,
                List.of(
                        candidate("A", "sections-shorted", 0.5, 0.0, LINES),
                        candidate("B", "sections-shorted", 0.5, -120.0, List.of(40.0, 40.0, 20.0))),
                all,
                BANK.protection().getFirst());
        assertEquals(1, next.size(), next.toString());
        assertTrue(next.getFirst().contains("capacitance of every unit"), next.toString());
    }
}
