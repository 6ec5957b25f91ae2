package org.varwright.network;

import static org.junit.jupiter.api.Assertions.assertDoesNotThrow;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.varwright.quantity.Complex;

/** The network against a naive twin: every part an unknown current, nothing reduced; every kind of bank, healthy and failed. */
class NetworkTwinTest {
    @Test
    void agreesWithTheNaiveTwin() {
        long seed = 20260101L;
        int compared = 0;
        for (Trials.Trial trial : Trials.of(seed, 6)) {
            NaiveNodal twin = assertDoesNotThrow(() -> new NaiveNodal(trial.list()), trial.name());
            Trials.compare(
                    trial,
                    new Trials.Oracle() {
                        @Override
                        public Complex volts(String node) {
                            return twin.between(node, "0");
                        }

                        @Override
                        public Complex amperes(String part) {
                            return twin.amperes.getOrDefault(part, Complex.ZERO);
                        }
                    },
                    1e-9);
            compared++;
        }
        assertTrue(compared > 200, "trials compared: " + compared);
    }
}
