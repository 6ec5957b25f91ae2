package org.varwright.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.isolation.OrderStep;
import org.varwright.job.Fact;
import org.varwright.job.JobEvent;
import org.varwright.job.Order;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Notice.Weight;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Each order of work of a job: who confirmed which step and when, what was read, what was not done. */
final class JobOrderSections {
    private JobOrderSections() {}

    static List<Section> of(JobReport report) {
        List<Order> orders = report.job().orders();
        if (orders.isEmpty()) {
            return List.of(Section.absent("Order of work", "No order of work was made in this job."));
        }
        List<Section> sections = new ArrayList<>();
        for (int i = 0; i < orders.size(); i++) {
            String title = orders.size() == 1 ? "Order of work, as done" : "Order of work " + (i + 1) + ", as done";
            sections.add(of(report, orders.get(i), title));
        }
        return sections;
    }

    private static Section of(JobReport report, Order order, String title) {
        List<Block> blocks = new ArrayList<>();
        Fact.OrderMade made = (Fact.OrderMade) order.event().fact();
        blocks.add(new Block.Facts(List.of(
                new Block.Facts.Fact(
                        "Made",
                        report.times().minute(order.event()) + " by "
                                + order.event().by() + ", entry " + order.id()),
                new Block.Facts.Fact("Way into", String.join(", ", order.work().access())),
                new Block.Facts.Fact("Reason", made.reason()),
                new Block.Facts.Fact("From", from(made.origin())),
                new Block.Facts.Fact("Stands", stands(order)))));
        if (order.standing() == Order.Standing.ENDED) {
            blocks.add(new Block.Notice(
                    Weight.CAUTION,
                    "CAUTION: this order ended before its last step",
                    List.of(order.why().orElse(""))));
        }
        blocks.add(new Block.Table(
                "",
                List.of(
                        Column.right("No.", 5),
                        Column.left("Step", 47),
                        Column.left("Confirmed", 24),
                        Column.left("Shown", 24)),
                rows(report, order)));
        return new Section(title, Section.PageStart.RUN_ON, blocks);
    }

    private static String from(Fact.Origin origin) {
        return switch (origin) {
            case Fact.Origin.AfterLastStep ignored -> "where the last confirmed step of the order before had left it";
            case Fact.Origin.AsFound found -> {
                List<String> parts = new ArrayList<>();
                found.positions().forEach((device, position) -> parts.add(device + " " + position));
                found.openDoors().forEach(door -> parts.add("door of " + door + " open"));
                found.grounds().forEach((conductor, n) -> parts.add(n + " portable on " + conductor));
                found.shorts().forEach((stage, n) -> parts.add(n + " shorts on " + stage));
                yield parts.isEmpty() ? "in service" : "as found: " + String.join(", ", parts);
            }
        };
    }

    private static String stands(Order order) {
        int done = order.confirmed().size();
        String count = done + " of " + order.work().steps().size() + " steps confirmed";
        return switch (order.standing()) {
            case CURRENT -> count;
            case REPLACED -> count + "; " + order.why().orElse("replaced");
            case ENDED -> count + "; ended";
        };
    }

    private static List<Row> rows(JobReport report, Order order) {
        List<Row> rows = new ArrayList<>();
        List<OrderStep> steps = order.work().steps();
        int done = order.confirmed().size();
        int in = order.work().in().size();
        List<Interruption> interruptions = new ArrayList<>(interruptions(report, order));
        for (int i = 0; i < done; i++) {
            Order.Confirmation confirmation = order.confirmed().get(i);
            while (!interruptions.isEmpty()
                    && interruptions
                                    .getFirst()
                                    .event()
                                    .clock()
                                    .compareTo(confirmation.event().clock())
                            < 0) {
                rows.add(row(report, interruptions.removeFirst()));
            }
            rows.add(row(report, steps.get(i), confirmation));
            if (i + 1 == in) {
                rows.add(new Row(List.of(
                        new Cell.Text(""),
                        new Cell.Strong("The way in ends here; work between the ways."),
                        new Cell.Text(""),
                        new Cell.Text(""))));
            }
        }
        interruptions.forEach(interruption -> rows.add(row(report, interruption)));
        if (done < steps.size()) {
            rows.add(new Row(List.of(
                    new Cell.Text(""),
                    new Cell.Strong(
                            done + 1 == steps.size()
                                    ? "Step " + steps.size() + " is NOT confirmed: "
                                            + steps.get(done).text()
                                    : "Steps " + (done + 1) + " to " + steps.size() + " are NOT confirmed. Next was "
                                            + (done + 1) + ": "
                                            + steps.get(done).text()),
                    new Cell.Text(""),
                    new Cell.Text(""))));
        }
        return rows;
    }

