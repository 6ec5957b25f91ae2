package org.varwright.switching;

import java.util.List;
import org.varwright.basis.BasisJson;
import org.varwright.json.Json;

/** {@link Inrush} as JSON. */
public final class InrushJson {
    private InrushJson() {}

    public static Json of(Inrush inrush) {
        return Json.object()
                .put("lineVolts", inrush.lineVolts())
                .put(
                        "cases",
                        Json.of(inrush.cases().stream().map(InrushJson::of).toList()))
                .put("opening", inrush.opened().map(InrushJson::of).orElse(Json.none()))
                .put("outrush", inrush.outrush().map(InrushJson::of).orElse(Json.none()))
                .put(
                        "remedies",
                        Json.of(inrush.remedies().stream().map(InrushJson::of).toList()))
                .put("checks", BasisJson.of(inrush.checks()))
                .put(
                        "missing",
                        Json.of(inrush.gaps().stream().map(InrushJson::of).toList()))
                .put("notes", Json.strings(InrushNotes.of(inrush)))
                .build();
    }

    private static Json of(InrushCase c) {
        Json.Builder json = Json.object().put("stage", c.stage()).put("alreadyOn", Json.strings(c.alreadyOn()));
        if (c.main().isPresent()) {
            Closing main = c.main().get();
            json.put("peakAmperes", main.peakAmperes())
                    .put("hertz", main.hertz())
                    .put("i2t", main.ampereSquaredSeconds())
                    .put("method", "time domain");
        } else if (c.formula().isPresent()) {
            json.put("peakAmperes", c.formula().get().peakAmperes())
                    .put("hertz", c.formula().get().hertz())
                    .put("i2t", Json.none())
                    .put("method", "closed form");
        } else {
            json.put("peakAmperes", Json.none())
                    .put("hertz", Json.none())
                    .put("i2t", Json.none())
                    .put("method", "not answered");
        }
        json.put("closedForm", c.formula().map(InrushJson::of).orElse(Json.none()))
                .put("closedFormOtherEnd", c.otherEnd().map(InrushJson::of).orElse(Json.none()));
        switch (c.simulation()) {
            case Simulation.Worst w ->
                json.put("together", of(w.together()))
                        .put("togetherVoltage", of(w.togetherVolts()))
                        .put("apart", of(w.apart()))
                        .put("apartVoltage", of(w.apartVolts()));
            case Simulation.Given g -> json.put("given", of(g.closing()));
            case Simulation.NotPossible n -> json.put("notSimulated", n.why());
        }
        return json.build();
    }

    private static Json of(ClosedForm f) {
        return Json.object()
                .put("peakAmperes", f.peakAmperes())
                .put("hertz", f.hertz())
                .put("farads", f.farads())
                .put("henries", f.henries())
                .put("basis", BasisJson.of(f.basis()))
                .build();
    }

    private static Json of(Closing c) {
        Json.Builder stages = Json.object();
        c.stages()
                .forEach((name, s) -> stages.put(
                        name,
                        Json.object()
                                .put("peakAmperes", s.peakAmperes())
                                .put("i2t", s.ampereSquaredSeconds())
                                .put("unitI2t", s.unitAmpereSquaredSeconds())
                                .put("legPerPeak", s.legPerPeak())
                                .build()));
        return Json.object()
                .put("busHenriesPerMetre", c.busHenriesPerMetre())
                .put("closingDegrees", numbers(c.degrees()))
                .put("peakAmperes", c.peakAmperes())
                .put("pole", c.pole())
                .put("hertz", c.hertz())
                .put("i2t", c.ampereSquaredSeconds())
                .put("legPerPeak", c.legPerPeak())
                .put("leg", c.leg())
                .put("legVolts", c.legVolts())
                .put("busPerPeak", c.busPerPeak())
                .put("busDip", c.busDip())
                .put("stages", stages.build())
                .build();
    }

    private static Json of(Opened o) {
        return Json.object()
                .put("stage", o.stage())
                .put("alreadyOn", Json.strings(o.alreadyOn()))
                .put(
                        "steps",
                        Json.of(o.steps().stream()
                                .map(s -> (Json) Json.object()
                                        .put("seconds", s.seconds())
                                        .put("pole", s.pole())
                                        .put("does", s.conductsAgain() ? "restrikes" : "clears")
                                        .put("acrossPerPeak", s.acrossPerPeak())
                                        .build())
                                .toList()))
                .put(
                        "poles",
                        Json.of(o.poles().stream()
                                .map(p -> (Json) Json.object()
                                        .put("pole", p.pole())
                                        .put("recoveryPerPeak", p.recoveryPerPeak())
                                        .build())
                                .toList()))
                .put(
                        "legs",
                        Json.of(o.legs().stream()
                                .map(l -> (Json) Json.object()
                                        .put("leg", l.leg())
                                        .put("highestPerPeak", l.highestPerPeak())
                                        .put("leftPerPeak", l.leftPerPeak())
                                        .build())
                                .toList()))
                .put("peakAmperes", o.peakAmperes())
                .put("hertz", o.hertz())
                .put("busPerPeak", o.busPerPeak())
                .build();
    }

    private static Json of(Outrush o) {
        return Json.object()
                .put(
                        "stages",
                        Json.of(o.stages().stream()
                                .map(s -> (Json) Json.object()
                                        .put("stage", s.stage())
                                        .put("peakAmperes", s.formula().peakAmperes())
                                        .put("hertz", s.formula().hertz())
                                        .put("ampereHertz", s.formula().product())
                                        .build())
                                .toList()))
                .put("without", Json.strings(o.without()))
                .put("ampereHertz", o.product())
                .put(
                        "simulatedPeakAmperes",
                        o.simulatedPeakAmperes().map(p -> Json.of(p)).orElse(Json.none()))
                .put("hertz", o.hertz())
                .build();
    }

    private static Json of(Remedy r) {
        return Json.object()
                .put("stage", r.stage())
                .put("closing", r.title())
                .put("addedHenries", r.addedHenries())
                .put("totalHenries", r.totalHenries())
                .put("peakAmperes", r.peakAmperes())
                .put("hertz", r.hertz())
                .put("basis", BasisJson.of(r.basis()))
                .build();
    }

    private static Json of(Gap gap) {
        return Json.object()
                .put("of", Json.strings(gap.subjects()))
                .put("missing", gap.missing())
                .put("effect", gap.effect())
                .build();
    }

    private static Json numbers(List<Double> values) {
        return Json.of(values.stream().map(v -> Json.of(v)).toList());
    }
}
