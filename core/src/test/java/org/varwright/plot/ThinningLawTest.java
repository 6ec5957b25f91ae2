package org.varwright.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** What is left out of a curve can't be seen; its peaks stay. */
class ThinningLawTest {
    private static final long SEED = 7_733L;
    /** Half a strip and what counts as straight, in sheet units. */
    private static final double SEEN = 0.55;

    @Test
    void keepsExtremesAndEnds() {
        Random random = new Random(SEED);
        for (int i = 0; i < 300; i++) {
            String about = "seed " + SEED + ", case " + i;
            List<Point> line = random(random);
            List<Point> thin = Trace.thinned(line);
            assertTrue(line.containsAll(thin), about);
            assertEquals(line.getFirst(), thin.getFirst(), about);
            assertEquals(line.getLast(), thin.getLast(), about);
            assertEquals(least(line), least(thin), 0.05, about);
            assertEquals(-least(mirrored(line)), -least(mirrored(thin)), 0.05, about);
            assertTrue(thin.size() <= 4 * 2 * 401, about + ": " + thin.size());
        }
    }

    @Test
    void nothingThatIsLeftOutLiesOffTheLine() {
        Random random = new Random(SEED + 1);
        for (int i = 0; i < 60; i++) {
            List<Point> line = random(random);
            List<Point> thin = Trace.thinned(line);
            for (Point p : line) {
                assertTrue(distance(p, thin) < SEEN, "seed " + (SEED + 1) + ", case " + i + ": " + p);
            }
        }
    }

    @Test
    void aSpikeOfOneSampleStays() {
        List<Point> line = new ArrayList<>();
        for (int i = 0; i < 100_000; i++) {
            line.add(new Point(i * 0.004, i == 31_417 ? 3.0 : 50.0));
        }
        List<Point> thin = Trace.thinned(line);
        assertEquals(3.0, least(thin), 0.0);
        assertTrue(thin.size() < 100, thin.size() + " places");
    }

    private static List<Point> random(Random random) {
        int samples = 3 + random.nextInt(4_000);
        double rough = Math.pow(10.0, -2.0 + 4.0 * random.nextDouble());
        List<Point> line = new ArrayList<>();
        double y = 100.0;
        for (int k = 0; k < samples; k++) {
            y += rough * (random.nextDouble() - 0.5);
            line.add(new Point(400.0 * k / samples, y));
        }
        return line;
    }

    private static List<Point> mirrored(List<Point> line) {
        return line.stream().map(p -> new Point(p.x(), -p.y())).toList();
    }

    private static double least(List<Point> line) {
        return line.stream().mapToDouble(Point::y).min().orElseThrow();
    }

    private static double distance(Point p, List<Point> line) {
        double least = Double.POSITIVE_INFINITY;
        for (int i = 1; i < line.size(); i++) {
            Point a = line.get(i - 1);
            double dx = line.get(i).x() - a.x();
            double dy = line.get(i).y() - a.y();
            double square = dx * dx + dy * dy;
            double t =
                    square == 0.0 ? 0.0 : Math.clamp(((p.x() - a.x()) * dx + (p.y() - a.y()) * dy) / square, 0.0, 1.0);
            least = Math.min(least, Math.hypot(p.x() - a.x() - t * dx, p.y() - a.y() - t * dy));
        }
        return least;
    }
}
