package org.varwright.fuse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FuseCurveTest {
    private static FuseCurve curve(String link) {
        return new FuseCurve.OfLink(LinkTable.named(link).orElseThrow(), 60.0, OptionalDouble.empty());
    }

    @Test
    void theTablesPointsLieOnTheCurve() {
        FuseCurve curve = curve("40T");
        assertEquals(300.0, curve.melting(80.0).seconds(), 1e-9);
        assertEquals(10.0, curve.melting(120.0).seconds(), 1e-9);
        assertEquals(0.1, curve.melting(1040.0).seconds(), 1e-9);
        assertEquals(10.0, curve.latestMelting(178.0).seconds(), 1e-9);
        assertEquals(10.0 + 1.0 / 60.0, curve.clearing(178.0).seconds(), 1e-9);
    }

    @Test
    void betweenTwoPointsTheLogarithmsAreOnALine() {
        double middle = Math.sqrt(120.0 * 1040.0);
        assertEquals(1.0, curve("40T").melting(middle).seconds(), 1e-9);
    }

    @Test
    void belowTheTableItMayNeverMelt() {
        FuseTime time = curve("40T").clearing(95.9);
        assertEquals(FuseTime.Bound.LONGER_OR_NEVER, time.bound());
        assertEquals(300.0, time.seconds());
        assertFalse(time.isWithin(1e9));
        assertEquals(600.0, curve("200K").melting(479.0).seconds());
    }

    @Test
    void beyondTheTableThereIsABoundAndNoNumber() {
        FuseTime melting = curve("40T").melting(2080.0);
        assertEquals(FuseTime.Bound.AT_MOST, melting.bound());
        assertEquals(0.025, melting.seconds(), 1e-12);
        assertEquals(FuseTime.Bound.NOT_KNOWN, curve("40T").earliest(2080.0).bound());
    }

    @Test
    void theMakersI2tTellsWhatTheTableDoesNot() {
        FuseCurve curve = new FuseCurve.OfLink(LinkTable.named("40T").orElseThrow(), 60.0, OptionalDouble.of(60_000.0));
        FuseTime earliest = curve.earliest(2000.0);
        assertEquals(FuseTime.Bound.AT_LEAST, earliest.bound());
        assertEquals(0.015, earliest.seconds(), 1e-12);
    }

    @Test
    void aFuseKnownByI2tAloneHasNoLongTimes() {
        FuseCurve curve = new FuseCurve.OfI2t(OptionalDouble.of(4200.0), OptionalDouble.of(16_000.0));
        assertEquals(FuseTime.Bound.ABOUT, curve.melting(1000.0).bound());
        assertEquals(0.0042, curve.melting(1000.0).seconds(), 1e-12);
        assertEquals(FuseTime.Bound.NOT_KNOWN, curve.clearing(1000.0).bound());
        assertEquals(0.004, curve.clearing(2000.0).seconds(), 1e-12);
        assertEquals(FuseTime.Bound.AT_LEAST, curve.melting(100.0).bound());
    }

    @Test
    void ofAnUnknownFuseNothingIsKnown() {
        FuseCurve curve = new FuseCurve.NotKnown("link of fuse type F");
        assertFalse(curve.clearing(100.0).isKnown());
        assertFalse(curve.melting(100.0).isWithin(1e9));
        assertTrue(Double.isNaN(curve.earliest(100.0).seconds()));
    }
}
