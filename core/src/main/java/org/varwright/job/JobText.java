package org.varwright.job;

import java.util.List;
import java.util.Optional;
import org.varwright.isolation.OrderStep;
import org.varwright.page.Page;

/** A job as a page of text: what stands, what is next, what disagrees. */
public final class JobText {
    private final Page page = new Page();
    private final Job job;

    private JobText(Job job) {
        this.job = job;
    }

    public static String of(Job job) {
        return new JobText(job).write();
    }

    private String write() {
        Ledger ledger = job.ledger();
        page.heading("Job");
        page.row("Name", job.log().job());
        ledger.opened.ifPresent(o -> {
            page.row("What", o.title());
            o.number().ifPresent(n -> page.row("Number", n));
            o.alarm().ifPresent(a -> page.row("Alarm", a));
            o.reason().ifPresent(r -> page.row("Reason", r));
        });
        ledger.bank.ifPresent(b -> page.row("Bank", b.name()));
        page.row("Log", job.log().events().size() + " events, hash " + job.log().hash());
        page.row("Stands", standing(ledger));
        page.row("On the bank", job.peopleOn().isEmpty() ? "nobody is signed on" : String.join(", ", job.peopleOn()));
        nextVisit(ledger);
        ledger.meterLimits().sentences().forEach(s -> page.row("Meter", s));
        ledger.order().ifPresent(this::order);
        readings(ledger);
        for (Counted<Fact.RecordRead> record : ledger.records) {
            page.heading("Record " + record.fact().name());
            page.row("Read by", record.event().by());
            record.fact().findings().forEach(f -> page.item("  - ", f));
        }
        warn(
                "Devices disagree; a person decides",
                ledger.conflicts().stream()
                        .map(c -> c.about() + ": " + String.join(", ", c.events()))
                        .toList());
        warn(
                "Kept, but not counted",
                job.notCounted().stream()
                        .map(n -> n.event().id() + " " + FactJson.type(n.event().fact()) + " by "
                                + n.event().by() + ": " + String.join("; ", n.reasons()))
                        .toList());
        warn(
                "About the log itself",
                job.log().findings().stream().map(LogFinding::text).toList());
        return page.print();
    }

    private void nextVisit(Ledger ledger) {
        if (ledger.nextVisits().isEmpty()) {
            page.row("Next visit", "none is agreed");
        }
        ledger.nextVisits()
                .forEach(v -> page.row(
                        "Next visit",
                        v.fact().date() + ": " + v.fact().purpose() + " ("
                                + v.event().by() + ")"));
    }

    private static String standing(Ledger ledger) {
        if (ledger.closed.isPresent()) {
            return "closed: " + ledger.closed.get().outcome();
        }
        if (ledger.stopped().isPresent()) {
            return "STOPPED: " + ledger.stopped().get();
        }
        return ledger.order()
                .map(o -> switch (o.standing()) {
                    case CURRENT -> words(o);
                    case ENDED, REPLACED ->
                        "no order of work to go by: "
                                + o.why().orElse(o.standing().code());
                })
                .orElse("open, no order of work yet");
    }

    private static String words(Order order) {
        return switch (order.phase()) {
            case WAY_IN ->
                "way in, " + order.confirmed().size() + " of "
                        + order.work().in().size() + " steps confirmed";
            case WORK -> "at work: every step of the way in is confirmed";
            case WAY_BACK ->
                "way back, " + (order.confirmed().size() - order.work().in().size()) + " of "
                        + order.work().back().size() + " steps confirmed";
            case IN_SERVICE -> "every step of the order of work is confirmed";
        };
    }

    private void order(Order order) {
        page.heading("Order of work");
        page.row("Made by event", order.id());
        page.row("Access", String.join(", ", order.work().access()));
        Optional<OrderStep> next = order.standing() == Order.Standing.CURRENT ? order.next() : Optional.empty();
        next.ifPresent(s -> page.row("Next", s.n() + "  " + s.text()));
        if (order.confirmed().isEmpty()) {
            return;
        }
        page.blank();
        page.table(
                List.of("step", "what", "by", "second", "reading"),
                order.confirmed().stream()
                        .map(c -> List.of(
                                String.valueOf(c.fact().step()),
                                shortened(order.work()
                                        .steps()
                                        .get(c.fact().step() - 1)
                                        .text()),
                                c.event().by(),
                                c.fact().second().orElse(""),
                                c.fact().reading().orElse("")))
                        .toList(),
                0);
    }

    private static String shortened(String text) {
        return text.length() <= 52 ? text : text.substring(0, 51).stripTrailing() + "…";
    }

    private void readings(Ledger ledger) {
        if (ledger.readings.isEmpty()) {
            return;
        }
        page.heading("Readings typed");
        page.table(
                List.of("position", "values", "by"),
                ledger.readings.stream()
                        .map(r -> List.of(
                                r.fact().position(),
                                String.join(
                                        ", ",
                                        r.fact().values().entrySet().stream()
                                                .map(e -> e.getKey() + " " + e.getValue())
                                                .toList()),
                                r.event().by()))
                        .toList());
    }

    private void warn(String heading, List<String> lines) {
        if (lines.isEmpty()) {
            return;
        }
        page.heading(heading);
        lines.forEach(line -> page.item("  ! ", line));
    }
}
