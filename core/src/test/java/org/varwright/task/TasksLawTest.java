package org.varwright.task;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.varwright.fuzz.AnyBank;
import org.varwright.fuzz.JsonMutation;
import org.varwright.fuzz.Mutation;
import org.varwright.fuzz.Seeds;
import org.varwright.json.Json;

/** Whatever the browser asks: an answer or what is wrong with the question, never a fault of the program, and the same again when asked again. */
class TasksLawTest {
    @Test
    void damagedRequestsAreAnsweredOrRefused() throws IOException {
        List<Json.Obj> requests = Vectors.requests();
        Seeds.hold(
                        "damaged requests",
                        150,
                        random -> answered(
                                random,
                                JsonMutation.of(random, Mutation.pick(random, requests))
                                        .print()))
                .requireBoth(0.1);
    }

    @Test
    void requestsForOtherBanksAreAnsweredOrRefused() throws IOException {
        List<Json.Obj> requests = Vectors.requests();
        Seeds.hold(
                        "requests for any bank",
                        35,
                        random -> answered(
                                random,
                                ofAnyBank(random, Mutation.pick(random, requests))
                                        .print()))
                .requireBoth(0.1);
    }

    @Test
    void damagedTextsOfRequestsAreAnsweredOrRefused() throws IOException {
        List<Json.Obj> requests = Vectors.requests();
        Seeds.hold(
                "damaged texts of requests",
                100,
                random -> answered(
                        random,
                        Mutation.text(random, Mutation.pick(random, requests).print())));
    }

    private static Json.Obj ofAnyBank(Random random, Json.Obj request) {
        if (!(request.get("bank") instanceof Json.Str)) {
            return request;
        }
        Map<String, Json> members = new LinkedHashMap<>(request.members());
        members.put("bank", Json.of(AnyBank.of(random).text()));
        return new Json.Obj(members);
    }

    /** Asks, now and then twice, and holds the answer against what every answer is. */
    private static Seeds.Outcome answered(Random random, String request) {
        String answer = Tasks.run(request);
        if (random.nextInt(5) == 0) {
            assertEquals(answer, Tasks.run(request), "the same question has the same answer");
        }
        Json.Obj json = (Json.Obj) Json.parse(answer);
        if (json.get("ok").equals(Json.of(true))) {
            assertFalse(json.get("result") instanceof Json.Null, "an answer says something");
            return Seeds.Outcome.TAKEN;
        }
        List<Json> problems = ((Json.Arr) json.get("problems")).items();
        assertTrue(!problems.isEmpty(), "a refusal says why");
        for (Json item : problems) {
            Json.Obj problem = (Json.Obj) item;
            String message = ((Json.Str) problem.get("message")).value();
            assertTrue(message.length() > 10, message);
            assertTrue(!message.contains("Exception") && !message.contains("org.varwright"), message);
        }
        return Seeds.Outcome.REFUSED;
    }
}
