package org.varwright.fuse;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.varwright.basis.Standing;

/** The table of links against numbers from outside. All of them are from memory and unchecked, and the product says so. */
class LinkTableReferenceTest {
    /** Source: ANSI C37.42, minimum melting currents at 300 s, 10 s, 0.1 s; from memory, unchecked, written down by somebody else than the table. */
    @Test
    void leastMeltingCurrentsOfEightLinks() {
        Map<String, List<Double>> least = Map.of(
                "25K", List.of(50.0, 60.0, 350.0),
                "40K", List.of(80.0, 98.0, 565.0),
                "65K", List.of(128.0, 159.0, 918.0),
                "100K", List.of(200.0, 258.0, 1520.0),
                "25T", List.of(50.0, 73.5, 635.0),
                "40T", List.of(80.0, 120.0, 1040.0),
                "65T", List.of(128.0, 195.0, 1650.0),
                "100T", List.of(200.0, 319.0, 2620.0));
        least.forEach((name, amperes) -> assertEquals(
                amperes,
                LinkTable.named(name).orElseThrow().points().stream()
                        .map(Link.Point::leastAmperes)
                        .toList(),
                name));
    }

    /** Source: ANSI C37.42, speed ratios; from memory, unchecked. A second column of the same table, which a wrong digit in the first would not agree with. */
    @Test
    void speedRatios() {
        Map<Integer, Double> fast = Map.ofEntries(
                Map.entry(6, 6.0),
                Map.entry(8, 6.5),
                Map.entry(10, 6.6),
                Map.entry(12, 6.6),
                Map.entry(15, 6.9),
                Map.entry(20, 7.0),
                Map.entry(25, 7.0),
                Map.entry(30, 7.1),
                Map.entry(40, 7.1),
                Map.entry(50, 7.1),
                Map.entry(65, 7.2),
                Map.entry(80, 7.4),
                Map.entry(100, 7.6),
                Map.entry(140, 8.0),
                Map.entry(200, 8.1));
        Map<Integer, Double> slow = Map.ofEntries(
                Map.entry(6, 10.0),
                Map.entry(8, 11.1),
                Map.entry(10, 11.5),
                Map.entry(12, 11.8),
                Map.entry(15, 12.5),
                Map.entry(20, 12.7),
                Map.entry(25, 12.7),
                Map.entry(30, 12.9),
                Map.entry(40, 13.0),
                Map.entry(50, 13.0),
                Map.entry(65, 12.9),
                Map.entry(80, 13.0),
                Map.entry(100, 13.1),
                Map.entry(140, 12.9),
                Map.entry(200, 13.0));
        assertEquals(30, LinkTable.all().size());
        for (Link link : LinkTable.all()) {
            Map<Integer, Double> ratios = link.type() == LinkType.K ? fast : slow;
            assertEquals(
                    Objects.requireNonNull(ratios.get(link.ratedAmperes()), link.name()),
                    link.speedRatio(),
                    0.07,
                    link.name());
        }
    }

    /** Source: ANSI C37.42, the most is about 1.2 times the least at the ends and 1.5 times at 10 s; from memory, unchecked. */
    @Test
    void mostOverLeast() {
        for (Link link : LinkTable.all()) {
            List<Double> ratios = link.points().stream()
                    .map(p -> p.mostAmperes() / p.leastAmperes())
                    .toList();
            assertEquals(1.2, ratios.get(0), 0.012, link.name());
            assertEquals(1.5, ratios.get(1), 0.03, link.name());
            assertEquals(1.2, ratios.get(2), 0.025, link.name());
        }
    }

    @Test
    void theTableSaysThatNobodyHadTheStandardOpen() {
        assertEquals(Standing.UNCHECKED, LinkTable.SOURCE.standing());
        assertTrue(LinkTable.SOURCE.print().contains("from memory, unchecked"));
    }

    @Test
    void longestTimeIs600SecondsAbove100Amperes() {
        for (Link link : LinkTable.all()) {
            assertEquals(
                    link.ratedAmperes() > 100 ? 600.0 : 300.0,
                    link.points().getFirst().seconds(),
                    link.name());
        }
        assertTrue(LinkTable.named("40 t").isPresent());
        assertTrue(LinkTable.named("45T").isEmpty());
    }
}
