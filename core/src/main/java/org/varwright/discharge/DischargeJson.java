package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;
import org.varwright.basis.BasisJson;
import org.varwright.json.Json;

/** {@link Discharge} as JSON. */
public final class DischargeJson {
    private DischargeJson() {}

    public static Json of(Discharge discharge) {
        List<Json> units = new ArrayList<>();
        for (int i = 0; i < discharge.stages().size(); i++) {
            units.add(unit(
                    discharge, discharge.stages().get(i), discharge.courses().get(i)));
        }
        return Json.object()
                .put("units", Json.of(units))
                .put("longestWaitSeconds", discharge.longestWaitSeconds())
                .put("checks", BasisJson.of(discharge.checks()))
                .put("cautions", Json.strings(discharge.cautions()))
                .put("unanswered", Json.strings(discharge.unanswered()))
                .build();
    }

    private static Json unit(Discharge discharge, StageDischarge stage, StageCourse course) {
        Json.Builder unit = Json.object()
                .put("type", stage.stage().unit().name())
                .put("stage", stage.stage().name())
                .put("capacitanceFarads", stage.capacitanceFarads())
                .put("capacitanceFrom", stage.capacitanceFrom())
                .put(
                        "resistanceOhms",
                        stage.resistance() instanceof Resistance.Known known ? Json.of(known.ohms()) : Json.none())
                .put("initialVolts", stage.opening().initialVolts())
                .put("secondsToSafe", orNull(stage.chosenSeconds()))
                .put("safeVolts", stage.chosen().volts())
                .put("waitSeconds", stage.waitSeconds())
                .put("energyJoules", stage.unitPeakJoules())
                .put("energyJoulesAfterWait", stage.unitEndJoules())
                .put("stageEnergyJoules", stage.stagePeakJoules())
                .put("stageEnergyJoulesAfterWait", stage.stageEndJoules())
                .put("decay", stage.isKnown() ? "known" : DischargeNotes.NOT_KNOWN)
                .put("voltsAfterWait", stage.endVolts())
                .put("betweenConductorsVoltsAfterWait", stage.betweenConductorsVolts())
                .put("secondsToSafeOneSectionShorted", orNull(stage.shortedSectionSeconds()))
                .put(
                        "standards",
                        Json.of(List.of(
                                standard(stage.chosen(), stage.chosenSeconds(), true),
                                standard(stage.other(), stage.otherSeconds(), false))))
                .put("recloseSeconds", orNull(stage.recloseSeconds()))
                .put("residualPercentAtReclose", orNull(stage.residualPercent()))
                .put("reclosePerPeak", orNull(stage.reclosePerPeak()))
                .put("hiddenVolts", orNull(stage.hiddenVolts()))
                .put("openResistorVolts", stage.openResistorVolts())
                .put("absorptionVolts", stage.absorptionVolts())
                .put("stick", stick(discharge, stage))
                .put("notes", Json.strings(DischargeNotes.of(discharge.bank(), stage)))
                .put("basis", BasisJson.of(stage.waitBasis()))
                .put("initialBasis", BasisJson.of(stage.opening().basis()));
        if (stage.resistance() instanceof Resistance.Known known) {
            unit.put("resistanceBasis", BasisJson.of(known.basis()));
        }
        CourseJson.add(unit, course);
        return unit.build();
    }

    private static Json stick(Discharge discharge, StageDischarge stage) {
        Stick.Needed needed = stage.stickNeeded();
        Json.Builder json = Json.object()
                .put("leastOhms", needed.leastOhms())
                .put("mostOhms", needed.mostOhms())
                .put("joules", needed.joules())
                .put("volts", needed.volts());
        discharge.stick().ifPresent(stick -> {
            Stick.Use use = stick.on(
                    stage.capacitanceFarads(),
                    stage.opening().initialVolts(),
                    stage.chosen().volts());
            json.put("ohms", stick.ohms())
                    .put("ratedJoules", orNull(stick.ratedJoules()))
                    .put("unitPeakAmperes", use.peakAmperes())
                    .put("unitTimeConstantSeconds", use.timeConstantSeconds())
                    .put("unitSecondsToSafe", use.secondsToSafe())
                    .put("unitResistorJoules", use.resistorJoules());
            stick.unitsInSuccession(stage.unitPeakJoules()).ifPresent(units -> json.put("unitsInSuccession", units));
        });
        return json.build();
    }

    private static Json standard(DischargeRule rule, OptionalDouble seconds, boolean chosen) {
        return Json.object()
                .put("standard", rule.standard().name())
                .put("chosen", chosen)
                .put("volts", rule.volts())
                .put("seconds", rule.seconds())
                .put("computedSeconds", orNull(seconds))
                .put("source", rule.source().print())
                .build();
    }

    private static Json orNull(OptionalDouble value) {
        return value.isPresent() ? Json.of(value.getAsDouble()) : Json.none();
    }
}
