package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.varwright.json.Json;

class InterlockAuditTest {
    private static final InterlockAudit AUDIT = InterlockAudit.of(
            InterlockingTest.examine(
                    InterlockingTest.read(Path.of("..", "examples", "demo", "lantern-mesa-1.bank.yaml"))),
            1_000_000_000L,
            Verifier.Progress.SILENT);

    private static Set<Property> protectedBy(InterlockAudit.Protects protects) {
        return ((InterlockAudit.Protects.These) protects).properties();
    }

    @Test
    void everyLockKeyAndDelayIsOnTheList() {
        assertEquals(7, AUDIT.locks().size());
        assertEquals(5, AUDIT.keys().size());
        assertEquals(2, AUDIT.interlocks().size());
        assertTrue(AUDIT.keys().stream().allMatch(k -> k.copies() == 1));
    }

    /** {@code 52-K open ─LM-1─ 89-K ─LM-2─ 57-K ─LM-3─ gates}: taking a lock off lets through what it stood against. */
    @Test
    void aLockProtectsWhatIsBrokenWithoutIt() {
        InterlockAudit.LockItem gate = AUDIT.locks().stream()
                .filter(l -> l.lock().on().name().equals("north gate"))
                .findFirst()
                .orElseThrow();
        assertTrue(protectedBy(gate.protects()).contains(Property.EXPOSED_LIVE));
        InterlockAudit.LockItem disconnector = AUDIT.locks().stream()
                .filter(l ->
                        l.lock().on().name().equals("89-K") && l.lock().holds().equals("closed"))
                .findFirst()
                .orElseThrow();
        assertTrue(protectedBy(disconnector.protects()).contains(Property.LOAD_BREAK), disconnector.toString());
        assertTrue(
                protectedBy(AUDIT.interlocks().get(1).protects()).contains(Property.RECHARGE),
                AUDIT.interlocks().toString());
    }

    @Test
    void theListFitsThePageAndTheJson() {
        String text = InterlockAuditText.of(AUDIT);
        assertTrue(text.lines().allMatch(l -> l.length() <= 100), text);
        assertTrue(text.contains("[ ] LM-1: count 1 key, no more"), text);
        assertTrue(InterlockAuditJson.of(AUDIT) instanceof Json.Obj json
                && json.get("locks") instanceof Json.Arr(var locks)
                && locks.size() == 7);
    }
}
