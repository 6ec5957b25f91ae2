package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.problem.Problem;

/** What is written between which terminals, and what three such readings say of the legs. */
class TerminalsTest {
    @ParameterizedTest
    @CsvSource({
        "A-B, AB",
        "b/a, AB",
        "L1-L2, AB",
        "A-B third open, AB",
        "A-B (C open), AB",
        "'A-B, C linked to B', A_REST",
        "A-B C joined to A, B_REST",
        "C to A, CA",
        "A-BC, A_REST",
        "A to B+C, A_REST",
        "B against C and A joined, B_REST",
        "C-(A+B), C_REST",
        "A-B third linked, A_REST",
        "B-A third linked, B_REST",
        "A-N, A_NEUTRAL",
        "N-C, C_NEUTRAL",
        "A-A, ''",
        "x, ''"
    })
    void asPeopleWriteIt(String written, String expected) {
        assertEquals(
                expected,
                Terminals.parse(written).map(t -> t.terminals().name()).orElse(""));
    }

    private static Bank bank(InternalConnection inside) {
        UnitType type = BankSketch.type(
                "can", 30e3, 690, 60, new Tolerance(-0.05, 0.1), 0, 0, false, Optional.empty(), Optional.of(inside));
        return new BankSketch()
                .system(690, 60, SystemGrounding.SOLID)
                .stage("s", Connection.DELTA, new LegLayout(1, 1, 1), type)
                .build();
    }

    /** Source: independent calculation. 55.7 µF a leg of a delta: 83.55 with the third terminal open, 111.4 with it linked. */
    @Test
    void legsFromEitherKindOfReading() {
        Survey open = survey(bank(InternalConnection.DELTA), "A-B,83.55\ns,B-C,83.55\ns,C-A,83.55");
        Survey linked = survey(bank(InternalConnection.DELTA), "A-BC,111.4\ns,B-CA,111.4\ns,C-AB,111.4");
        assertEquals(55.7e-6, open.units().getFirst().capacitanceFarads().orElseThrow(), 1e-10);
        assertEquals(55.7e-6, linked.units().getFirst().capacitanceFarads().orElseThrow(), 1e-10);
        assertEquals(UnitVerdict.HEALTHY, linked.units().getFirst().verdict());
    }

    private static Survey survey(Bank bank, String rows) {
        Readings readings = ReadingsFile.read(
                bank, "r.csv", ("position,terminals,capacitance\ns," + rows + "\n").getBytes(StandardCharsets.UTF_8));
        assertEquals(List.of(), readings.problems());
        return Survey.of(bank, readings, SurveySettings.of(bank.standard(), 0.01));
    }

    /** The circuit solved by hand for random legs: what a meter would read gives the legs back. */
    @Test
    void readingsOfRandomLegsGiveTheLegsBack() {
        SplittableRandom random = new SplittableRandom(7);
        for (int round = 0; round < 200; round++) {
            double a = random.nextDouble(5.0, 80.0);
            double b = random.nextDouble(5.0, 80.0);
            double c = random.nextDouble(5.0, 80.0);
            // delta: a between A and B, b between B and C, c between C and A
            check(InternalConnection.DELTA, Terminals.Kind.THIRD_OPEN, a, b, c, a + s(b, c), b + s(c, a), c + s(a, b));
            check(InternalConnection.DELTA, Terminals.Kind.REST_JOINED, a, b, c, a + c, a + b, b + c);
            // wye: a, b, c from A, B, C to the middle
            check(InternalConnection.WYE_UNGROUNDED, Terminals.Kind.THIRD_OPEN, a, b, c, s(a, b), s(b, c), s(c, a));
            check(
                    InternalConnection.WYE_UNGROUNDED,
                    Terminals.Kind.REST_JOINED,
                    a,
                    b,
                    c,
                    s(a, b + c),
                    s(b, c + a),
                    s(c, a + b));
            check(InternalConnection.WYE_UNGROUNDED, Terminals.Kind.TO_NEUTRAL, a, b, c, a, b, c);
        }
    }

    private static double s(double one, double other) {
        return one * other / (one + other);
    }

    private static void check(
            InternalConnection inside, Terminals.Kind kind, double a, double b, double c, double... read) {
        List<Double> legs = ThreeTerminal.of(inside, kind, read).legs();
        assertEquals(a, legs.get(0), 1e-9 * a, inside + " " + kind);
        assertEquals(b, legs.get(1), 1e-9 * b, inside + " " + kind);
        assertEquals(c, legs.get(2), 1e-9 * c, inside + " " + kind);
    }

    @Test
    void whatHadToBeAssumedAndWhatCannotBeIsSaid() {
        Bank delta = bank(InternalConnection.DELTA);
        Readings linked = read(delta, "s,A-B third linked,111.4\n");
        assertTrue(linked.notices().stream()
                .anyMatch(p -> p.message() == Message.ROW_TERMINALS_ASSUMED
                        && p.text().contains("C was taken as joined to B")));
        Readings neutral = read(delta, "s,A-N,55.7\n");
        assertEquals(
                List.of(Message.CELL_NO_NEUTRAL),
                neutral.problems().stream().map(Problem::message).toList());
    }

    /** Source: published low-voltage test example (200 V, 1.87 A, 50 Hz: 29.76 µF); a test frequency written beside it counts. */
    @Test
    void testVoltageAndCurrentWithWhatIsMissingNamed() {
        Bank bank = new BankSketch()
                .system(6600, 50, SystemGrounding.ISOLATED)
                .stage(
                        "s",
                        Connection.DELTA,
                        new LegLayout(1, 1, 1),
                        BankSketch.type("U", 400e3, 6600, 50, new Tolerance(-0.1, 0.1), 0, 0, false, Optional.empty()))
                .build();
        Readings readings = ReadingsFile.read(bank, "r.csv", """
                        position,capacitance,test voltage,test current,test frequency
                        s/AB,,200 V,1.87 A,
                        s/BC,,200,3.74,100 Hz
                        s/CA,,200,,
                        s/CA,,0,1.87,
                        s/CA,29.7,200,1.2,
                        """.getBytes(StandardCharsets.UTF_8));
        double ab = readings.rows().get(0).capacitance().orElseThrow().value().orElseThrow();
        double bc = readings.rows().get(1).capacitance().orElseThrow().value().orElseThrow();
        assertEquals(29.762e-6, ab, 29.762e-6 * 1e-4);
        assertEquals(ab, bc, 1e-12);
        assertEquals(
                "1.87 A/(2π·50 Hz·200 V)",
                readings.rows().get(0).capacitance().orElseThrow().raw());
        assertEquals(
                List.of("row 4 ROW_TEST_INCOMPLETE", "row 5 ROW_TEST_INCOMPLETE"),
                readings.problems().stream()
                        .map(p -> p.place().path() + " " + p.message().name())
                        .toList());
        assertTrue(readings.notices().stream()
                .anyMatch(p -> p.message() == Message.ROW_TEST_BESIDE
                        && p.place().path().equals("row 6")));
    }

    private static Readings read(Bank bank, String rows) {
        return ReadingsFile.read(
                bank, "r.csv", ("position,terminals,capacitance\n" + rows).getBytes(StandardCharsets.UTF_8));
    }
}
