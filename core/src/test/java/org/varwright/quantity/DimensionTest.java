package org.varwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DimensionTest {
    @ParameterizedTest
    @CsvSource({
        "VOLTAGE, 13.8 kV, 13800",
        "VOLTAGE, 13.8kV, 13800",
        "VOLTAGE, 13.8 KV, 13800",
        "REACTIVE_POWER, 300 kvar, 300000",
        "REACTIVE_POWER, 300 kVAr, 300000",
        "CAPACITANCE, 12.6 µF, 12.6e-6",
        "CAPACITANCE, 12.6 μF, 12.6e-6",
        "CAPACITANCE, 12.6 uF, 12.6e-6",
        "CAPACITANCE, 12600 nF, 12.6e-6",
        "RESISTANCE, 4.2 MΩ, 4.2e6",
        "RESISTANCE, 4.2 Mohm, 4.2e6",
        "RESISTANCE, 4.2 MOhm, 4.2e6",
        "RESISTANCE, 42 mohm, 0.042",
        "INDUCTANCE, 40 uH, 40e-6",
        "TIME, 5 min, 300",
        "TIME, 0.5 s, 0.5",
        "FRACTION, 0.05 %, 0.0005",
        "FRACTION, -5 %, -0.05",
        "FRACTION, +10 %, 0.1",
        "ENERGY, 15 kJ, 15000",
        "APPARENT_POWER, 280 MVA, 280e6",
        "MASS, 58 kg, 58",
        "ACTIVE_POWER, 2.4 MW, 2.4e6",
        "ACTIVE_POWER, 2.4 mW, 2.4e-3",
        "ACTIVE_POWER, 500 kw, 5e5",
        "INDUCTANCE, 0.9 kH, 900",
        "LENGTH, 5 ft, 1.524",
        "CURRENT_SQUARED_TIME, 4200 A²s, 4200",
        "CURRENT_SQUARED_TIME, 1.6e4 A2s, 16000",
        "CURRENT_SQUARED_TIME, 4200 A^2 * s, 4200",
        "CURRENT_FREQUENCY, 20 kA·kHz, 2e7",
        "CURRENT_FREQUENCY, 20 kA⋅kHz, 2e7",
        "CURRENT_FREQUENCY, 20 kA*kHz, 2e7",
        "CURRENT_FREQUENCY, 2e7 A·Hz, 2e7",
        "CURRENT_FREQUENCY, 20000 A·kHz, 2e7",
        "CURRENT_FREQUENCY, 20000 kA × Hz, 2e7"
    })
    void readsIntoSi(Dimension dimension, String text, double si) {
        Reading.Value value = assertInstanceOf(Reading.Value.class, dimension.parse(text));
        assertEquals(si, value.si(), Math.abs(si) * 1e-12);
    }

    @Test
    void saysWhyItCannotRead() {
        assertInstanceOf(Reading.NoUnit.class, Dimension.REACTIVE_POWER.parse("300"));
        assertInstanceOf(Reading.WrongUnit.class, Dimension.REACTIVE_POWER.parse("300 kV"));
        assertInstanceOf(Reading.NotANumber.class, Dimension.VOLTAGE.parse("NaN kV"));
        assertInstanceOf(Reading.NotANumber.class, Dimension.VOLTAGE.parse("1e999 kV"));
        assertInstanceOf(Reading.NotANumber.class, Dimension.VOLTAGE.parse(""));
        assertInstanceOf(Reading.NotANumber.class, Dimension.VOLTAGE.parse("kV"));
        assertEquals(new Reading.DecimalComma("13,8 kV", "13.8 kV"), Dimension.VOLTAGE.parse("13,8 kV"));
    }

    @Test
    void milliAndMegaAreNeverConfused() {
        // The factor between them is 1e9: a case that leads to two factors is not guessed at.
        assertEquals(new Reading.Value(0.042), Dimension.RESISTANCE.parse("42 mΩ"));
        assertEquals(new Reading.Value(42e6), Dimension.RESISTANCE.parse("42 MΩ"));
        assertInstanceOf(Reading.WrongUnit.class, Dimension.RESISTANCE.parse("42 Xohm"));
    }

    @Test
    void aPrefixBeforeAmpereSquaredSecondsIsNotGuessedAt() {
        // (kA)²s by the rules of SI, a thousand A²s on many data sheets
        assertInstanceOf(Reading.WrongUnit.class, Dimension.CURRENT_SQUARED_TIME.parse("4.2 kA²s"));
        assertInstanceOf(Reading.WrongUnit.class, Dimension.CURRENT_FREQUENCY.parse("20 kA"));
    }

    @ParameterizedTest
    @CsvSource({
        "VOLTAGE, 13800, 13.8 kV",
        "VOLTAGE, 999.96, 1 kV",
        "VOLTAGE, 50, 50 V",
        "CAPACITANCE, 12.557e-6, 12.56 µF",
        "RESISTANCE, 4.1e6, 4.1 MΩ",
        "TIME, 300, 5 min",
        "TIME, 318, 5 min 18 s",
        "TIME, 45, 45 s",
        "TIME, 119, 119 s",
        "TIME, 120, 2 min",
        "TIME, 299.6, 5 min",
        "TIME, 7200, 2 h",
        "TIME, 7199, 119 min 59 s",
        "TIME, 7265, 2 h 1 min 5 s",
        "TIME, 0.0416, 41.6 ms",
        "TIME, 1, 1 s",
        "TIME, 0, 0 s",
        "VOLTAGE, 999.94, 999.9 V",
        "VOLTAGE, 1000, 1 kV",
        "VOLTAGE, -13800, -13.8 kV",
        "CAPACITANCE, 999.96e-9, 1 µF",
        "CAPACITANCE, 4.7e-12, 4.7 pF",
        "CURRENT_FREQUENCY, 9999, 9999 A·Hz",
        "CURRENT_FREQUENCY, 10000, 0.01 kA·kHz",
        "RESISTANCE, NaN, not known",
        "TIME, 7260, 2 h 1 min",
        "FRACTION, 0.0123, 1.23 %",
        "ENERGY, 1.5, 1.5 J",
        "CURRENT, 0, 0 A",
        "CURRENT_SQUARED_TIME, 16000, 16000 A²s",
        "CURRENT_FREQUENCY, 2e7, 20 kA·kHz",
        "CURRENT_FREQUENCY, 850, 850 A·Hz",
        "ACTIVE_POWER, 2.4e6, 2.4 MW"
    })
    void printsWithASensiblePrefix(Dimension dimension, double si, String text) {
        assertEquals(text, dimension.format(si));
    }

    /** A value with its SI unit finds the quantity that prints it; a percentage is no unit of a value inside, and a plain number has none. */
    @Test
    void everySiUnitFindsItsQuantity() {
        for (Dimension dimension : Dimension.values()) {
            if (dimension != Dimension.FRACTION) {
                assertEquals(Optional.of(dimension), Dimension.of(dimension.symbol()));
            }
        }
        assertEquals(Optional.empty(), Dimension.of("%"));
        assertEquals(Optional.empty(), Dimension.of(""));
        assertEquals(Optional.empty(), Dimension.of("kA"));
    }
}
