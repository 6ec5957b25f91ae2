package org.varwright.isolation;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.interlock.Move;

/** ISO-7 on a plain simulator that shares no code with the scheme: a step that is said to be enforced by a lock can't be left out, the others can. */
class LockOrRuleTraceTest {
    private static final Set<String> LEFT_TO_PEOPLE = Set.of("exposed-low-voltage", "ungrounded-entry");

    @Test
    void aStepByLockCannotBeLeftOutAndAStepByRuleCan() {
        int byLock = 0;
        int byRule = 0;
        for (Bank bank : Banks.all()) {
            for (var compartment : bank.isolation().orElseThrow().compartments()) {
                OrderOfWork order = OrderOfWorkTraceTest.planned(bank, PlanRequest.to(List.of(compartment.name())));
                for (OrderStep step : order.in()) {
                    if (step.moves().size() == 1) {
                        boolean refused = refusedWithout(order, step);
                        assertEquals(
                                refused ? OrderStep.EnforcedBy.LOCK : OrderStep.EnforcedBy.RULE,
                                step.enforcedBy(),
                                bank.name() + ", " + compartment.name() + ", step " + step.n() + ": " + step.text());
                        byLock += refused ? 1 : 0;
                        byRule += refused ? 0 : 1;
                    }
                }
            }
        }
        assertTrue(byLock > 50 && byRule > 10, byLock + " by lock, " + byRule + " by rule");
    }

    /** Whether the locks refuse a later move of the way in before anything that must never be is broken. */
    private static boolean refusedWithout(OrderOfWork order, OrderStep left) {
        PlainBank plain = new PlainBank(order.bank());
        plain.take(order.start());
        boolean skipped = false;
        for (OrderStep step : order.in()) {
            if (step.n() == left.n()) {
                skipped = true;
                continue;
            }
            for (Move move : step.moves()) {
                boolean allowed = plain.allows(move);
                if (!allowed && move instanceof Move.Wait) {
                    continue;
                }
                if (!allowed) {
                    assertTrue(skipped, "the way itself is refused at " + move.text());
                    return true;
                }
                boolean harm = plain.make(move).stream()
                        .map(broken -> broken.split(" ", 2)[0])
                        .anyMatch(property -> !LEFT_TO_PEOPLE.contains(property));
                if (harm) {
                    assertTrue(skipped, "the way itself does harm at " + move.text());
                    return false;
                }
            }
        }
        return false;
    }
}
