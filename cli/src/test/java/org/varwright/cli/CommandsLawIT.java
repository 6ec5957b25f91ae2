package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.fuzz.Seeds;
import org.varwright.json.Json;

/** Every command over banks drawn from seeds, right and damaged, with options right and wrong. */
class CommandsLawIT {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    @Test
    void everyCommandAnswersOrRefuses() throws IOException {
        Seeds.hold("commands", 70, random -> {
                    AnyCommand command = AnyCommand.of(random, folder);
                    Session text = HeldSession.run(command);
                    if (random.nextInt(8) == 0) {
                        assertEquals(text, HeldSession.run(command), "the same again");
                    }
                    String name = command.arguments().getFirst();
                    if (!List.of("draw", "report").contains(name)) {
                        hold(name, command.arguments(), text, HeldSession.json(command.arguments(), text));
                    }
                    assertTrue(
                            text.code() != 2 || command.mayBeRefused(), () -> command.arguments() + "\n" + text.err());
                    return text.code() == 2 ? Seeds.Outcome.REFUSED : Seeds.Outcome.TAKEN;
                })
                .requireBoth(0.1);
    }

    /** What is undecided or refused is never told as a plan or as proven. */
    private static void hold(String name, List<String> arguments, Session text, Json json) {
        if (!(json instanceof Json.Obj answer) || text.code() == 2) {
            return;
        }
        String all = String.join(" ", arguments);
        if (name.equals("isolate") && !arguments.contains("--state-after")) {
            boolean planned = text.code() == 0;
            assertEquals(
                    planned, !items(answer, "in").isEmpty(), all + ": steps are told only of a plan that is proven");
            assertEquals(planned, answer.get("refused") instanceof Json.Null, all);
            String words = text.out().toLowerCase(java.util.Locale.ROOT);
            assertTrue(planned || words.contains("refused") || words.contains("undecided"), all + "\n" + text.out());
        }
        if (name.equals("interlock") && !arguments.contains("--audit")) {
            boolean complete = answer.get("complete").equals(Json.of(true));
            for (Json item : items(answer, "properties")) {
                Json.Obj property = (Json.Obj) item;
                boolean enforced = property.get("enforced").equals(Json.of(true));
                assertFalse(enforced && !complete, all + ": enforced, though not all states were seen");
                assertFalse(enforced && !(property.get("counterexample") instanceof Json.Null), all);
            }
            assertTrue(complete || text.code() != 0, all);
            assertEquals(text.code() == 3, !complete && text.code() != 1, all);
        }
        if (text.code() == 3) {
            assertFalse(text.out().matches("(?is).*\\bis safe\\b.*"), all + "\n" + text.out());
        }
    }

    private static List<Json> items(Json.Obj object, String name) {
        return object.get(name) instanceof Json.Arr array ? array.items() : List.of();
    }
}
