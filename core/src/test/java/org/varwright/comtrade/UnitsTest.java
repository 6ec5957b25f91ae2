package org.varwright.comtrade;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** From the number in the data to volts and amperes of the primary side: a·x + b, prefix, ratio. A factor that is wrong here is wrong in every answer. */
class UnitsTest {
    @Test
    void unitsWithTheirPrefixes() {
        Map<String, Double> volts = Map.of(
                "V", 1.0, "v", 1.0, " kV ", 1e3, "KV", 1e3, "MV", 1e6, "mV", 1e-3, "uV", 1e-6, "µV", 1e-6, "volts", 1.0,
                "kVolt", 1e3);
        volts.forEach((unit, factor) -> {
            assertEquals(factor, Measure.factor(unit), unit);
            assertEquals(Measure.VOLTS, Measure.of(unit), unit);
        });
        Map<String, Double> amperes = Map.of(
                "A",
                1.0,
                "a",
                1.0,
                "kA",
                1e3,
                "mA",
                1e-3,
                "MA",
                1e6,
                "μA",
                1e-6,
                "Amp",
                1.0,
                "AMPS",
                1.0,
                "Ampere",
                1.0,
                "kAmperes",
                1e3);
        amperes.forEach((unit, factor) -> {
            assertEquals(factor, Measure.factor(unit), unit);
            assertEquals(Measure.AMPERES, Measure.of(unit), unit);
        });
        for (String unit : List.of("", "k", "m", "Hz", "MW", "kvar", "Ah", "xA", "°", "kkV", "mm")) {
            assertTrue(Double.isNaN(Measure.factor(unit)), unit);
            assertEquals(Measure.OTHER, Measure.of(unit), unit);
        }
    }

    @Test
    void ratiosToBothSides() {
        Ratio secondary = new Ratio(Ratio.Side.SECONDARY, 600.0, 5.0);
        assertEquals(120.0, secondary.toPrimary());
        assertEquals(1.0, secondary.toSecondary());
        Ratio primary = new Ratio(Ratio.Side.PRIMARY, 7200.0, 120.0);
        assertEquals(1.0, primary.toPrimary());
        assertEquals(1.0 / 60.0, primary.toSecondary());
        assertTrue(Double.isNaN(Ratio.UNKNOWN.toPrimary()) && Double.isNaN(Ratio.UNKNOWN.toSecondary()));
        for (double none : new double[] {0.0, -5.0, Double.NaN}) {
            assertTrue(Double.isNaN(new Ratio(Ratio.Side.SECONDARY, 600.0, none).toPrimary()), "" + none);
            assertTrue(Double.isNaN(new Ratio(Ratio.Side.SECONDARY, none, 5.0).toPrimary()), "" + none);
            assertEquals(1.0, new Ratio(Ratio.Side.PRIMARY, none, 5.0).toPrimary());
        }
        assertTrue(Double.isNaN(new Ratio(Ratio.Side.SECONDARY, 1e300, 1e-300).toPrimary()));
        assertTrue(new Ratio(Ratio.Side.SECONDARY, 1.0, 1.0).isOneToOne());
        assertFalse(new Ratio(Ratio.Side.SECONDARY, 1.0, 5.0).isOneToOne());
        assertFalse(new Ratio(Ratio.Side.SECONDARY, 5.0, 1.0).isOneToOne());
    }

    /** 4 in the data: 0.5·4 + 1 = 3 A secondary, 3·600/5 = 360 A primary. −8500 in the data: −8.5 kV primary, −8.5·10³·120/7200 V secondary. */
    @Test
    void fromTheDataToThePrimarySide() {
        Recording read = PlainRecord.read(PlainRecord.CFG, PlainRecord.DAT);
        Analog current = read.analogs().get(0);
        assertEquals(Measure.AMPERES, current.measure());
        assertEquals(360.0, current.values().at(1) * current.toPrimarySi(), 1e-12);
        assertEquals(
                3.0, current.values().at(1) * current.toSi() * current.ratio().toSecondary(), 1e-12);
        Analog voltage = read.analogs().get(1);
        assertEquals(Measure.VOLTS, voltage.measure());
        assertEquals(-8500.0, voltage.values().at(1) * voltage.toPrimarySi(), 1e-9);
        assertEquals(
                -8500.0 / 60.0,
                voltage.values().at(1) * voltage.toSi() * voltage.ratio().toSecondary(),
                1e-9);
        assertEquals(0.5, current.scale().multiplier());
        assertEquals(1.0, current.scale().offset());
        assertEquals(-99999.0, current.scale().least());
        assertEquals(99998.0, current.scale().largest());
    }

    /** A skew of 25 µs is 25 µs; the trigger's name, phase and component are those of the line. */
    @Test
    void everythingElseOnALine() {
        Recording read = PlainRecord.read(
                PlainRecord.CFG
                        .replace("IA,A,,A,0.5,1,0,", "IA,A,line 1,A,0.5,1,25,")
                        .replace("52a,0", "52a,1"),
                PlainRecord.DAT);
        Analog current = read.analogs().getFirst();
        assertEquals(25e-6, current.skewSeconds(), 1e-18);
        assertEquals("A", current.phase());
        assertEquals("line 1", current.component());
        assertEquals("A", current.unit());
        Status trip = read.statuses().getFirst();
        assertEquals("A", trip.phase());
        assertEquals("52a", trip.component());
        assertEquals(Status.Normal.ONE, trip.normal());
        assertEquals("TRIP", trip.title());
        assertEquals(60.0, read.hertz());
        assertEquals("REC 1", read.device());
        assertEquals(List.of(new Rate(1000.0, 4)), read.timing().rates());
        Recording nameless =
                PlainRecord.read(PlainRecord.CFG.replace("1,IA,", "1,,").replace("1,TRIP,", "1,,"), PlainRecord.DAT);
        assertEquals("analog channel 1", nameless.analogs().getFirst().title());
        assertEquals("status channel 1", nameless.statuses().getFirst().title());
    }

    /** A comma in a name moves all fields behind it: they are found from the end. */
    @Test
    void aCommaInANameMovesNothing() {
        Recording read = PlainRecord.read(
                PlainRecord.CFG.replace("1,IA,A,", "1,IA, line 2,A,").replace("1,TRIP,", "1,TRIP, 52,"),
                PlainRecord.DAT);
        assertEquals("IA, line 2", read.analogs().getFirst().name());
        assertEquals("A", read.analogs().getFirst().phase());
        assertEquals(120.0, read.analogs().getFirst().toPrimarySi());
        assertEquals(Samples.of(2.0, 3.0, 4.0, 5.0), read.analogs().getFirst().values());
        assertEquals("TRIP, 52", read.statuses().getFirst().name());
        assertEquals("A", read.statuses().getFirst().phase());
        assertEquals("52a", read.statuses().getFirst().component());
        assertEquals(Status.Normal.ZERO, read.statuses().getFirst().normal());
    }
}
