package org.varwright.report;

import org.varwright.discharge.DischargeJson;
import org.varwright.energize.EnergizeJson;
import org.varwright.fit.FitJson;
import org.varwright.job.JobJson;
import org.varwright.json.Json;
import org.varwright.survey.SurveyJson;

/** The report on a job as JSON: what stands, and each result with the fields of its command; null where there is none. */
public final class JobReportJson {
    private JobReportJson() {}

    public static Json of(JobReport report) {
        ReportInput results = report.results();
        return Json.object()
                .put("bank", report.bank().name())
                .put("date", report.date().toString())
                .put("zone", report.zone().getId())
                .put("job", JobJson.of(report.job()))
                .put("survey", results.survey().map(SurveyJson::of).orElse(Json.none()))
                .put("fit", results.fit().<Json>map(FitJson::of).orElse(Json.none()))
                .put("energize", results.energize().map(EnergizeJson::of).orElse(Json.none()))
                .put("discharge", results.discharge().map(DischargeJson::of).orElse(Json.none()))
                .put("notUsed", Json.strings(report.remarks()))
                .put(
                        "files",
                        Json.of(results.files().stream()
                                .map(f -> (Json) Json.object()
                                        .put("what", f.what())
                                        .put("name", f.name())
                                        .put("sha256", f.sha256())
                                        .build())
                                .toList()))
                .build();
    }
}
