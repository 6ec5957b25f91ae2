package org.varwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Predicate;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.isolation.Access;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.Plan;
import org.varwright.isolation.PlanRequest;
import org.varwright.isolation.Task;

/** Published rules of work, held against the orders of work of the demonstration banks. */
class OrderOfWorkReferenceTest {
    private static OrderOfWork order(String bankName, String door) {
        Path file = Path.of("..", "examples", "demo", bankName + ".bank.yaml");
        try {
            Bank bank = BankFile.read(bankName, Files.readAllBytes(file)).requireBank();
            return assertInstanceOf(Plan.Planned.class, Access.plan(bank, PlanRequest.to(List.of(door))))
                    .order();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static int first(List<OrderStep> steps, Predicate<OrderStep> which) {
        for (int i = 0; i < steps.size(); i++) {
            if (which.test(steps.get(i))) {
                return i;
            }
        }
        throw new AssertionError("no such step");
    }

    private static int last(List<OrderStep> steps, Predicate<OrderStep> which) {
        return steps.size() - 1 - first(steps.reversed(), which);
    }

    private static Predicate<OrderStep> is(OrderStep.Kind kind) {
        return s -> s.kind() == kind;
    }

    /** EN 50110-1, the five rules in their order: isolate, secure, prove dead, ground and short, protect from adjacent live parts. */
    @ParameterizedTest
    @CsvSource({"corbel-reach-3, bay 3", "hallin-moor-2, mesh enclosure", "lantern-mesa-1, north gate"})
    void theFiveRulesInTheirOrder(String bankName, String door) {
        List<OrderStep> in = order(bankName, door).in();
        Predicate<OrderStep> opens =
                s -> s.kind() == OrderStep.Kind.MOVE && s.text().contains("Open");
        int isolated = first(in, opens);
        int secured = first(in, is(OrderStep.Kind.LOCK_ON));
        int provedDead = last(in, s -> s.task() instanceof Task.TestedDead);
        int grounded = first(in, is(OrderStep.Kind.SHORT));
        int adjacent =
                first(in, s -> s.task() instanceof Task.Confirmed c && c.of() == Task.Confirmed.Point.WORK_MAY_BEGIN);
        assertTrue(isolated < secured, "isolate before secure");
        assertTrue(secured < provedDead, "secure before prove dead");
        assertTrue(provedDead < grounded, "prove dead before short and ground");
        assertTrue(grounded < adjacent, "ground before work begins");
        assertTrue(in.get(adjacent).why().contains("EN 50110-1"));
        assertEquals(in.size() - 1, adjacent, "nothing comes between that and the work");
    }

    /** UFC 3-560-01 §6-2.1 and DOE-HDBK-1092 §2.13: the tester is proved on a known live source before and after every test. */
    @ParameterizedTest
    @CsvSource({"corbel-reach-3, bay 3", "hallin-moor-2, mesh enclosure", "lantern-mesa-1, north gate"})
    void theTesterIsProvedBeforeAndAfter(String bankName, String door) {
        List<OrderStep> steps = order(bankName, door).steps();
        boolean proved = false;
        int tests = 0;
        for (OrderStep step : steps) {
            switch (step.task()) {
                case Task.TesterProved p -> proved = !p.again();
                case Task.TestedDead t -> {
                    assertTrue(proved, "step " + step.n() + " tests with a tester that nobody proved");
                    tests++;
                }
                case Task.TestedBeforeGrounding t -> {
                    assertEquals("tester proved", step.items().getFirst());
                    assertEquals("tester proved again", step.items().getLast());
                    tests++;
                }
                default -> {}
            }
        }
        assertTrue(tests > 0);
        assertTrue(!proved, "proved again after the last test");
    }

    /** 29 CFR 1910.269(n)(6)–(7): ground end on first and off last; nothing that is uncovered is touched again. */
    @ParameterizedTest
    @CsvSource({"corbel-reach-3, bay 3", "hallin-moor-2, mesh enclosure", "lantern-mesa-1, north gate"})
    void theGroundEndGoesOnFirstAndComesOffLast(String bankName, String door) {
        OrderOfWork order = order(bankName, door);
        OrderStep on = order.in().get(first(order.in(), is(OrderStep.Kind.GROUND)));
        assertTrue(on.text().contains("end on first, then the conductor"), on.text());
        assertTrue(on.why().contains("1910.269(n)(6)"), on.why());
        OrderStep off = order.back().get(first(order.back(), s -> s.task() instanceof Task.GroundsOff));
        assertTrue(off.text().contains("conductor first") && off.text().endsWith("end last."), off.text());
        assertTrue(off.why().startsWith("nobody touches it from now on"), off.why());
    }

    /** 29 CFR 1910.269(w)(1)(ii): every unit shorted between all terminals and to its case before it is handled, racks bonded; (iii) in the cautions. */
    @ParameterizedTest
    @CsvSource({"corbel-reach-3, bay 3", "hallin-moor-2, mesh enclosure", "lantern-mesa-1, north gate"})
    void everyUnitIsShorted(String bankName, String door) {
        OrderOfWork order = order(bankName, door);
        OrderStep shorts = order.in().get(first(order.in(), is(OrderStep.Kind.SHORT)));
        assertTrue(shorts.text().contains("all terminals to each other and to its case"), shorts.text());
        assertTrue(shorts.why().contains("a rack on insulators bonded"), shorts.why());
        assertTrue(order.cautions().stream().anyMatch(c -> c.contains("1910.269(w)(1)(iii)")));
    }

    /** 29 CFR 1910.147(f)(3), (4): one person responsible, each their own lock on when starting and off when stopping, handed over at shift change. */
    @ParameterizedTest
    @CsvSource({"corbel-reach-3, bay 3", "hallin-moor-2, mesh enclosure", "lantern-mesa-1, north gate"})
    void eachPersonsOwnLock(String bankName, String door) {
        OrderOfWork order = order(bankName, door);
        OrderStep on = order.in().get(first(order.in(), is(OrderStep.Kind.LOCK_ON)));
        assertTrue(on.text().startsWith("Every person who will reach in puts an own lock"), on.text());
        assertTrue(on.why().contains("One person is responsible") && on.why().contains("1910.147(f)(3)"), on.why());
        OrderStep off = order.back().get(first(order.back(), is(OrderStep.Kind.LOCK_OFF)));
        assertTrue(off.text().startsWith("Each person takes off the own lock, in person"), off.text());
    }

    /** 29 CFR 1910.269(w)(1)(i): 5 min from disconnection, never earlier whatever the resistor; a floating neutral is a fourth conductor (first principles). */
    @ParameterizedTest
    @CsvSource({"corbel-reach-3, bay 3", "hallin-moor-2, mesh enclosure", "lantern-mesa-1, north gate"})
    void theWaitAndTheFourthConductor(String bankName, String door) {
        OrderOfWork order = order(bankName, door);
        OrderStep hold = order.in().get(first(order.in(), is(OrderStep.Kind.HOLD)));
        assertTrue(hold.seconds().orElseThrow() >= 300.0);
        long neutrals = order.in().stream()
                .filter(s ->
                        s.task() instanceof Task.GroundsOn g && g.conductor().startsWith("neutral of "))
                .count();
        assertTrue(neutrals > 0, "three poles of a grounding switch leave it floating");
    }
}
