package org.varwright.fuse;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** Laws that hold for every link of the table at any current; a failure prints the seed that repeats it. */
class FuseCurveLawTest {
    private static final int CASES = 3000;

    private static FuseCurve curve(Link link) {
        return new FuseCurve.OfLink(link, 60.0, OptionalDouble.empty());
    }

    private static double current(SplittableRandom random, Link link) {
        return link.ratedAmperes() * Math.exp(random.nextDouble(Math.log(1.5), Math.log(60.0)));
    }

    @Test
    void moreCurrentMeltsAndClearsNoLater() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Link link = LinkTable.all().get(random.nextInt(LinkTable.all().size()));
            double low = current(random, link);
            double high = low * (1.0 + random.nextDouble(1e-6, 2.0));
            String at = "seed " + seed + ", " + link.name() + " " + low + " A, " + high + " A";
            FuseCurve curve = curve(link);
            assertTrue(curve.melting(high).seconds() <= curve.melting(low).seconds(), at);
            assertTrue(
                    curve.latestMelting(high).seconds()
                            <= curve.latestMelting(low).seconds(),
                    at);
            FuseTime clear = curve.clearing(low);
            if (clear.bound() != FuseTime.Bound.LONGER_OR_NEVER) {
                assertTrue(curve.clearing(high).seconds() <= clear.seconds(), at);
            }
        }
    }

    @Test
    void noLinkMeltsBeforeTheEarliestNorClearsBeforeItMelts() {
        for (long seed = 1; seed <= CASES; seed++) {
            SplittableRandom random = new SplittableRandom(seed);
            Link link = LinkTable.all().get(random.nextInt(LinkTable.all().size()));
            double amperes = current(random, link);
            String at = "seed " + seed + ", " + link.name() + " " + amperes + " A";
            FuseCurve curve = curve(link);
            FuseTime melting = curve.melting(amperes);
            FuseTime latest = curve.latestMelting(amperes);
            FuseTime earliest = curve.earliest(amperes);
            if (earliest.isKnown() && melting.bound() == FuseTime.Bound.ABOUT) {
                assertTrue(earliest.seconds() <= melting.seconds() * (1.0 + 1e-9), at);
            }
            assertTrue(melting.seconds() <= latest.seconds() * (1.0 + 1e-9), at);
            if (latest.bound() != FuseTime.Bound.LONGER_OR_NEVER) {
                assertTrue(curve.clearing(amperes).seconds() > latest.seconds(), at);
            }
        }
    }

    /** The I²t to melt never falls with time: what the bounds beyond the table rest on. */
    @Test
    void theTablesI2tGrowsWithTime() {
        for (Link link : LinkTable.all()) {
            List<Link.Point> points = link.points();
            for (int i = 1; i < points.size(); i++) {
                Link.Point slow = points.get(i - 1);
                Link.Point fast = points.get(i);
                assertTrue(
                        slow.leastAmperes() * slow.leastAmperes() * slow.seconds()
                                >= fast.leastAmperes() * fast.leastAmperes() * fast.seconds(),
                        link.name());
                assertTrue(fast.leastAmperes() > slow.leastAmperes(), link.name());
                assertTrue(fast.mostAmperes() > fast.leastAmperes(), link.name());
            }
        }
    }

    @Test
    void aLargerLinkMeltsLaterAndASlowOneNoSoonerThanAFastOne() {
        for (LinkType type : LinkType.values()) {
            List<Link> links = LinkTable.of(type);
            for (int i = 1; i < links.size(); i++) {
                for (int p = 0; p < 3; p++) {
                    String at = links.get(i).name() + " point " + p;
                    Link.Point small = links.get(i - 1).points().get(p);
                    Link.Point large = links.get(i).points().get(p);
                    assertTrue(large.leastAmperes() > small.leastAmperes(), at);
                    assertTrue(large.mostAmperes() > small.mostAmperes(), at);
                }
            }
        }
        for (Link fast : LinkTable.of(LinkType.K)) {
            Link slow = LinkTable.named(fast.ratedAmperes() + "T").orElseThrow();
            for (int p = 0; p < 3; p++) {
                assertTrue(
                        slow.points().get(p).leastAmperes()
                                >= fast.points().get(p).leastAmperes(),
                        slow.name());
            }
        }
    }
}
