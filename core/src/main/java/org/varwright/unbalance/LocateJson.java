package org.varwright.unbalance;

import java.util.ArrayList;
import java.util.List;
import org.varwright.basis.BasisJson;
import org.varwright.json.Json;

/** {@link Locate} as JSON. */
public final class LocateJson {
    private LocateJson() {}

    public static Json of(Locate locate) {
        return Json.object()
                .put("sensor", locate.sighting().sensor())
                .put("explained", locate.isExplained())
                .put(
                        "candidates",
                        Json.of(locate.candidates().stream()
                                .map(c -> candidate(locate, c))
                                .toList()))
                .put("nextMeasurements", Json.strings(locate.nextMeasurements()))
                .put("notes", Json.strings(locate.notes()))
                .put("basis", BasisJson.of(locate.basis()))
                .build();
    }

    private static Json candidate(Locate locate, Candidate candidate) {
        List<Json> failures = new ArrayList<>();
        for (Candidate.Part part : candidate.parts()) {
            failures.add(Json.object()
                    .put("group", part.place())
                    .put("kind", part.kind())
                    .put("count", part.count())
                    .put("groupsAlike", part.groups())
                    .put("unitsAlike", part.units())
                    .build());
        }
        return Json.object()
                .put("failures", Json.of(failures))
                .put("words", candidate.words())
                .put("probability", candidate.probability())
                .put(
                        "sensor",
                        Json.object()
                                .put("magnitude", candidate.sensor().magnitude() * locate.ratio())
                                .put("primary", candidate.sensor().magnitude())
                                .put("angleDegrees", candidate.sensor().degrees())
                                .build())
                .put(
                        "lineAmperes",
                        Json.of(candidate.lines().stream().map(Json::of).toList()))
                .put("distance", candidate.distance())
                .build();
    }
}
