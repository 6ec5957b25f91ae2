package org.varwright.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.job.Counted;
import org.varwright.job.Fact;
import org.varwright.job.JobEvent;
import org.varwright.report.document.Block;
import org.varwright.report.document.Block.Table.Cell;
import org.varwright.report.document.Block.Table.Column;
import org.varwright.report.document.Block.Table.Row;
import org.varwright.report.document.Section;

/** Who was on the bank, from when to when. */
final class JobPeopleSection {
    private static final String TITLE = "People on the bank";

    private JobPeopleSection() {}

    /** A person's stay; {@code off} is empty while they are on. */
    private record Stay(Counted<Fact.SignedOn> on, List<JobEvent> off) {}

    static Section of(JobReport report) {
        List<Stay> stays = stays(report);
        if (stays.isEmpty()) {
            return Section.absent(TITLE, "Nobody signed on in this job.");
        }
        Times times = report.times();
        List<Row> rows = new ArrayList<>();
        for (Stay stay : stays) {
            JobEvent on = stay.on().event();
            rows.add(new Row(List.of(
                    new Cell.Text(stay.on().fact().person()),
                    new Cell.Text(stay.on().fact().lock().orElse("none named")),
                    new Cell.Text(times.minute(on) + ", written by " + on.by()),
                    stay.off().isEmpty()
                            ? new Cell.Strong("STILL ON")
                            : new Cell.Text(times.minute(stay.off().getFirst()) + ", written by "
                                    + stay.off().getFirst().by()))));
        }
        return Section.of(
                TITLE,
                new Block.Table(
                        "",
                        List.of(
                                Column.left("Name", 26),
                                Column.left("Lock", 14),
                                Column.left("Signed on", 30),
                                Column.left("Signed off", 30)),
                        rows));
    }

    private static List<Stay> stays(JobReport report) {
        Map<String, JobEvent> offs = new LinkedHashMap<>();
        List<Counted<Fact.SignedOff>> left = new ArrayList<>(report.job().counted(Fact.SignedOff.class));
        List<Stay> stays = new ArrayList<>();
        for (Counted<Fact.SignedOn> on : report.job().counted(Fact.SignedOn.class)) {
            List<JobEvent> off = left.stream()
                    .filter(o -> o.fact().person().equals(on.fact().person())
                            && o.event().clock().compareTo(on.event().clock()) > 0
                            && !offs.containsKey(o.event().id()))
                    .map(Counted::event)
                    .limit(1)
                    .toList();
            off.forEach(o -> offs.put(o.id(), o));
            stays.add(new Stay(on, off));
        }
        return stays;
    }
}
