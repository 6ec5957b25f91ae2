package org.varwright.json;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.varwright.problem.VarwrightException;

class JsonTest {
    @Test
    void whatIsWrittenReadsBackTheSame() {
        Json tree = Json.object()
                .put("text", "quote \" slash \\ line \n tab \t nul \u0000 µ Ω 漢 \ud83d\ude00")
                .put("number", 1.25e-7)
                .put("whole", 6122)
                .put("flag", true)
                .put("none", Json.none())
                .put("list", Json.strings(java.util.List.of("a", "b")))
                .put("deep", Json.object().put("empty", Json.object().build()).build())
                .build();
        assertEquals(tree, Json.parse(tree.print()));
    }

    @Test
    void notANumberBecomesNull() {
        assertEquals(Json.none(), Json.of(Double.NaN));
        assertEquals(Json.none(), Json.of(Double.POSITIVE_INFINITY));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "{",
                "[1,]",
                "{\"a\":1,}",
                "{\"a\":1,\"a\":2}",
                "01",
                "1.",
                "+1",
                "NaN",
                "'a'",
                "\"a",
                "tru",
                "1 2",
                "\"\\x\"",
                "1e999"
            })
    void whatIsNotJsonIsRefusedWithItsPlace(String text) {
        VarwrightException e = assertThrows(VarwrightException.class, () -> Json.parse(text));
        assertEquals(1, e.problems().getFirst().place().line());
    }

    @Test
    void nestingIsBounded() {
        assertThrows(VarwrightException.class, () -> Json.parse("[".repeat(100_000)));
    }
}
