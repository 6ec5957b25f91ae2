package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.json.Json;

/** Every value of a table as it was written and as it was understood. */
final class ReadingsJson {
    private ReadingsJson() {}

    static Json of(Readings readings) {
        List<Json> values = new ArrayList<>();
        for (ReadingRow row : readings.rows()) {
            String at = row.position().name();
            add(values, row.row(), at, "capacitance", row.capacitance(), row.terminals());
            add(values, row.row(), at, "resistance", row.resistance(), Optional.empty());
            add(values, row.row(), at, "insulation", row.insulation(), Optional.empty());
            add(values, row.row(), at, "fuse", row.fuse(), Optional.empty());
            add(values, row.row(), at, "temperature", row.temperature(), Optional.empty());
            add(values, row.row(), at, "case temperature", row.caseTemperature(), Optional.empty());
        }
        for (SpotRow row : readings.spots()) {
            add(
                    values,
                    row.row(),
                    row.spot().name(),
                    row.kind().words(),
                    Optional.of(row.measured()),
                    Optional.empty());
        }
        return Json.of(values);
    }

    private static void add(
            List<Json> values,
            int row,
            String at,
            String what,
            Optional<Measured> measured,
            Optional<Terminals> terminals) {
        measured.ifPresent(value -> values.add(Json.object()
                .put("row", row)
                .put("at", at)
                .put("what", what)
                .put("terminals", terminals.map(t -> Json.of(t.words())).orElse(Json.none()))
                .put("raw", value.raw())
                .put("value", value.value().isPresent() ? Json.of(value.value().getAsDouble()) : Json.none())
                .build()));
    }
}
