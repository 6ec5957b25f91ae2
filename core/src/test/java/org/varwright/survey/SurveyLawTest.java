package org.varwright.survey;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import org.junit.jupiter.api.Test;

/** Laws over a thousand random banks whose truth is known; a failure prints the seeds that repeat it. */
class SurveyLawTest {
    private static final int BANKS = 1000;

    @Test
    void plantedFaultsAndSlipsAreFoundAndNoneInvented() {
        SurveyConfusion confusion = SurveyConfusion.of(BANKS);
        assertEquals(List.of(), confusion.wrong(), confusion::text);
        assertEquals(0, confusion.missed(), confusion::text);
        assertEquals(0, confusion.invented(), confusion::text);
        int healthy = confusion.of("healthy");
        assertTrue(healthy > 10_000, "too few units to say anything: " + healthy);
        assertTrue(confusion.doubted() <= healthy / 1000, confusion::text);
        // a step that the meter can't show may pass for healthy, but never without saying so
        int small = confusion.oneElement().values().stream()
                .flatMap(verdicts -> verdicts.values().stream())
                .mapToInt(Integer::intValue)
                .sum();
        assertTrue(small > 100, "too few units to say anything: " + small);
        assertEquals(List.of(), confusion.silent(), confusion::text);
    }
}
