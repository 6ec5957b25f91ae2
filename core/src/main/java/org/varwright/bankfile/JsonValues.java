package org.varwright.bankfile;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import org.varwright.json.Json;

/** What a file says or leaves out, as JSON: left out is null. */
final class JsonValues {
    private JsonValues() {}

    static Json text(Optional<String> text) {
        return text.map(Json::of).orElse(Json.none());
    }

    static Json number(OptionalDouble number) {
        return number.isPresent() ? Json.of(number.getAsDouble()) : Json.none();
    }

    static Json number(OptionalInt number) {
        return number.isPresent() ? Json.of(number.getAsInt()) : Json.none();
    }

    static <E> Json word(Map<String, E> words, Optional<E> value) {
        return text(value.map(v -> Words.of(words, v)));
    }

    static <T> Json list(List<T> items, Function<T, Json> write) {
        return Json.of(items.stream().map(write).toList());
    }

    static Json list() {
        return Json.of(List.of());
    }
}