    private static Row row(JobReport report, OrderStep step, Order.Confirmation confirmation) {
        Fact.StepConfirmed fact = confirmation.fact();
        JobEvent event = confirmation.event();
        List<String> shown = new ArrayList<>();
        fact.reading().ifPresent(r -> shown.add("read: " + r));
        fact.label().ifPresent(l -> shown.add("label: " + l));
        if (!fact.ticked().isEmpty()) {
            shown.add(
                    fact.ticked().size() == 1 ? "1 item ticked" : fact.ticked().size() + " items ticked");
        }
        fact.photo().ifPresent(hash -> shown.add("photo: " + JobNotesSection.name(report, hash)));
        waited(report, step, confirmation).ifPresent(shown::add);
        return new Row(List.of(
                new Cell.Text(String.valueOf(step.n())),
                new Cell.Text(OrderSections.kind(report.bank().words(), step.kind())
                                .toUpperCase(Locale.ROOT) + " " + step.text()),
                new Cell.Text(report.times().second(event) + " " + event.by()
                        + fact.second().map(s -> "; second: " + s).orElse("")),
                new Cell.Text(String.join("; ", shown))));
    }

    /** How long a wait had run on the device that confirms it. */
    private static Optional<String> waited(JobReport report, OrderStep step, Order.Confirmation confirmation) {
        if (step.kind() != OrderStep.Kind.HOLD) {
            return Optional.empty();
        }
        JobEvent end = confirmation.event();
        return report.job().counted(Fact.HoldStarted.class).stream()
                .filter(h -> h.fact().order().equals(confirmation.fact().order())
                        && h.fact().step() == step.n()
                        && h.event().device().equals(end.device()))
                .reduce((first, last) -> last)
                .map(h -> "waited since " + report.times().second(h.event()) + ", "
                        + Values.wait(Math.floor(
                                (end.clock().wallMillis() - h.event().clock().wallMillis()) / 1000.0)));
    }

    /** Something that came between steps. */
    private record Interruption(JobEvent event, String text) {}

    private static List<Interruption> interruptions(JobReport report, Order order) {
        List<Interruption> all = new ArrayList<>();
        report.job().log().events().stream()
                .map(e -> e.event())
                .filter(e -> report.job().notCounted().stream()
                        .noneMatch(n -> n.event().equals(e)))
                .forEach(e -> {
                    if (e.fact() instanceof Fact.Deviated d && d.order().equals(order.id())) {
                        all.add(new Interruption(e, "DEVIATION at step " + d.step() + ": " + d.reason()));
                    } else if (e.fact() instanceof Fact.Stopped s) {
                        all.add(new Interruption(e, "STOPPED: " + s.reason()));
                    } else if (e.fact() instanceof Fact.Resumed r) {
                        all.add(new Interruption(e, "Resumed: " + r.reason()));
                    } else if (e.fact() instanceof Fact.ClockMoved) {
                        all.add(new Interruption(e, "The clock of " + e.device() + " jumped; its wait began anew."));
                    } else if (e.fact() instanceof Fact.Corrected c) {
                        all.add(new Interruption(e, "Taken back: entry " + c.event() + ", because " + c.reason()));
                    }
                });
        return all.stream().filter(i -> within(report, order, i.event())).toList();
    }

    /** Between the making of this order and of the next. */
    private static boolean within(JobReport report, Order order, JobEvent event) {
        List<Order> orders = report.job().orders();
        int at = orders.indexOf(order);
        boolean after = event.clock().compareTo(order.event().clock()) > 0;
        boolean before = at + 1 >= orders.size()
                || event.clock().compareTo(orders.get(at + 1).event().clock()) < 0;
        return after && before;
    }

    private static Row row(JobReport report, Interruption interruption) {
        JobEvent event = interruption.event();
        return new Row(List.of(
                new Cell.Text(""),
                new Cell.Strong(interruption.text()),
                new Cell.Text(report.times().second(event) + " " + event.by()),
                new Cell.Text("entry " + event.id())));
    }

    /** Counts of what keeps an order from being over, for the open points. */
    static List<String> open(JobReport report) {
        List<Order> orders = report.job().orders();
        if (orders.isEmpty()) {
            return List.of();
        }
        Order last = orders.getLast();
        int left = last.work().steps().size() - last.confirmed().size();
        if (last.standing() == Order.Standing.ENDED) {
            return List.of("The order of work ended early: " + last.why().orElse("") + ".");
        }
        return left == 0
                ? List.of()
                : List.of(
                        left + (left == 1 ? " step" : " steps")
                                + " of the order of work are not confirmed: treat the bank as the last confirmed step left it.");
    }
}
