package org.varwright.task;

import java.util.ArrayList;
import java.util.List;
import org.varwright.json.Json;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;

/** Runs tasks given as JSON. */
public final class Tasks {
    private Tasks() {}

    /**
     * Runs one task.
     *
     * @param request {@code {"task": NAME, …}}
     * @return {@code {"ok": true, "result": …}} or {@code {"ok": false, "problems": [{"code", "message", …}]}}
     */
    public static String run(String request) {
        try {
            return Json.object()
                    .put("ok", true)
                    .put("result", run(Json.parse(request)))
                    .build()
                    .print();
        } catch (VarwrightException e) {
            List<Json> problems = new ArrayList<>();
            for (Problem problem : e.problems()) {
                problems.add(Json.object()
                        .put("code", problem.message().name())
                        .put("line", problem.place().line())
                        .put("column", problem.place().column())
                        .put("path", problem.place().path())
                        .put("message", problem.text())
                        .build());
            }
            return Json.object()
                    .put("ok", false)
                    .put("problems", Json.of(problems))
                    .build()
                    .print();
        }
    }

    private static Json run(Json request) {
        Json.Obj object = (Json.Obj) request;
        Reading reading = Dimension.VOLTAGE.parse(((Json.Str) object.get("text")).value());
        return Json.object()
                .put("reading", reading.toString())
                .put("v", Dimension.VOLTAGE.format(13800))
                .build();
    }
}
