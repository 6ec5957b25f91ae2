package org.varwright.outside;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Standard;
import org.varwright.bank.Tolerance;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.discharge.Discharge;
import org.varwright.survey.SurveySettings;

/** Limits that other reference tests do not touch. */
class HazardReferenceTest {
    private static Check energyAtEnd(double vars) {
        Bank bank = new BankSketch()
                .stage(
                        "s",
                        Connection.WYE_UNGROUNDED,
                        new LegLayout(1, 1, 1),
                        BankSketch.type(
                                "T",
                                vars,
                                7960.0,
                                60.0,
                                new Tolerance(0.0, 0.1),
                                4,
                                12,
                                false,
                                Optional.of(new DischargeDevice.Rated(50.0, 300.0))))
                .build();
        return Discharge.of(bank, Optional.empty()).checks().stream()
                .filter(c -> c.subject().contains("energy of a unit at the end of the wait"))
                .findFirst()
                .orElseThrow();
    }

    /** LBNL Electrical Safety Manual, table 2.2.13: stored energy is a shock hazard from 100 V and 10 J on. */
    @Test
    void theEnergyThatIsLeftIsHeldAgainstTenJoules() {
        Check check = energyAtEnd(300e3);
        assertEquals(10.0, check.limit());
        assertEquals("J", check.unit());
        assertEquals(Verdict.PASS, check.verdict());
        assertTrue(check.value() < 10.0, String.valueOf(check.value()));
        assertTrue(check.basis().source().print().contains("100 V and 10 J"));
    }

    /** Reference temperature of nameplates: 25 °C in IEEE Std 18-1992 (quoted); 20 °C in IEC 60871-1 (from memory, unchecked). */
    @Test
    void temperaturesThatNameplatesAreFor() {
        assertEquals(25.0, SurveySettings.of(Standard.IEEE, 0.01).referenceCelsius());
        assertEquals(20.0, SurveySettings.of(Standard.IEC, 0.01).referenceCelsius());
    }
}
