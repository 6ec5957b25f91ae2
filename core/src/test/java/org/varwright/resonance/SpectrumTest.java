package org.varwright.resonance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Harmonic;
import org.varwright.problem.Message;
import org.varwright.problem.VarwrightException;

class SpectrumTest {
    @Test
    void voltagesAndCurrentsByRisingOrder() {
        assertEquals(
                List.of(
                        new Harmonic(5, OptionalDouble.of(0.03), OptionalDouble.of(14.0)),
                        new Harmonic(7, OptionalDouble.empty(), OptionalDouble.of(9.0))),
                Spectrum.parse("--harmonic", List.of("7: 9 A", "5: 3 %", "5:14A")));
    }

    @Test
    void whatCannotBeRead() {
        refused("5 3 %", Message.HARMONIC_SYNTAX);
        refused("5: 3", Message.HARMONIC_SYNTAX);
        refused("five: 3 %", Message.HARMONIC_SYNTAX);
        refused("5: 3 kV", Message.HARMONIC_SYNTAX);
        refused("1: 3 %", Message.HARMONIC_ORDER);
        refused("51: 3 %", Message.HARMONIC_ORDER);
        refused("5: -3 %", Message.HARMONIC_VALUE);
        refused("5: 101 %", Message.HARMONIC_VALUE);
        refused("5: -3 A", Message.HARMONIC_VALUE);
        assertEquals(
                Message.HARMONIC_TYPED_TWICE,
                assertThrows(VarwrightException.class, () -> Spectrum.parse("--harmonic", List.of("5: 3 %", "5: 2 %")))
                        .problems()
                        .getFirst()
                        .message());
    }

    private static void refused(String typed, Message message) {
        VarwrightException e =
                assertThrows(VarwrightException.class, () -> Spectrum.parse("--harmonic", List.of(typed)), typed);
        assertEquals(message, e.problems().getFirst().message(), typed);
        assertEquals("--harmonic", e.problems().getFirst().place().path());
    }
}
