package org.varwright.cli;

import org.varwright.discharge.DischargeJson;
import org.varwright.energize.EnergizeJson;
import org.varwright.fit.FitJson;
import org.varwright.interlock.InterlockJson;
import org.varwright.isolation.IsolationJson;
import org.varwright.json.Json;
import org.varwright.record.RecordStudyJson;
import org.varwright.report.ReportInput;
import org.varwright.survey.SurveyJson;

/** A whole job as JSON: one member a command, with that command's fields; null where it was not part of the job. */
final class JobJson {
    private JobJson() {}

    static Json of(ReportInput input) {
        return Json.object()
                .put("bank", input.bank().name())
                .put("date", input.date().toString())
                .put("interlock", input.interlocking().map(InterlockJson::of).orElse(Json.none()))
                .put(
                        "isolate",
                        input.plan()
                                .map(p -> IsolationJson.of(input.job().access(), p))
                                .orElse(Json.none()))
                .put(
                        "record",
                        input.record().map(r -> RecordStudyJson.of(r.study())).orElse(Json.none()))
                .put("discharge", input.discharge().map(DischargeJson::of).orElse(Json.none()))
                .put("survey", input.survey().map(SurveyJson::of).orElse(Json.none()))
                .put("fit", input.fit().<Json>map(FitJson::of).orElse(Json.none()))
                .put("energize", input.energize().map(EnergizeJson::of).orElse(Json.none()))
                .build();
    }
}
