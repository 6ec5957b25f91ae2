package org.varwright.bankfile;

import static org.varwright.bankfile.JsonValues.list;
import static org.varwright.bankfile.JsonValues.number;
import static org.varwright.bankfile.JsonValues.text;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.varwright.bank.Bank;
import org.varwright.bank.DischargePath;
import org.varwright.bank.FuseType;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.json.Json;

/** A stage as JSON: legs, their groups and strings, and in each the positions with what stands there. */
record StageJson(Bank bank, Stage stage) {
    Json write() {
        return Json.object()
                .put("name", stage.name())
                .put("label", text(stage.label()))
                .put("note", text(stage.note()))
                .put("connection", stage.connection().code())
                .put("connectionInWords", bank.words().connection(stage.connection()))
                .put("switch", text(stage.switchName()))
                .put("unit", stage.unit().name())
                .put("units", stage.positions().size())
                .put("ratedVars", stage.ratedVars())
                .put("fuse", text(stage.fuse().map(FuseType::name)))
                .put("lineFuse", text(stage.lineFuse().map(FuseType::name)))
                .put("reactor", stage.reactor().map(StageJson::reactor).orElse(Json.none()))
                .put("busMetres", number(stage.busMetres()))
                .put("strayHenries", number(stage.strayHenries()))
                .put("dischargePath", stage.dischargePath().map(StageJson::path).orElse(Json.none()))
                .put("threePhaseUnits", stage.hasThreePhaseUnits())
                .put("legs", list(stage.hasThreePhaseUnits() ? List.of("") : stage.legs(), this::leg))
                .build();
    }

    /** A three-phase unit is not in one leg: its leg is the empty text. */
    private Json leg(String leg) {
        LegLayout layout = stage.layoutOf(leg);
        List<Json> groups = new ArrayList<>();
        for (int s = 1; s <= layout.strings(); s++) {
            for (int g = 1; g <= layout.groups(); g++) {
                groups.add(group(leg, s, g));
            }
        }
        return Json.object()
                .put("name", leg)
                .put("strings", layout.strings())
                .put("groupsInSeries", layout.groups())
                .put("unitsInParallel", layout.units())
                .put("groups", Json.of(groups))
                .build();
    }

    private Json group(String leg, int string, int group) {
        Stream<UnitPosition> here = stage.positions().stream()
                .filter(p -> p.leg().equals(leg) && p.string() == string && p.group() == group);
        return Json.object()
                .put("string", string)
                .put("group", group)
                .put("positions", list(here.toList(), this::position))
                .build();
    }

    private Json position(UnitPosition p) {
        Optional<KnownUnit> known = bank.unitAt(p);
        return Json.object()
                .put("name", p.name())
                .put("unit", p.unit())
                .put("serial", text(known.flatMap(KnownUnit::serial)))
                .put(
                        "capacitanceFarads",
                        number(known.map(KnownUnit::capacitanceFarads).orElse(OptionalDouble.empty())))
                .put("made", number(known.map(KnownUnit::made).orElse(OptionalInt.empty())))
                .put("label", text(known.flatMap(KnownUnit::label)))
                .put("note", text(known.flatMap(KnownUnit::note)))
                .build();
    }

    private static Json reactor(Reactor r) {
        return Json.object()
                .put("henries", r.henries())
                .put("position", Words.of(Words.REACTOR_POSITIONS, r.position()))
                .put("purpose", Words.of(Words.REACTOR_PURPOSES, r.purpose()))
                .put("resistanceOhms", number(r.resistanceOhms()))
                .put("ratedAmperes", number(r.ratedAmperes()))
                .put("peakAmperes", number(r.peakAmperes()))
                .build();
    }

    private static Json path(DischargePath p) {
        return Json.object()
                .put("kind", Words.of(Words.PATH_KINDS, p.kind()))
                .put("between", Words.of(Words.PATH_PLACES, p.between()))
                .put("resistanceOhms", p.resistanceOhms())
                .put("henries", number(p.henries()))
                .build();
    }
}
