package org.varwright.isolation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;

/** Reads a {@link SavedState} from its JSON, naming everything that is wrong with it. */
public final class SavedStateReader {
    static final String FORMAT = "varwright-state/1";

    private final String file;
    private final List<Problem> problems = new ArrayList<>();

    private SavedStateReader(String file) {
        this.file = file;
    }

    /**
     * Reads a saved state.
     *
     * @param fileName for messages
     * @throws VarwrightException {@code JSON_SYNTAX}, {@code ISOLATION_STATE_FORMAT} or {@code ISOLATION_STATE_FIELD}
     */
    public static SavedState read(String fileName, String text) {
        SavedStateReader reader = new SavedStateReader(fileName);
        SavedState state = reader.read(reader.parsed(text));
        if (!reader.problems.isEmpty()) {
            throw new VarwrightException(reader.problems);
        }
        return state;
    }

    private Json parsed(String text) {
        try {
            return Json.parse(text);
        } catch (VarwrightException e) {
            throw new VarwrightException(e.problems().stream()
                    .map(p -> new Problem(
                            p.message(),
                            new Place(file, p.place().line(), p.place().column(), ""),
                            p.arguments()))
                    .toList());
        }
    }

    private SavedState read(Json json) {
        if (!(json instanceof Json.Obj all) || !all.get("format").equals(Json.of(FORMAT))) {
            throw new VarwrightException(Message.ISOLATION_STATE_FORMAT, new Place(file, 0, 0, "format"), FORMAT);
        }
        String bank = all.get("bank") instanceof Json.Str name ? name.value() : "";
        if (bank.isEmpty()) {
            wrong("bank", "the name of the bank");
        }
        return new SavedState(
                bank,
                map(all, "positions", "a position", SavedStateReader::text),
                map(all, "openDoors", "true or false", SavedStateReader::flag),
                map(all, "bolts", "true or false", SavedStateReader::flag),
                map(all, "exchanges", "true or false", SavedStateReader::flag),
                map(all, "charges", "true or false", SavedStateReader::flag),
                map(all, "grounds", "a count", SavedStateReader::count),
                map(all, "shorts", "a count", SavedStateReader::count));
    }

    private <V> Map<String, V> map(Json.Obj all, String member, String expected, Function<Json, Optional<V>> read) {
        Map<String, V> map = new LinkedHashMap<>();
        if (!(all.get(member) instanceof Json.Obj object)) {
            wrong(member, "an object with " + expected + " for each name");
            return map;
        }
        object.members()
                .forEach((name, value) -> read.apply(value)
                        .ifPresentOrElse(v -> map.put(name, v), () -> wrong(member + "." + name, expected)));
        return map;
    }

    private void wrong(String path, String expected) {
        problems.add(Problem.of(Message.ISOLATION_STATE_FIELD, new Place(file, 0, 0, path), path, expected));
    }

    private static Optional<String> text(Json json) {
        return json instanceof Json.Str text ? Optional.of(text.value()) : Optional.empty();
    }

    private static Optional<Boolean> flag(Json json) {
        return json instanceof Json.Bool flag ? Optional.of(flag.value()) : Optional.empty();
    }

    private static Optional<Integer> count(Json json) {
        return json instanceof Json.Num number
                        && number.value() >= 0
                        && number.value() <= 100_000
                        && number.value() == Math.rint(number.value())
                ? Optional.of((int) number.value())
                : Optional.empty();
    }
}
