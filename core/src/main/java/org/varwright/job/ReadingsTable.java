package org.varwright.job;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/** Readings typed one by one, written as a table with one row a reading. */
public final class ReadingsTable {
    private ReadingsTable() {}

    /** The table, as the survey reads it; empty where there are no readings. */
    public static Optional<String> of(List<Counted<Fact.ReadingTaken>> readings) {
        if (readings.isEmpty()) {
            return Optional.empty();
        }
        Set<String> columns = new LinkedHashSet<>();
        readings.forEach(r -> columns.addAll(r.fact().values().keySet()));
        StringBuilder table = new StringBuilder("position");
        columns.forEach(column -> table.append(',').append(cell(column)));
        table.append('\n');
        for (Counted<Fact.ReadingTaken> reading : readings) {
            Map<String, String> values = reading.fact().values();
            table.append(cell(reading.fact().position()));
            table.append(columns.stream()
                    .map(column -> "," + cell(values.getOrDefault(column, "")))
                    .collect(Collectors.joining()));
            table.append('\n');
        }
        return Optional.of(table.toString());
    }

    private static String cell(String text) {
        return '"' + text.replace("\"", "\"\"") + '"';
    }
}
