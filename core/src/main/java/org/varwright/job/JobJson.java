package org.varwright.job;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.varwright.isolation.IsolationJson;
import org.varwright.json.Json;

/** A job as JSON: what stands, what is next, what disagrees. */
public final class JobJson {
    private JobJson() {}

    public static Json of(Job job) {
        Ledger ledger = job.ledger();
        Json.Builder json = Json.object()
                .put("job", job.log().job())
                .put("title", text(ledger.opened.map(Fact.Opened::title)))
                .put(
                        "openedAt",
                        job.openedMillis().isPresent()
                                ? Json.of((double) job.openedMillis().getAsLong())
                                : Json.none())
                .put("number", text(ledger.opened.flatMap(Fact.Opened::number)))
                .put("reason", text(ledger.opened.flatMap(Fact.Opened::reason)))
                .put("alarm", text(ledger.opened.flatMap(Fact.Opened::alarm)))
                .put("bank", text(ledger.bank.map(b -> b.name())))
                .put("bankText", ledger.bankText)
                .put("stopped", text(ledger.stopped()))
                .put("closed", text(ledger.closed.map(Fact.Closed::outcome)))
                .put("events", job.log().events().size())
                .put("hash", job.log().hash());
        json.put("order", ledger.order().map(JobJson::order).orElse(Json.none()));
        json.put(
                "orders",
                Json.of(ledger.orders.stream()
                        .map(o -> (Json) Json.object()
                                .put("id", o.id())
                                .put("standing", o.standing().code())
                                .put("why", text(o.why()))
                                .put("access", Json.strings(o.work().access()))
                                .put("stepsConfirmed", o.confirmed().size())
                                .build())
                        .toList()));
        json.put(
                "people",
                list(
                        List.copyOf(ledger.people.values()),
                        p -> Json.object()
                                .put("person", p.name())
                                .put("lock", text(p.lock()))
                                .put("since", (double) p.event().clock().wallMillis())
                                .build()));
        json.put(
                "holds",
                list(
                        ledger.holds.values().stream()
                                .sorted(Comparator.comparing(h -> h.event().device()))
                                .toList(),
                        h -> Json.object()
                                .put("device", h.event().device())
                                .put("order", h.fact().order())
                                .put("step", h.fact().step())
                                .put("from", (double) h.fromMillis())
                                .build()));
        json.put("readings", counted(ledger.readings));
        json.put("readingTables", counted(ledger.readingTables));
        json.put("spareTables", counted(ledger.spareTables));
        json.put("readingsCsv", text(job.readingsTable()));
        json.put("unitMoves", counted(ledger.unitMoves));
        json.put("measured", counted(ledger.measured));
        json.put("asLeft", counted(ledger.asLeft));
        json.put("notes", counted(ledger.notes));
        json.put("attachments", counted(ledger.attachments));
        json.put("records", counted(ledger.records));
        json.put("nextVisits", counted(ledger.nextVisits()));
        json.put("meterLimits", meterLimits(ledger.meterLimits()));
        json.put("signatures", counted(ledger.signatures));
        json.put(
                "conflicts",
                list(
                        ledger.conflicts(),
                        c -> Json.object()
                                .put("about", c.about())
                                .put("events", Json.strings(c.events()))
                                .build()));
        json.put(
                "notCounted",
                list(
                        job.notCounted(),
                        n -> Json.object()
                                .put("id", n.event().id())
                                .put("type", FactJson.type(n.event().fact()))
                                .put("by", n.event().by())
                                .put("reasons", Json.strings(n.reasons()))
                                .build()));
        json.put("withdrawn", Json.strings(ledger.withdrawn));
        json.put(
                "findings",
                Json.strings(job.log().findings().stream().map(LogFinding::text).toList()));
        return json.build();
    }

    private static Json meterLimits(MeterLimits limits) {
        Json.Builder instruments = Json.object();
        limits.byInstrument().forEach(instruments::put);
        return Json.object()
                .put("limit", limits.limit())
                .put("instruments", instruments.build())
                .put("words", limits.words())
                .put("stated", counted(limits.stated()))
                .build();
    }

    private static Json order(Order order) {
        return Json.object()
                .put("id", order.id())
                .put("standing", order.standing().code())
                .put("why", text(order.why()))
                .put("phase", order.phase().code())
                .put("next", order.next().map(s -> Json.of(s.n())).orElse(Json.none()))
                .put(
                        "confirmed",
                        list(
                                order.confirmed(),
                                c -> Json.object()
                                        .put("step", c.fact().step())
                                        .put("id", c.event().id())
                                        .put("by", c.event().by())
                                        .put("second", text(c.fact().second()))
                                        .put("reading", text(c.fact().reading()))
                                        .put("at", (double) c.event().clock().wallMillis())
                                        .build()))
                .put("work", IsolationJson.of(order.work()))
                .build();
    }

    private static <F extends Fact> Json counted(List<Counted<F>> facts) {
        return list(
                facts,
                c -> Json.object()
                        .put("id", c.event().id())
                        .put("by", c.event().by())
                        .put("at", (double) c.event().clock().wallMillis())
                        .put("body", FactJson.body(c.fact()))
                        .build());
    }

    private static <T> Json list(List<T> items, Function<T, Json> write) {
        return Json.of(items.stream().map(write).toList());
    }

    private static Json text(Optional<String> text) {
        return text.map(Json::of).orElse(Json.none());
    }
}
