package org.varwright.discharge;

import java.util.List;
import java.util.OptionalDouble;
import org.varwright.json.Json;

/** {@link StageCourse} as members of the JSON for one stage. */
final class CourseJson {
    private CourseJson() {}

    static void add(Json.Builder unit, StageCourse course) {
        unit.put(
                        "openings",
                        Json.of(course.openings().stream()
                                .map(CourseJson::opening)
                                .toList()))
                .put("worstFirstPole", course.worst().firstPole())
                .put("oneUnitOutVolts", orNull(course.oneOutVolts()))
                .put(
                        "units",
                        Json.of(course.units().stream().map(CourseJson::unit).toList()))
                .put("string", course.string().map(CourseJson::strings).orElse(Json.none()))
                .put("reclosing", course.reclosing().map(CourseJson::reclosing).orElse(Json.none()))
                .put("path", course.path().map(CourseJson::path).orElse(Json.none()))
                .put("after", course.after().map(CourseJson::residual).orElse(Json.none()))
                .put(
                        "timeConstants",
                        course.timeConstants().map(CourseJson::residual).orElse(Json.none()));
    }

    private static Json strings(StringCase string) {
        return Json.object()
                .put("oneOpen", string(string.oneOpen()))
                .put("unlike", string(string.unlike()))
                .build();
    }

    private static Json opening(PoleOpening opening) {
        List<Json> clearings = opening.clearings().stream()
                .<Json>map(c -> Json.object()
                        .put("poles", Json.strings(c.poles()))
                        .put("seconds", c.seconds())
                        .build())
                .toList();
        List<Json> legs = opening.legs().stream()
                .<Json>map(l -> Json.object()
                        .put("leg", l.leg())
                        .put("volts", l.volts())
                        .put("perPeak", l.perPeak())
                        .build())
                .toList();
        List<Json> potentials = opening.potentials().stream()
                .<Json>map(p -> Json.object()
                        .put("conductor", p.conductor())
                        .put("volts", p.volts())
                        .put("perPeak", p.perPeak())
                        .build())
                .toList();
        return Json.object()
                .put("firstPole", opening.firstPole())
                .put("clearings", Json.of(clearings))
                .put("legs", Json.of(legs))
                .put("potentials", Json.of(potentials))
                .build();
    }

    private static Json unit(UnitDecay unit) {
        return Json.object()
                .put("position", unit.at().name())
                .put("capacitanceFarads", unit.farads())
                .put("resistanceOhms", orNull(unit.ohms()))
                .put("initialVolts", unit.initialVolts())
                .put("secondsToSafe", orNull(unit.secondsToSafe()))
                .put("voltsAfterWait", unit.endVolts())
                .put("energyJoulesAfterWait", unit.endJoules())
                .build();
    }

    private static Json string(StringCase.Case string) {
        return Json.object()
                .put("position", string.at().name())
                .put("unitsInGroup", string.unitsInGroup())
                .put("slowVolts", string.slowVolts())
                .put("mateVolts", string.mateVolts())
                .put("endsVolts", string.endsVolts())
                .put("joinedSlowVolts", string.joinedSlowVolts())
                .put("joinedMateVolts", string.joinedMateVolts())
                .put("worstJoinedVolts", string.worstJoinedVolts())
                .put("joinedSecondsToSafe", orNull(string.joinedSecondsToSafe()))
                .build();
    }

    private static Json reclosing(Reclosing reclosing) {
        List<Json> rows = reclosing.rows().stream()
                .<Json>map(r -> Json.object()
                        .put("seconds", r.seconds())
                        .put("volts", r.volts())
                        .put("perPeak", r.perPeak())
                        .put("voltagePerPeak", r.voltagePerPeak())
                        .put("inrushPerDischarged", r.inrushPerDischarged())
                        .build())
                .toList();
        return Json.object()
                .put("rows", Json.of(rows))
                .put("shortestSeconds", reclosing.shortestSeconds())
                .put("ratedSeconds", reclosing.ratedSeconds())
                .put("delaySeconds", orNull(reclosing.delaySeconds()))
                .build();
    }

    private static Json path(WindingDischarge path) {
        return Json.object()
                .put("ohms", path.ohms())
                .put("henries", orNull(path.henries()))
                .put("farads", path.farads())
                .put("initialVolts", path.initialVolts())
                .put(
                        "behaviour",
                        switch (path.behaviour()) {
                            case OSCILLATING -> "oscillating";
                            case CREEPING -> "creeping";
                            case NOT_KNOWN -> "not known";
                        })
                .put("peakAmperes", path.peakAmperes())
                .put("secondsToSafe", orNull(path.secondsToSafe()))
                .put("leastSeconds", path.leastSeconds())
                .put("oscillationHertz", orNull(path.oscillationHertz()))
                .put("windingJoules", path.windingJoules())
                .put("leftVolts", path.leftVolts())
                .build();
    }

    private static Json residual(Residual left) {
        return Json.object()
                .put("seconds", left.seconds())
                .put("slowest", left.slowest().name())
                .put("volts", left.volts())
                .put("joules", left.joules())
                .put("betweenConductorsVolts", left.betweenConductorsVolts())
                .put("safeVolts", left.safeVolts())
                .put("missingSeconds", left.missingSeconds())
                .build();
    }

    private static Json orNull(OptionalDouble value) {
        return value.isPresent() ? Json.of(value.getAsDouble()) : Json.none();
    }
}
