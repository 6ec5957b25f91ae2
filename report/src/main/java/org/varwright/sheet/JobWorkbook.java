package org.varwright.sheet;

import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.varwright.isolation.OrderStep;
import org.varwright.job.Counted;
import org.varwright.job.Fact;
import org.varwright.job.JobEvent;
import org.varwright.job.LoggedEvent;
import org.varwright.job.Order;
import org.varwright.report.JobReport;

/** A job out of its log as a workbook: steps as confirmed, people, parts, notes, attachments, the log itself, and the results. */
public final class JobWorkbook {
    private JobWorkbook() {}

    /** The workbook: the same bytes for the same log and zone. */
    public static byte[] write(JobReport report) {
        return ReportWorkbook.write(report.results(), workbook -> {
            stands(workbook, report);
            steps(workbook, report);
            people(workbook, report);
            parts(workbook, report);
            notes(workbook, report);
            log(workbook, report);
        });
    }

    private static void stands(Workbook workbook, JobReport report) {
        SheetWriter sheet = new SheetWriter(workbook.newWorksheet("Record"), List.of("what", "value"));
        sheet.row("title", report.job().title());
        sheet.row("entries", report.job().log().events().size());
        sheet.row("hash of the log", report.job().log().hash());
        sheet.row("closed", report.job().isClosed() ? "yes" : "NO");
        sheet.row("stopped", report.job().isStopped() ? "YES" : "no");
        sheet.row("times", "clocks of the devices, in " + report.zone().getId());
        report.job()
                .meterLimits()
                .sentences(e -> e.by() + ", " + report.times().second(e))
                .forEach(s -> sheet.row("limits of error", s));
        report.job().peopleOn().forEach(person -> sheet.row("still signed on", person));
        report.job().log().findings().forEach(finding -> sheet.row("about the log", finding.text()));
        report.job()
                .conflicts()
                .forEach(c -> sheet.row("devices disagree", c.about() + ": " + String.join(", ", c.events())));
        report.job()
                .notCounted()
                .forEach(n -> sheet.row("not counted", n.event().id() + ": " + String.join("; ", n.reasons())));
        report.remarks().forEach(remark -> sheet.row("not used", remark));
        sheet.finish();
    }

    private static void steps(Workbook workbook, JobReport report) {
        SheetWriter sheet = new SheetWriter(
                workbook.newWorksheet("Steps"),
                List.of(
                        "order",
                        "step",
                        "way",
                        "kind",
                        "text",
                        "confirmed",
                        "by",
                        "second",
                        "reading",
                        "label",
                        "ticked",
                        "photo SHA-256"));
        for (Order order : report.job().orders()) {
            int in = order.work().in().size();
            for (OrderStep step : order.work().steps()) {
                int at = step.n() - 1;
                String way = at < in ? "in" : "back";
                String kind = step.kind().code();
                if (at >= order.confirmed().size()) {
                    sheet.row(order.id(), step.n(), way, kind, step.text(), "NOT CONFIRMED");
                } else {
                    Order.Confirmation done = order.confirmed().get(at);
                    sheet.row(
                            order.id(),
                            step.n(),
                            way,
                            kind,
                            step.text(),
                            report.times().second(done.event()),
                            done.event().by(),
                            done.fact().second(),
                            done.fact().reading(),
                            done.fact().label(),
                            String.join("; ", done.fact().ticked()),
                            done.fact().photo());
                }
            }
        }
        sheet.finish();
    }

    private static void people(Workbook workbook, JobReport report) {
        SheetWriter sheet = new SheetWriter(
                workbook.newWorksheet("People"), List.of("person", "what", "lock", "time", "written by", "entry"));
        for (LoggedEvent logged : report.job().log().events()) {
            JobEvent event = logged.event();
            if (event.fact() instanceof Fact.SignedOn on && counts(report, event)) {
                sheet.row(on.person(), "on", on.lock(), report.times().second(event), event.by(), event.id());
            } else if (event.fact() instanceof Fact.SignedOff off && counts(report, event)) {
                sheet.row(off.person(), "off", "", report.times().second(event), event.by(), event.id());
            }
        }
        sheet.finish();
    }

    private static void parts(Workbook workbook, JobReport report) {
        SheetWriter sheet =
                new SheetWriter(workbook.newWorksheet("Parts"), List.of("serial", "from", "to", "time", "by", "entry"));
        for (Counted<Fact.UnitMoved> move : report.job().counted(Fact.UnitMoved.class)) {
            sheet.row(
                    move.fact().serial(),
                    move.fact().from(),
                    move.fact().to(),
                    report.times().second(move.event()),
                    move.event().by(),
                    move.event().id());
        }
        sheet.finish();
    }

    private static void notes(Workbook workbook, JobReport report) {
        SheetWriter sheet =
                new SheetWriter(workbook.newWorksheet("Notes"), List.of("time", "by", "what", "text", "SHA-256"));
        for (LoggedEvent logged : report.job().log().events()) {
            JobEvent event = logged.event();
            if (!counts(report, event)) {
                continue;
            }
            String time = report.times().second(event);
            if (event.fact() instanceof Fact.Noted noted) {
                sheet.row(time, event.by(), "note", noted.text(), "");
            } else if (event.fact() instanceof Fact.Attached attached) {
                sheet.row(time, event.by(), "attachment", attached.name(), attached.sha256());
            } else if (event.fact() instanceof Fact.VisitAgreed visit) {
                sheet.row(time, event.by(), "next visit", visit.date() + ": " + visit.purpose(), "");
            } else if (event.fact() instanceof Fact.AsLeft left) {
                sheet.row(time, event.by(), "selector as left", left.selector() + ": " + left.position(), "");
            } else if (event.fact() instanceof Fact.Measured measured) {
                sheet.row(time, event.by(), "measured", measured.place() + ": " + measured.value(), "");
            } else if (event.fact() instanceof Fact.RecordRead record) {
                sheet.row(
                        time,
                        event.by(),
                        "record",
                        record.name() + ": " + String.join(" ", record.findings()),
                        record.sha256());
            }
        }
        sheet.finish();
    }

    private static void log(Workbook workbook, JobReport report) {
        SheetWriter sheet = new SheetWriter(
                workbook.newWorksheet("Log"), List.of("entry", "time", "by", "type", "counts", "SHA-256"));
        for (LoggedEvent logged : report.job().log().events()) {
            JobEvent event = logged.event();
            sheet.row(
                    event.id(),
                    report.times().second(event),
                    event.by(),
                    event.type(),
                    counts(report, event) ? "yes" : "NO",
                    logged.hash());
        }
        sheet.finish();
    }

    private static boolean counts(JobReport report, JobEvent event) {
        return !report.job().withdrawn().contains(event.id())
                && report.job().notCounted().stream().noneMatch(n -> n.event().equals(event));
    }
}
