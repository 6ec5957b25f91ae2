package org.varwright.task;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bankfile.BankFile;
import org.varwright.discharge.Discharge;
import org.varwright.discharge.DischargeJson;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveyJson;
import org.varwright.survey.SurveySettings;

/** Runs tasks given as JSON. */
public final class Tasks {
    private Tasks() {}

    /**
     * Runs one task.
     *
     * @param request {@code {"task": NAME, "bank": TEXT OF THE BANK FILE, …}}
     * @return {@code {"ok": true, "result": …}} with the fields of the command of the same name, or {@code {"ok": false, "problems": [{"code", "file",
     *     "line", "column", "path", "message"}]}}
     */
    public static String run(String request) {
        try {
            return Json.object()
                    .put("ok", true)
                    .put("result", result(new Request(Json.parse(request))))
                    .build()
                    .print();
        } catch (VarwrightException e) {
            return Json.object()
                    .put("ok", false)
                    .put(
                            "problems",
                            Json.of(e.problems().stream().map(Tasks::json).toList()))
                    .build()
                    .print();
        }
    }

    private static Json result(Request request) {
        String task = request.text("task");
        return switch (task) {
            case "discharge" -> DischargeJson.of(Discharge.of(bank(request), Optional.empty()));
            case "survey" -> survey(request);
            default ->
                throw new VarwrightException(
                        Message.TASK_UNKNOWN, new Place("", 0, 0, "task"), task, "discharge, survey");
        };
    }

    private static Json survey(Request request) {
        Bank bank = bank(request);
        byte[] table = request.text("readings").getBytes(StandardCharsets.UTF_8);
        SurveySettings settings = SurveySettings.of(bank.standard(), request.number("meterLimit"));
        return SurveyJson.of(Survey.of(bank, ReadingsFile.read(bank, "readings", table), settings));
    }

    private static Bank bank(Request request) {
        return BankFile.read("bank", request.text("bank").getBytes(StandardCharsets.UTF_8))
                .requireBank();
    }

    private static Json json(Problem problem) {
        return Json.object()
                .put("code", problem.message().name())
                .put("file", problem.place().file())
                .put("line", problem.place().line())
                .put("column", problem.place().column())
                .put("path", problem.place().path())
                .put("message", problem.text())
                .build();
    }
}
