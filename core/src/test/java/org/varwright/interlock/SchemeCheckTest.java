package org.varwright.interlock;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Device;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

/** What can't be reasoned about is refused with every fault in one go, where it stands and what is allowed. */
class SchemeCheckTest {
    private static List<Message> refused(Schemes schemes) {
        VarwrightException refusal = assertThrows(VarwrightException.class, schemes::scheme);
        assertTrue(
                refusal.problems().stream().noneMatch(p -> p.place().path().isEmpty()),
                () -> "each says where: " + refusal.getMessage());
        return refusal.problems().stream().map(p -> p.message()).toList();
    }

    private static Schemes base() {
        return new Schemes()
                .source("feeder", "feeder")
                .device("Q0", Device.Kind.BREAKER, "feeder", "bank")
                .stage("bank", "")
                .compartment("door", "bank");
    }

    @Test
    void namesAndPositionsThatDoNotExistAreAllReportedAtOnce() {
        Schemes schemes = base().lock("Q1", "open", "A")
                .lock("Q0", "withdrawn", "A")
                .doorLock("attic", "A")
                .interlock("Q0", "closed", "Q9", "open")
                .delayKey("Q0", "Z", "Q0")
                .startAt("Q0", "ajar");
        assertEquals(
                List.of(
                        Message.SCHEME_UNKNOWN_NAME,
                        Message.SCHEME_NO_SUCH_POSITION,
                        Message.SCHEME_UNKNOWN_NAME,
                        Message.SCHEME_UNKNOWN_NAME,
                        Message.SCHEME_DELAY_WITHOUT_LOCK,
                        Message.SCHEME_NO_SUCH_POSITION),
                refused(schemes));
    }

    /** Both locks are withdrawn at the start and would trap A, of which there is one. */
    @Test
    void aKeyTrappedTwiceAtTheStartIsAContradiction() {
        Schemes schemes = base().lock("Q0", "open", "A").lock("Q0", "open", "A");
        assertEquals(List.of(Message.SCHEME_KEY_TRAPPED_TOO_OFTEN), refused(schemes));
        schemes.copies("A", 2).scheme();
    }

    @Test
    void anEmptyLockATwiceNamedDeviceAndASelectorWithoutAChoiceAreRefused() {
        assertEquals(List.of(Message.SCHEME_LOCK_WITHOUT_KEY), refused(base().lock("Q0", "open")));
        assertEquals(
                List.of(Message.SCHEME_NAMED_TWICE),
                refused(base().device("Q0", Device.Kind.DISCONNECTOR, "feeder", "bank")));
        assertEquals(List.of(Message.SCHEME_SELECTOR_POSITIONS), refused(base().selector("M", "off")));
        assertEquals(List.of(Message.SCHEME_COPIES), refused(base().copies("A", 0)));
        assertEquals(
                List.of(Message.SCHEME_DELAY_ON_SELECTOR),
                refused(base().selector("M", "off", "on")
                        .lock("Q0", "open", "A")
                        .delayKey("Q0", "A", "M")));
    }

    @Test
    void aLineupTooLargeForOneSchemeIsRefusedWithTheLimit() {
        Schemes schemes = base();
        for (int i = 0; i < 70; i++) {
            schemes.compartment("bay " + i, "bank");
        }
        assertEquals(List.of(Message.SCHEME_TOO_LARGE), refused(schemes));
    }

    @Test
    void aRefusedMoveSaysWhy() {
        Scheme scheme = Schemes.enclosed(2).scheme();
        String reasons = List.of(
                        new Move.OpenDoor("bay 1"),
                        new Move.Operate("57-2", "closed"),
                        new Move.Operate("52-7", "withdrawn"),
                        new Move.Wait("stage 1"),
                        new Move.Extend(scheme.isolation().locks().getFirst()))
                .stream()
                .map(m -> String.join(", ", scheme.refusals(scheme.start(), m)))
                .collect(Collectors.joining("\n"));
        assertEquals("""
                it is bolted until key TF-4 is put into its lock
                it is bolted until key TF-2 is put into its lock
                52-7 goes from closed to withdrawn only by way of open
                stage 1 is connected to a live conductor
                the bolt holds 43-2 only in off, and it is auto, a delay starts only when 24-1 and 24-2 are open, \
                a delay holds it until stage 1 and stage 2 are discharged""", reasons);
    }
}
