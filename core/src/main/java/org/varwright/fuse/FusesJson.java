package org.varwright.fuse;

import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Stage;
import org.varwright.basis.BasisJson;
import org.varwright.json.Json;

/** {@link Fuses} as JSON. */
public final class FusesJson {
    private FusesJson() {}

    public static Json of(Fuses fuses) {
        return Json.object()
                .put(
                        "fuses",
                        Json.of(fuses.studies().stream().map(FusesJson::study).toList()))
                .put(
                        "unfused",
                        Json.strings(fuses.unfused().stream().map(Stage::name).toList()))
                .put("checks", BasisJson.of(fuses.checks()))
                .put(
                        "notAnswered",
                        Json.of(fuses.notAnswered().stream()
                                .map(u -> (Json) Json.object()
                                        .put("missing", u.missing())
                                        .put("effect", u.effect())
                                        .build())
                                .toList()))
                .put("cautions", Json.strings(FuseNotes.cautions(fuses)))
                .build();
    }

    private static Json study(FuseStudy study) {
        return Json.object()
                .put("stage", study.stage().name())
                .put("place", study.place() == FusePlace.UNIT ? "unit" : "line")
                .put("type", study.fuse().name())
                .put("link", text(study.link().map(Link::name)))
                .put("carriesAmperes", orNull(study.carriesAmperes()))
                .put("neededAmperes", orNull(study.neededAmperes()))
                .put("ruleMultiple", study.rule().least())
                .put(
                        "serviceAmperes",
                        study.service().map(s -> Json.of(s.ruleAmperes())).orElse(Json.none()))
                .put(
                        "worstServiceAmperes",
                        study.service().map(s -> Json.of(s.worstAmperes())).orElse(Json.none()))
                .put(
                        "harmonicFactor",
                        study.service().map(s -> Json.of(s.harmonicFactor())).orElse(Json.none()))
                .put("unitShorted", fault(study))
                .put("inrushI2t", orNull(study.inrushAmpereSquaredSeconds()))
                .put("parallelEnergy", study.energy().map(FusesJson::energy).orElse(Json.none()))
                .put(
                        "proposals",
                        Json.of(study.proposals().stream()
                                .map(FusesJson::proposal)
                                .toList()))
                .build();
    }

    private static Json fault(FuseStudy study) {
        return switch (study.fault()) {
            case FullShort.Result.NotKnown(String missing) ->
                Json.object()
                        .put("amperes", Json.none())
                        .put("missing", missing)
                        .build();
            case FullShort.Result.Found(FullShort fault) -> {
                double through = study.faultAmperes().orElseThrow();
                yield Json.object()
                        .put("at", fault.at().name())
                        .put("amperes", through)
                        .put("unitAmperes", fault.unitAmperes())
                        .put("lineAmperes", fault.lineAmperes())
                        .put("earliestMelting", time(study.curve().earliest(through)))
                        .put("melting", time(study.curve().melting(through)))
                        .put("latestMelting", time(study.curve().latestMelting(through)))
                        .put("clearing", time(study.curve().clearing(through)))
                        .put("highestUnit", fault.highestUnit().name())
                        .put("highestUnitVoltagePerRated", fault.highestPerRated())
                        .put(
                                "voltsAcrossOpenFuse",
                                fault.openVolts().map(Json::of).orElse(Json.none()))
                        .build();
            }
        };
    }

    private static Json energy(ParallelEnergy energy) {
        Outrush outrush = energy.outrush();
        return Json.object()
                .put("unitsInLeg", energy.units().ownLeg())
                .put("unitsInStage", energy.units().ownStage())
                .put("unitsInBank", energy.units().wholeBank())
                .put("unitJoules", energy.unitJoules())
                .put("joules", energy.groupJoules(1.0))
                .put("joulesAt110Percent", energy.groupJoules(ParallelEnergy.HIGH))
                .put("joulesThroughFuseAt110Percent", energy.neighbourJoules(ParallelEnergy.HIGH))
                .put("outrushPeakAmperes", orNull(outrush.peakAmperes()))
                .put("outrushHertz", orNull(outrush.hertz()))
                .put("outrushI2t", orNull(outrush.failedAmpereSquaredSeconds()))
                .put("outrushNeighbourI2t", orNull(outrush.neighbourAmpereSquaredSeconds()))
                .build();
    }

    private static Json proposal(Proposal proposal) {
        return Json.object()
                .put("type", proposal.type().name())
                .put("link", text(proposal.link().map(Link::name)))
                .put("recommended", proposal.recommended())
                .put("verdict", proposal.verdict().code())
                .put("why", proposal.why())
                .put("left", Json.strings(proposal.left()))
                .put("notSmaller", text(proposal.notSmaller()))
                .put("notLarger", text(proposal.notLarger()))
                .put("basis", BasisJson.of(proposal.basis()))
                .build();
    }

    private static Json time(FuseTime time) {
        return Json.object()
                .put("seconds", time.isKnown() ? Json.of(time.seconds()) : Json.none())
                .put("bound", time.bound().code())
                .build();
    }

    private static Json text(Optional<String> text) {
        return text.map(Json::of).orElse(Json.none());
    }

    private static Json orNull(OptionalDouble value) {
        return value.isPresent() ? Json.of(value.getAsDouble()) : Json.none();
    }
}
