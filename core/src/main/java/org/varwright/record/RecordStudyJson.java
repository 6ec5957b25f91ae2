package org.varwright.record;

import org.varwright.basis.BasisJson;
import org.varwright.json.Json;
import org.varwright.unbalance.LocateJson;

/** {@link RecordStudy} as members of the JSON of a record. */
public final class RecordStudyJson {
    private RecordStudyJson() {}

    /** The study alone. */
    public static Json of(RecordStudy study) {
        Json.Builder json = Json.object();
        put(json, study);
        return json.build();
    }

    /** Adds {@code frequencyHertz}, {@code findings}, {@code notAnswered} and, with a bank, {@code matching} and {@code located}. */
    public static void put(Json.Builder json, RecordStudy study) {
        json.put(
                "frequencyHertz",
                study.cycles().isTracked() ? Json.of(study.cycles().hertz()) : Json.none());
        study.matching().ifPresent(m -> json.put("matching", matching(m)));
        json.put(
                "findings",
                Json.of(study.findings().stream().map(RecordStudyJson::finding).toList()));
        if (study.bank().isPresent()) {
            json.put(
                    "located",
                    Json.of(study.located().stream()
                            .map(RecordStudyJson::located)
                            .toList()));
        }
        json.put("sentences", Json.strings(RecordStudyText.sentences(study)));
        json.put(
                "notAnswered",
                Json.of(study.unanswered().stream()
                        .map(u -> (Json) Json.object()
                                .put("missing", u.missing())
                                .put("effect", u.effect())
                                .put("words", RecordStudyText.sentence(u))
                                .build())
                        .toList()));
    }

    private static Json finding(Finding finding) {
        return Json.object()
                .put("kind", finding.kind())
                .put("weight", finding.weight().code())
                .put("seconds", finding.seconds())
                .put("where", finding.where())
                .put("text", finding.words())
                .put(
                        "evidence",
                        Json.of(finding.evidence().stream()
                                .map(e -> (Json) Json.object()
                                        .put("channel", e.channel())
                                        .put("seconds", e.seconds())
                                        .put("value", e.value())
                                        .put("unit", e.unit())
                                        .put("what", e.what())
                                        .build())
                                .toList()))
                .put("basis", BasisJson.of(finding.basis()))
                .build();
    }

    private static Json located(Located located) {
        return Json.object()
                .put("sensor", located.sensor())
                .put("channel", located.channel())
                .put("fromSeconds", located.fromSeconds())
                .put("toSeconds", located.toSeconds())
                .put("hasHealthy", located.hasHealthy())
                .put("hasAngle", located.hasAngle())
                .put("locate", LocateJson.of(located.locate()))
                .build();
    }

    private static Json matching(ChannelMatching matching) {
        return Json.object()
                .put("clear", matching.open().isEmpty())
                .put(
                        "channels",
                        Json.of(matching.assignments().stream()
                                .map(a -> (Json) Json.object()
                                        .put("number", a.channel().number())
                                        .put("name", a.channel().name())
                                        .put("measures", a.role().text())
                                        .put("why", Json.strings(a.why()))
                                        .build())
                                .toList()))
                .put(
                        "notUsed",
                        Json.of(matching.unused().stream()
                                .map(u -> (Json) Json.object()
                                        .put("number", u.channel().number())
                                        .put("name", u.channel().name())
                                        .put("why", u.why())
                                        .build())
                                .toList()))
                .put(
                        "questions",
                        Json.of(matching.open().stream()
                                .map(q -> (Json) Json.object()
                                        .put(
                                                "channels",
                                                Json.strings(q.channels().stream()
                                                        .map(Channel::name)
                                                        .toList()))
                                        .put("text", q.what())
                                        .put("choices", Json.strings(q.choices()))
                                        .build())
                                .toList()))
                .build();
    }
}
