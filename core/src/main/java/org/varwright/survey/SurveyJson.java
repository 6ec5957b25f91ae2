package org.varwright.survey;

import java.util.List;
import java.util.Map;
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
                .put(
                        "stages",
                        Json.of(survey.stages().stream().map(SurveyJson::stage).toList()))
                .put(
                        "groups",
                        Json.of(survey.groups().stream().map(SurveyJson::group).toList()))
                .put(
                        "places",
                        Json.of(survey.spots().stream().map(SurveyJson::spot).toList()))
                .put(
                        "trends",
                        Json.of(survey.trends().stream().map(SurveyJson::trend).toList()))
                .put("findings", Json.strings(survey.findings()))
                .put("readings", ReadingsJson.of(survey.readings()))
                .put("columns", Json.strings(survey.readings().understood()))
                .put("notices", problems(survey.readings().notices()))
                .put("problems", problems(survey.readings().problems()))
                .put("meterLimit", survey.settings().meterLimit())
                .put("meterLimits", numbers(survey.settings().meterLimits()))
                .put("checks", BasisJson.of(survey.checks()))
                .build();
    }

    private static Json numbers(Map<String, Double> byName) {
        Json.Builder json = Json.object();
        byName.forEach(json::put);
        return json.build();
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

    private static Json stage(StageSurvey stage) {
        return Json.object()
                .put("stage", stage.name())
                .put("ratedVars", stage.ratedVars())
                .put("vars", stage.vars())
                .put("spread", stage.spread())
                .put("assumed", stage.assumed())
                .build();
    }

    private static Json group(GroupSurvey group) {
        return Json.object()
                .put("name", group.name())
                .put("row", group.row())
                .put("units", group.units())
                .put("capacitanceFarads", group.capacitanceFarads())
                .put("referenceFarads", group.referenceFarads())
                .put("verdict", group.verdict().code())
                .put("probability", group.probability())
                .put("reason", group.reason())
                .put("solved", group.solved())
                .put(
                        "bounds",
                        Json.of(group.bounds().stream()
                                .map(bounds -> Json.object()
                                        .put("position", bounds.position())
                                        .put("lowFarads", bounds.low())
                                        .put(
                                                "highFarads",
                                                Double.isFinite(bounds.high()) ? Json.of(bounds.high()) : Json.none())
                                        .build())
                                .toList()))
                .put("next", Json.strings(group.next()))
                .put("basis", BasisJson.of(group.basis()))
                .build();
    }

    private static Json spot(SpotSurvey spot) {
        return Json.object()
                .put("name", spot.name())
                .put("row", spot.row())
                .put("what", spot.what())
                .put("read", spot.shown())
                .put("verdict", spot.verdict().code())
                .put("reason", spot.reason())
                .build();
    }

    private static Json trend(Trend trend) {
        return Json.object()
                .put("position", trend.position())
                .put(
                        "points",
                        Json.of(trend.points().stream()
                                .map(point -> Json.object()
                                        .put("when", point.when())
                                        .put("capacitanceFarads", point.farads())
                                        .build())
                                .toList()))
                .put("change", trend.change())
                .put("matesChange", trend.matesChange())
                .put("changePerYear", orNull(trend.perYear()))
                .put("drifts", trend.drifts())
                .put("sentence", trend.sentence())
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
