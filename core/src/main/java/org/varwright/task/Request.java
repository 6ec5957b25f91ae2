package org.varwright.task;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.json.Json;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** The members of a request, by the kind that a task needs. */
final class Request {
    private final Json.Obj members;

    Request(Json json) {
        if (!(json instanceof Json.Obj object)) {
            throw wrong("request", "an object");
        }
        members = object;
    }

    boolean has(String name) {
        return !(members.get(name) instanceof Json.Null);
    }

    String text(String name) {
        return optionalText(name).orElseThrow(() -> wrong(name, "a text"));
    }

    Optional<String> optionalText(String name) {
        return switch (members.get(name)) {
            case Json.Str text -> Optional.of(text.value());
            case Json.Null none -> Optional.empty();
            case Json.Num n -> throw wrong(name, "a text");
            case Json.Bool b -> throw wrong(name, "a text");
            case Json.Arr a -> throw wrong(name, "a text");
            case Json.Obj o -> throw wrong(name, "a text");
        };
    }

    double number(String name) {
        return optionalNumber(name).orElseThrow(() -> wrong(name, "a number"));
    }

    OptionalDouble optionalNumber(String name) {
        Json value = members.get(name);
        if (value instanceof Json.Null) {
            return OptionalDouble.empty();
        }
        if (value instanceof Json.Num number) {
            return OptionalDouble.of(number.value());
        }
        throw wrong(name, "a number");
    }

    List<String> texts(String name) {
        List<String> texts = new ArrayList<>();
        if (!(members.get(name) instanceof Json.Arr array)) {
            throw wrong(name, "an array of texts");
        }
        for (Json item : array.items()) {
            if (!(item instanceof Json.Str text)) {
                throw wrong(name, "an array of texts");
            }
            texts.add(text.value());
        }
        return texts;
    }

    /** The texts, or none where the member is missing. */
    List<String> optionalTexts(String name) {
        return members.get(name) instanceof Json.Null ? List.of() : texts(name);
    }

    /** Names to numbers; none where the member is missing. */
    Map<String, Double> optionalNumbers(String name) {
        Map<String, Double> numbers = new LinkedHashMap<>();
        if (members.get(name) instanceof Json.Null) {
            return numbers;
        }
        if (!(members.get(name) instanceof Json.Obj object)) {
            throw wrong(name, "an object of numbers");
        }
        object.members().forEach((key, item) -> {
            if (!(item instanceof Json.Num number)) {
                throw wrong(name + "." + key, "a number");
            }
            numbers.put(key, number.value());
        });
        return numbers;
    }

    Json object(String name) {
        if (members.get(name) instanceof Json.Obj object) {
            return object;
        }
        throw wrong(name, "an object");
    }

    /** True or false; false where the member is missing. */
    boolean flag(String name) {
        Json value = members.get(name);
        if (value instanceof Json.Null) {
            return false;
        }
        if (value instanceof Json.Bool flag) {
            return flag.value();
        }
        throw wrong(name, "true or false");
    }

    private static VarwrightException wrong(String name, String wanted) {
        return new VarwrightException(Message.REQUEST_MEMBER, new Place("", 0, 0, name), wanted);
    }
}
