package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

/** Laws over a thousand random banks whose truth is known; a failure prints the seeds that repeat it. */
class SurveyLawTest {
    private static final int BANKS = 1000;

    @Test
    void plantedFaultsAndSlipsAreFoundAndNoneInvented() {
        Map<String, Integer> confusion = new TreeMap<>();
        List<String> wrong = new ArrayList<>();
        int healthy = 0;
        int alarmed = 0;
        for (long seed = 1; seed <= BANKS; seed++) {
            RandomSurvey random = RandomSurvey.of(seed);
            for (UnitSurvey unit : random.judged().units()) {
                RandomSurvey.Planted planted =
                        random.planted().get(unit.position().name());
                String truth = planted == null ? "healthy" : planted.name();
                confusion.merge(truth + " → " + unit.verdict().code(), 1, Integer::sum);
                boolean found;
                if (planted == null) {
                    healthy++;
                    alarmed += unit.verdict() == UnitVerdict.HEALTHY ? 0 : 1;
                    // a unit in order may be watched or measured again, never condemned
                    found = unit.verdict() != UnitVerdict.REPLACE;
                } else if (planted.isLie()) {
                    found = unit.verdict() == UnitVerdict.MEASURE_AGAIN;
                } else {
                    found = unit.verdict() != UnitVerdict.HEALTHY && unit.verdict() != UnitVerdict.NOT_MEASURED;
                }
                if (!found) {
                    wrong.add("seed " + seed + " " + unit.position().name() + " " + truth + ": " + unit.reason());
                }
            }
        }
        assertEquals(List.of(), wrong, () -> "confusion: " + confusion);
        assertTrue(
                alarmed <= healthy / 1000,
                "of " + healthy + " healthy units " + alarmed + " were not called so: " + confusion);
    }
}
