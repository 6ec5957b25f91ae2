package org.varwright.survey;

import java.util.List;
import java.util.OptionalDouble;
import org.varwright.basis.BasisJson;
import org.varwright.json.Json;
import org.varwright.problem.Problem;

/** {@link Survey} as JSON. */
public final class SurveyJson {
    private SurveyJson() {}

    public static Json of(Survey survey) {
        return Json.object()
                .put(
                        "units",
                        Json.of(survey.units().stream().map(SurveyJson::unit).toList()))
                .put("legs", Json.of(survey.legs().stream().map(SurveyJson::leg).toList()))
                .put("findings", Json.strings(survey.findings()))
                .put("columns", Json.strings(survey.readings().understood()))
                .put("notices", problems(survey.readings().notices()))
                .put("problems", problems(survey.readings().problems()))
                .put("meterLimit", survey.settings().meterLimit())
                .put("checks", BasisJson.of(survey.checks()))
                .build();
    }

    private static Json unit(UnitSurvey unit) {
        return Json.object()
                .put("position", unit.position().name())
                .put("serial", unit.serial().map(Json::of).orElse(Json.none()))
                .put(
                        "rows",
                        Json.of(unit.rows().stream()
                                .map(row -> Json.of((double) row))
                                .toList()))
                .put("capacitanceFarads", orNull(unit.capacitanceFarads()))
                .put("referenceFarads", orNull(unit.referenceFarads()))
                .put("reference", unit.reference().map(r -> Json.of(r.words())).orElse(Json.none()))
                .put("ratio", orNull(unit.ratio()))
                .put("verdict", unit.verdict().code())
                .put("probability", unit.probability())
                .put("sectionsShorted", unit.sectionsShorted())
                .put("elementsOut", unit.elementsOut())
                .put("voltagePerHealthy", unit.voltagePerHealthy())
                .put("voltagePerRated", unit.voltagePerRated())
                .put("finding", unit.finding().map(Json::of).orElse(Json.none()))
                .put("reason", unit.reason())
                .put("remarks", Json.strings(unit.remarks()))
                .put("basis", BasisJson.of(unit.basis()))
                .build();
    }

    private static Json leg(LegSurvey leg) {
        return Json.object()
                .put("stage", leg.stage())
                .put("leg", leg.leg())
                .put("capacitanceFarads", leg.capacitanceFarads())
                .put("deviation", leg.deviation())
                .put("units", leg.units())
                .put("assumed", leg.assumed())
                .build();
    }

    private static Json problems(List<Problem> problems) {
        return Json.of(problems.stream()
                .map(problem -> Json.object()
                        .put("place", problem.place().print())
                        .put("message", problem.text())
                        .build())
                .toList());
    }

    private static Json orNull(OptionalDouble value) {
        return value.isPresent() ? Json.of(value.getAsDouble()) : Json.none();
    }
}
