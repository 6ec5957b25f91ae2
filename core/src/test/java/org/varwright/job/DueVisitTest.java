package org.varwright.job;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;
import org.varwright.json.Json;
import org.varwright.quantity.CalendarDate;

/**
 * Which visit of which bank is due: the cases of {@code due-visits.json}. The app reckons them itself, for its first screen must not wait for {@code core};
 * {@code web/tests/unit/visits.spec.ts} holds it to the same cases.
 */
class DueVisitTest {
    private static final String ANY_BANK = JobTest.TAMARACK;
    private static final long FIRST_MILLIS = 1_795_000_000_000L;

    @TestFactory
    Stream<DynamicTest> cases() throws IOException {
        Json.Arr cases = (Json.Arr) Json.parse(Files.readString(Path.of("src/test/resources/due-visits.json")));
        assertFalse(cases.items().isEmpty());
        return cases.items().stream().map(item -> {
            Json.Obj each = (Json.Obj) item;
            return DynamicTest.dynamicTest(text(each, "name"), () -> hold(each));
        });
    }

    private static void hold(Json.Obj each) {
        List<Job> jobs = objects(each, "jobs").stream().map(DueVisitTest::job).toList();
        CalendarDate on = CalendarDate.parse(text(each, "on")).orElseThrow();
        String expected = each.get("due").print();
        assertEquals(expected, due(jobs, on).print());
        assertEquals(expected, due(jobs.reversed(), on).print(), "in whatever order the jobs come");
    }

    /** What is due as the file has it; banks of which nothing is agreed are not in it. */
    private static Json due(List<Job> jobs, CalendarDate on) {
        List<Json> due = new ArrayList<>();
        for (DueVisit each : DueVisit.of(jobs)) {
            each.visit()
                    .map(Counted::fact)
                    .ifPresent(visit -> due.add(Json.object()
                            .put("bank", each.bank())
                            .put("job", each.job())
                            .put("date", visit.date().toString())
                            .put("for", visit.purpose())
                            .put("standing", each.on(on).name().toLowerCase(Locale.ROOT))
                            .put("days", on.daysUntil(visit.date()))
                            .put("disputed", each.isDisputed())
                            .build()));
        }
        return Json.of(due);
    }

    /** A job on a bank of that name; each of its visits is said by a device of its own. */
    private static Job job(Json.Obj told) {
        long millis = FIRST_MILLIS + (long) ((Json.Num) told.get("opened")).value();
        String bank = ANY_BANK.replaceFirst("(?m)^name: .*$", "name: " + text(told, "bank"));
        Walk walk = new Walk("desk", JobLog.empty(text(told, "job")), millis);
        walk.yes(new Fact.Opened("alarm", bank, Optional.empty(), Optional.empty(), Optional.empty()));
        JobLog opened = walk.log;
        JobLog all = opened;
        int devices = 0;
        for (Json.Obj visit : objects(told, "visits")) {
            devices++;
            Walk device = new Walk("device-" + devices, opened, millis + 10_000L * devices);
            device.yes(new Fact.VisitAgreed(
                    CalendarDate.parse(text(visit, "date")).orElseThrow(), text(visit, "for"), List.of()));
            all = all.merge(device.log);
        }
        return Job.of(all, Walk.PLANNER);
    }

    private static List<Json.Obj> objects(Json.Obj json, String name) {
        return ((Json.Arr) json.get(name))
                .items().stream().map(item -> (Json.Obj) item).toList();
    }

    private static String text(Json.Obj json, String name) {
        return ((Json.Str) json.get(name)).value();
    }
}
