package org.varwright.task;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.json.Json;
import org.varwright.problem.Problem;
import org.varwright.survey.Spares;
import org.varwright.survey.SparesFile;

/** Spares of several tables as one list. */
final class SparesTask {
    private SparesTask() {}

    /** {@code {"bank", "tables": [TEXT…]}}, oldest first: where two tables name one serial, the later one counts. Without tables, the spares of the bank file. */
    static Json list(Bank bank, List<String> tables) {
        Map<String, Spare> spares = new LinkedHashMap<>();
        List<String> columns = new ArrayList<>();
        List<Problem> notices = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        if (tables.isEmpty()) {
            bank.spares().forEach(spare -> spares.put(spare.serial(), spare));
        }
        for (int i = 0; i < tables.size(); i++) {
            String name = tables.size() == 1 ? "spares" : "spares, table " + (i + 1);
            Spares table = SparesFile.read(bank, name, tables.get(i).getBytes(StandardCharsets.UTF_8));
            table.spares().forEach(spare -> spares.put(spare.serial(), spare));
            columns.addAll(table.understood());
            notices.addAll(table.notices());
            problems.addAll(table.problems());
        }
        return Json.object()
                .put(
                        "spares",
                        Json.of(spares.values().stream().map(SparesTask::spare).toList()))
                .put("columns", Json.strings(columns))
                .put(
                        "notices",
                        Json.of(notices.stream().map(SparesTask::problem).toList()))
                .put(
                        "problems",
                        Json.of(problems.stream().map(SparesTask::problem).toList()))
                .build();
    }

    private static Json spare(Spare spare) {
        return Json.object()
                .put("serial", spare.serial())
                .put("unit", spare.unit().name())
                .put(
                        "capacitanceFarads",
                        spare.capacitanceFarads().isPresent()
                                ? Json.of(spare.capacitanceFarads().getAsDouble())
                                : Json.none())
                .put("note", spare.note().map(Json::of).orElse(Json.none()))
                .build();
    }

    private static Json problem(Problem problem) {
        return Json.object()
                .put("place", problem.place().print())
                .put("message", problem.text())
                .build();
    }
}
