package org.varwright.discharge;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.BankSketch;
import org.varwright.bank.Connection;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;
import org.varwright.plot.Width;

/** What the pictures of a discharge say in words. */
class DecayPictureTest {
    private static UnitType unit(String name, double volts, double ohms) {
        return BankSketch.type(
                name,
                200e3,
                volts,
                60,
                new Tolerance(0.0, 0.0),
                0,
                0,
                false,
                Optional.of(new DischargeDevice.Resistor(ohms)));
    }

    @Test
    void alikeStagesAreOneCurveAndAnOpenResistorIsItsOwn() {
        Bank bank = new BankSketch()
                .stage("one", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 2), unit("U", 7960, 4e6))
                .stage("two", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1), unit("U", 7960, 4e6))
                .stage("three", Connection.WYE_UNGROUNDED, new LegLayout(1, 1, 1), unit("slow", 7960, 9e6))
                .build();
        String svg = DecayPicture.svg(Discharge.of(bank, Optional.empty()), DecayPicture.Scale.LOGARITHMIC, Width.PAGE);
        assertTrue(svg.contains("Curve one and two:"), svg);
        assertTrue(svg.contains("Curve three:"), svg);
        assertTrue(svg.contains("5 min") && svg.contains("50 V, IEEE") && svg.contains("least wait"), svg);
        assertFalse(svg.contains("string with an open resistor"));
        Question read = Question.NOTHING_MORE.with(
                new UnitReadings(Map.of(bank.position("one/A/u1").orElseThrow(), Double.POSITIVE_INFINITY), Map.of()));
        String open = DecayPicture.svg(Discharge.of(bank, read), DecayPicture.Scale.LINEAR, Width.PHONE);
        assertTrue(open.contains("one, resistor open"), open);
    }

    @Test
    void aStringThatHidesVoltageStandsBelow() {
        Bank bank = new BankSketch()
                .stage("s", Connection.WYE_UNGROUNDED, new LegLayout(1, 2, 1), unit("U", 3980, 4e6))
                .build();
        Discharge discharge = Discharge.of(bank, Optional.empty());
        String svg = DecayPicture.svg(discharge, DecayPicture.Scale.LOGARITHMIC, Width.PAGE);
        assertTrue(svg.contains("string with an open resistor") && svg.contains("ends joined"), svg);
        String opening = OpeningPicture.svg(discharge, 0, Width.PAGE);
        assertTrue(opening.contains("A: 1 × peak") && opening.contains("C: −1.37 × peak"), opening);
        assertTrue(opening.contains("B and C cleared"), opening);
    }
}
