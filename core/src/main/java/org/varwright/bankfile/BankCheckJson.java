package org.varwright.bankfile;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Isolation;
import org.varwright.basis.Basis;
import org.varwright.json.Json;
import org.varwright.problem.Problem;

/** The answer of {@code check} as JSON. */
public final class BankCheckJson {
    private BankCheckJson() {}

    public static Json of(BankCheck check) {
        return Json.object()
                .put("ok", check.ok())
                .put("file", check.file())
                .put("errors", problems(check.errors()))
                .put("warnings", problems(check.warnings()))
                .put("summary", check.bank().map(bank -> summary(check, bank)).orElse(Json.none()))
                .build();
    }

    private static Json problems(List<Problem> problems) {
        return Json.of(problems.stream()
                .map(p -> (Json) Json.object()
                        .put("line", p.place().line())
                        .put("column", p.place().column())
                        .put("path", p.place().path())
                        .put("message", p.text())
                        .put("code", p.message().name())
                        .build())
                .toList());
    }

    private static Json summary(BankCheck check, Bank bank) {
        var system = bank.system();
        return Json.object()
                .put("bank", bank.name())
                .put("site", text(bank.site()))
                .put("standard", bank.standard().name())
                .put(
                        "system",
                        Json.object()
                                .put("volts", system.nominalVolts())
                                .put("maximumVolts", number(system.maximumVolts()))
                                .put("hertz", system.frequencyHertz())
                                .put("shortCircuitVoltAmperes", number(system.shortCircuitVoltAmperes()))
                                .put("xOverR", number(system.xOverR()))
                                .put("grounding", Words.of(Words.GROUNDINGS, system.grounding()))
                                .build())
                .put("ratedKvar", check.ratedVars() / 1e3)
                .put("kvarAtNominal", check.varsAtNominal() / 1e3)
                .put("units", bank.positions().size())
                .put("spares", bank.spares().size())
                .put("isolation", bank.isolation().map(BankCheckJson::isolation).orElse(Json.none()))
                .put(
                        "stages",
                        Json.of(check.stages().stream()
                                .map(BankCheckJson::stage)
                                .toList()))
                .build();
    }

    private static Json isolation(Isolation isolation) {
        return Json.object()
                .put("sources", isolation.sources().size())
                .put("devices", isolation.devices().size())
                .put("compartments", isolation.compartments().size())
                .put("locks", isolation.locks().size())
                .put("keys", isolation.keyNames().size())
                .put("exchanges", isolation.exchanges().size())
                .put("interlocks", isolation.interlocks().size())
                .put("delays", isolation.delays().size())
                .build();
    }

    private static Json stage(StageSummary stage) {
        return Json.object()
                .put("name", stage.name())
                .put("connection", stage.connection().code())
                .put("unit", stage.stage().unit().name())
                .put("units", stage.units())
                .put("ratedKvar", stage.ratedVars() / 1e3)
                .put("kvarAtNominal", stage.varsAtNominal() / 1e3)
                .put("capacitanceFaradsPerLeg", stage.capacitanceFaradsPerLeg())
                .put("legCurrentAmperes", stage.legAmperes())
                .put("unitVolts", stage.unitVolts())
                .put("unitVoltsPerRated", stage.unitVoltsPerRated())
                .put(
                        "basis",
                        Json.of(stage.basis().stream().map(BankCheckJson::basis).toList()))
                .build();
    }

    private static Json basis(Basis basis) {
        return Json.object()
                .put("id", basis.id())
                .put("formula", basis.formula())
                .put(
                        "terms",
                        Json.of(basis.terms().stream()
                                .map(t -> (Json) Json.object()
                                        .put("symbol", t.symbol())
                                        .put("meaning", t.meaning())
                                        .put("value", t.value())
                                        .put("unit", t.unit())
                                        .build())
                                .toList()))
                .put("source", basis.source().print())
                .build();
    }

    private static Json text(Optional<String> text) {
        return text.map(Json::of).orElse(Json.none());
    }

    private static Json number(OptionalDouble number) {
        return number.isPresent() ? Json.of(number.getAsDouble()) : Json.none();
    }
}
