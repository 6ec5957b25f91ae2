package org.varwright.job;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** The members of a JSON object of an event, each with its place for messages. */
final class Fields {
    /** Largest whole number that every reader of JSON keeps exactly: 2⁵³ − 1. */
    private static final double LARGEST = 9_007_199_254_740_991.0;

    private final String file;
    private final int line;
    private final String path;
    private final Json.Obj members;

    Fields(String file, int line, String path, Json json) {
        this.file = file;
        this.line = line;
        this.path = path;
        if (!(json instanceof Json.Obj object)) {
            throw new VarwrightException(Message.JOB_FIELD, new Place(file, line, 0, path), "an object");
        }
        members = object;
    }

    Fields object(String name) {
        return new Fields(file, line, at(name), members.get(name));
    }

    Json json(String name) {
        return members.get(name);
    }

    String text(String name) {
        return optionalText(name).orElseThrow(() -> wrong(name, "a text"));
    }

    /** A text with something in it. */
    String words(String name) {
        String text = text(name);
        if (text.isBlank()) {
            throw wrong(name, "a text with something in it");
        }
        return text.strip();
    }

    /** A text with something in it; empty where the member is missing or blank. */
    Optional<String> optionalWords(String name) {
        return optionalText(name).map(String::strip).filter(t -> !t.isEmpty());
    }

    private Optional<String> optionalText(String name) {
        Json value = members.get(name);
        if (value instanceof Json.Null) {
            return Optional.empty();
        }
        if (value instanceof Json.Str text) {
            return Optional.of(text.value());
        }
        throw wrong(name, "a text");
    }

    int count(String name, int least) {
        long value = whole(name);
        if (value < least || value > Integer.MAX_VALUE) {
            throw wrong(name, "a whole number from " + least + " on");
        }
        return (int) value;
    }

    /** A count from 0 on; empty where the member is missing. */
    OptionalInt optionalCount(String name) {
        return members.get(name) instanceof Json.Null ? OptionalInt.empty() : OptionalInt.of(count(name, 0));
    }

    long whole(String name) {
        if (members.get(name) instanceof Json.Num number
                && number.value() == Math.rint(number.value())
                && Math.abs(number.value()) <= LARGEST) {
            return (long) number.value();
        }
        throw wrong(name, "a whole number");
    }

    /** The texts of an array; none where the member is missing. */
    List<String> texts(String name) {
        Json value = members.get(name);
        if (value instanceof Json.Null) {
            return List.of();
        }
        if (!(value instanceof Json.Arr array)) {
            throw wrong(name, "an array of texts");
        }
        List<String> texts = new ArrayList<>();
        for (Json item : array.items()) {
            if (!(item instanceof Json.Str text)) {
                throw wrong(name, "an array of texts");
            }
            texts.add(text.value());
        }
        return texts;
    }

    /** Names to texts; none where the member is missing. */
    Map<String, String> textByName(String name) {
        Json value = members.get(name);
        Map<String, String> map = new LinkedHashMap<>();
        if (value instanceof Json.Null) {
            return map;
        }
        if (!(value instanceof Json.Obj object)) {
            throw wrong(name, "an object of texts");
        }
        object.members().forEach((key, item) -> {
            if (!(item instanceof Json.Str text)) {
                throw wrong(name + "." + key, "a text");
            }
            map.put(key, text.value());
        });
        return map;
    }

    /** Names to counts from 0 on; none where the member is missing. */
    Map<String, Integer> countByName(String name) {
        Map<String, Integer> map = new LinkedHashMap<>();
        if (members.get(name) instanceof Json.Null) {
            return map;
        }
        Fields counts = object(name);
        counts.members.members().keySet().forEach(key -> map.put(key, counts.count(key, 0)));
        return map;
    }

    VarwrightException wrong(String name, String wanted) {
        return new VarwrightException(Message.JOB_FIELD, new Place(file, line, 0, at(name)), wanted);
    }

    private String at(String name) {
        return path.isEmpty() ? name : path + "." + name;
    }
}
