package org.varwright.triage;

import java.util.List;
import org.varwright.json.Json;
import org.varwright.unbalance.LocateJson;

/** A {@link Triage} as JSON. */
public final class TriageJson {
    private TriageJson() {}

    public static Json of(Triage triage) {
        return Json.object()
                .put("symptom", triage.question().symptom().code())
                .put("words", triage.question().symptom().words())
                .put("stages", Json.strings(triage.stages()))
                .put(
                        "causes",
                        Json.of(triage.causes().stream().map(TriageJson::cause).toList()))
                .put("firstChecks", inspections(triage.firstChecks()))
                .put("runOn", runOn(triage.runOn()))
                .put(
                        "bring",
                        Json.of(triage.bring().stream()
                                .map(b -> (Json) Json.object()
                                        .put("text", b.text())
                                        .put("things", things(b.things()))
                                        .build())
                                .toList()))
                .put("access", Json.strings(triage.access()))
                .put("fetch", Json.strings(triage.fetch()))
                .put("located", triage.located().map(LocateJson::of).orElse(Json.none()))
                .put("unknown", Json.strings(triage.unknown()))
                .build();
    }

    /** Every symptom: {@code {"code", "words"}}. */
    public static Json symptoms() {
        return Json.of(List.of(Symptom.values()).stream()
                .map(s -> (Json) Json.object()
                        .put("code", s.code())
                        .put("words", s.words())
                        .build())
                .toList());
    }

    private static Json cause(Cause cause) {
        return Json.object()
                .put("id", cause.id())
                .put("text", cause.text())
                .put("rank", cause.rank().code())
                .put("for", statements(cause.speaksFor()))
                .put("against", statements(cause.speaksAgainst()))
                .put("checks", inspections(cause.checks()))
                .build();
    }

    private static Json runOn(RunOn runOn) {
        return Json.object()
                .put("answer", runOn.answer().code())
                .put("text", runOn.text())
                .put("conditions", Json.strings(runOn.conditions()))
                .put("basis", statements(runOn.basis()))
                .build();
    }

    private static Json statements(List<Statement> statements) {
        return Json.of(statements.stream()
                .map(s -> (Json) Json.object()
                        .put("text", s.text())
                        .put("source", s.source().print())
                        .build())
                .toList());
    }

    private static Json inspections(List<Inspection> inspections) {
        return Json.of(inspections.stream()
                .map(i -> (Json) Json.object()
                        .put("text", i.text())
                        .put("from", i.from().code())
                        .put("things", things(i.things()))
                        .put("compartments", Json.strings(i.compartments()))
                        .put("source", i.source().print())
                        .build())
                .toList());
    }

    private static Json things(List<Thing> things) {
        return Json.of(things.stream()
                .map(t -> (Json) Json.object()
                        .put("kind", t.kind().code())
                        .put("name", t.name())
                        .build())
                .toList());
    }
}
