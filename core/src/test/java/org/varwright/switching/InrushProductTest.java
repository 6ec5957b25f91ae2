package org.varwright.switching;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Reactor;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;

/** A switch bears peak, frequency and their product at both ends of the bus's inductance; the worst of each is judged, whichever end it comes from. */
class InrushProductTest {
    private static final List<Double> CREST = List.of(90.0, 90.0, 90.0);

    /** One stage closes beside one to three others that stand at the end of a bus. */
    private static Inrush closing(Random random, double ratedPeak, double ratedHertz) {
        TestBank bank = new TestBank(13.8e3, 60.0).source(250e6, 10.0);
        List<String> others = new ArrayList<>();
        int stages = 2 + random.nextInt(3);
        for (int i = 0; i < stages; i++) {
            double henries = 20e-6 * Math.exp(1.5 * random.nextDouble());
            TestBank.Plan plan = TestBank.Plan.of(Connection.WYE_UNGROUNDED, 300e3 * (1 + random.nextInt(4)))
                    .reactor(henries, 0.01, Reactor.Position.LINE, 0.0)
                    .wiring(OptionalDouble.of(i == 0 ? 0.0 : 30.0 * random.nextDouble()), OptionalDouble.of(0.0));
            bank.stage("s" + i, plan.rated(ratedPeak, ratedHertz));
            others.add("s" + i);
        }
        others.removeFirst();
        Bank built = bank.build();
        return Inrush.of(
                built,
                new InrushRequest(
                        Optional.of("s0"), Optional.of(others), Map.of(), Optional.of(CREST), false, Map.of()));
    }

    private static Check check(Inrush inrush, String part) {
        return inrush.checks().stream()
                .filter(c -> c.subject().contains(part))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void theWorstOfEachIsJudged() {
        int apart = 0;
        for (long seed = 1; seed <= 40; seed++) {
            List<Closing> ends =
                    closing(new Random(seed), 1e6, 1e6).cases().getFirst().closings();
            assertEquals(2, ends.size());
            double peak = Math.max(ends.get(0).peakAmperes(), ends.get(1).peakAmperes());
            double hertz = Math.max(ends.get(0).hertz(), ends.get(1).hertz());
            double product = Math.max(
                    ends.get(0).peakAmperes() * ends.get(0).hertz(),
                    ends.get(1).peakAmperes() * ends.get(1).hertz());
            Inrush inrush = closing(new Random(seed), 1.001 * peak, 0.999 * product / (1.001 * peak));
            String at = "seed " + seed + ": " + ends;
            assertEquals(peak, check(inrush, "inrush peak").value(), 1e-9 * peak, at);
            assertEquals(product, check(inrush, "peak times frequency").value(), 1e-9 * product, at);
            assertEquals(hertz, check(inrush, "inrush frequency").value(), 1e-9 * hertz, at);
            // just under what it draws: the peak is inside, the product is not
            assertEquals(Verdict.PASS, check(inrush, "inrush peak").verdict(), at);
            assertEquals(Verdict.FAIL, check(inrush, "peak times frequency").verdict(), at);
            assertEquals(Verdict.WARN, check(inrush, "inrush frequency").verdict(), at);
            apart += peak * hertz > product * (1.0 + 1e-6) ? 1 : 0;
        }
        assertTrue(apart > 0, "no case in which the larger peak stands at the lower frequency: the law tries nothing");
    }
}
