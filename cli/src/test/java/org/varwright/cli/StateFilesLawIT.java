package org.varwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.varwright.bank.Bank;
import org.varwright.fuzz.AnyBank;
import org.varwright.fuzz.JsonMutation;
import org.varwright.fuzz.Mutation;
import org.varwright.fuzz.Seeds;
import org.varwright.json.Json;

/** {@code isolate --state-after} and {@code --from}: what was saved is taken up where it was left, what is damaged is refused. */
class StateFilesLawIT {
    @TempDir
    @SuppressWarnings("NullAway.Init") // JUnit sets it
    private Path folder;

    @Test
    void aSavedStateIsTakenUpOrRefused() throws IOException {
        Seeds.hold("saved states", 20, random -> {
                    AnyBank any = AnyBank.of(random.nextLong(), AnyBank.Manner.PLAIN);
                    Bank bank = any.bank();
                    if (bank.isolation().isEmpty()
                            || bank.isolation().get().compartments().isEmpty()) {
                        return Seeds.Outcome.REFUSED;
                    }
                    Path file = Files.writeString(folder.resolve("any.bank.yaml"), any.text());
                    String door = Mutation.pick(random, bank.isolation().get().compartments())
                            .name();
                    List<String> plain = List.of("isolate", file.toString(), "--access", door);
                    Json.Obj whole = answer(plain);
                    List<Json> in = items(whole, "in");
                    if (in.isEmpty()) {
                        return Seeds.Outcome.REFUSED;
                    }
                    int step = random.nextInt(in.size() + items(whole, "back").size() + 1);
                    Session saved = run(with(plain, "--state-after", String.valueOf(step)));
                    assertEquals(0, saved.code(), saved.err());
                    Path state = Files.writeString(folder.resolve("state.json"), saved.out());
                    Json.Obj taken = answer(with(plain, "--from", state.toString()));
                    if (step == 0) {
                        assertEquals(in, items(taken, "in"), "from the start it is the same way");
                    }
                    if (step == in.size()) {
                        assertTrue(items(taken, "in").size() < in.size(), "who has arrived has less to do");
                    }
                    return random.nextBoolean() ? Seeds.Outcome.TAKEN : damaged(random, plain, saved.out(), state);
                })
                .requireBoth(0.05);
    }

    private static Seeds.Outcome damaged(Random random, List<String> plain, String good, Path state)
            throws IOException {
        String text = random.nextInt(3) == 0
                ? Mutation.text(random, good).replaceAll("\\p{Cs}", "?")
                : JsonMutation.of(random, Json.parse(good)).print().replaceAll("\\p{Cs}", "?");
        Files.writeString(state, text);
        Session session = run(with(plain, "--from", state.toString()));
        if (session.code() == 2) {
            String first = session.err()
                    .lines()
                    .filter(line -> !line.matches("varwright: [0-9]+ warnings? in .*"))
                    .findFirst()
                    .orElse("");
            assertTrue(
                    first.contains("state.json") || first.contains("saved state"),
                    "says which file is meant: " + first);
        }
        return session.code() == 2 ? Seeds.Outcome.REFUSED : Seeds.Outcome.TAKEN;
    }

    private static Session run(List<String> arguments) {
        Session session = Session.run(arguments.toArray(String[]::new));
        HeldSession.holdEither(session, String.join(" ", arguments));
        return session;
    }

    private static Json.Obj answer(List<String> arguments) {
        Session session = run(with(arguments, "--json"));
        assertNotEquals(2, session.code(), () -> arguments + "\n" + session.err());
        return (Json.Obj) Json.parse(session.out());
    }

    private static List<String> with(List<String> arguments, String... more) {
        List<String> all = new ArrayList<>(arguments);
        all.addAll(List.of(more));
        return all;
    }

    private static List<Json> items(Json.Obj object, String name) {
        return object.get(name) instanceof Json.Arr array ? array.items() : List.of();
    }
}
