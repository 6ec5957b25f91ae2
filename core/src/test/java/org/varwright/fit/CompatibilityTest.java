package org.varwright.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Construction;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Stage;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** FIT-1: each thing that must agree, changed one at a time. All values are the test's own. */
class CompatibilityTest {
    private static UnitType type(
            double vars,
            double volts,
            double hertz,
            boolean fused,
            int bushings,
            double bil,
            double mass,
            double seconds,
            Optional<InternalConnection> phases) {
        return new UnitType(
                "T" + vars + volts + hertz + fused + bushings + bil + mass,
                vars,
                volts,
                hertz,
                new Tolerance(0.0, 0.1),
                Optional.of(new Construction(4, 10, fused)),
                Optional.of(new DischargeDevice.Rated(50.0, seconds)),
                OptionalInt.of(bushings),
                OptionalDouble.of(bil),
                OptionalDouble.of(mass),
                phases,
                Optional.empty(),
                Optional.empty());
    }

    private static final UnitType WANTED = type(200e3, 7960.0, 60.0, false, 2, 95e3, 40.0, 300.0, Optional.empty());

    private static Bank bank() {
        return new org.varwright.bank.BankSketch()
                .stage("stage 1", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2), WANTED)
                .build();
    }

    private static Optional<String> reason(UnitType type) {
        Bank bank = bank();
        Stage stage = bank.stages().getFirst();
        return Compatibility.typeReason(bank, stage, type);
    }

    private static void refused(UnitType type, String start) {
        String reason = reason(type).orElse("accepted");
        assertTrue(reason.startsWith(start), reason);
    }

    @Test
    void likeForLikeIsAccepted() {
        assertEquals(Optional.empty(), reason(WANTED));
        assertEquals(
                Optional.empty(),
                reason(type(200e3, 7967.0, 60.0, false, 2, 125e3, 40.0, 300.0, Optional.empty())),
                "rounding of the rated voltage and a higher BIL");
    }

    @Test
    void whatDiffersIsNamed() {
        refused(type(200e3, 7200.0, 60.0, false, 2, 95e3, 40.0, 300.0, Optional.empty()), "rated 7.2 kV, not 7.96 kV");
        refused(type(200e3, 7960.0, 50.0, false, 2, 95e3, 40.0, 300.0, Optional.empty()), "rated for 50 Hz, not 60 Hz");
        refused(
                type(150e3, 7960.0, 60.0, false, 2, 95e3, 40.0, 300.0, Optional.empty()),
                "rated 150 kvar, not 200 kvar");
        refused(
                type(200e3, 7960.0, 60.0, false, 1, 95e3, 40.0, 300.0, Optional.empty()),
                "1 insulated bushing where 2 are needed");
        refused(type(200e3, 7960.0, 60.0, false, 2, 75e3, 40.0, 300.0, Optional.empty()), "BIL 75 kV, at least 95 kV");
        refused(type(200e3, 7960.0, 60.0, true, 2, 95e3, 40.0, 300.0, Optional.empty()), "has internal element fuses");
        refused(
                type(200e3, 7960.0, 60.0, false, 2, 95e3, 40.0, 300.0, Optional.of(InternalConnection.DELTA)),
                "three-phase unit");
    }

    /** A 7.2 kV unit of the same kvar at 13.8 kV/√3: {@code V·ωC = 30.74 A}, {@code Q = 244.9 kvar}, 1.1066 of rated (first principles). */
    @Test
    void anotherVoltageSaysWhatItWouldDo() {
        String reason = reason(type(200e3, 7200.0, 60.0, false, 2, 95e3, 40.0, 300.0, Optional.empty()))
                .orElseThrow();
        assertTrue(reason.contains("carry 30.74 A and give 244.9 kvar"), reason);
        assertTrue(reason.contains("at 1.107 times its rated voltage"), reason);
    }

    @Test
    void heavierAndSlowerAreCautions() {
        Stage stage = bank().stages().getFirst();
        List<String> cautions =
                Compatibility.cautions(stage, type(200e3, 7960.0, 60.0, false, 2, 95e3, 46.0, 600.0, Optional.empty()));
        assertEquals(2, cautions.size(), cautions.toString());
        assertTrue(cautions.get(0).startsWith("weighs 46 kg"), cautions.get(0));
        assertTrue(cautions.get(1).startsWith("discharges more slowly"), cautions.get(1));
        assertEquals(List.of(), Compatibility.cautions(stage, WANTED));
    }
}
