package org.varwright.server;

import io.javalin.http.Context;
import org.varwright.json.Json;

/** Bodies of answers. */
final class Answers {
    private Answers() {}

    static void json(Context context, Json json) {
        context.contentType("application/json; charset=utf-8").result(json.print());
    }
}
