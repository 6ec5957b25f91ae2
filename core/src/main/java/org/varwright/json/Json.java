package org.varwright.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A JSON value. Objects keep the order in which members were put, so that the same result always gives the same text. */
public sealed interface Json {
    /** JSON null. */
    record Null() implements Json {
        static final Null INSTANCE = new Null();
    }

    /** True or false. */
    record Bool(boolean value) implements Json {}

    /** A finite number. */
    record Num(double value) implements Json {
        public Num {
            if (!Double.isFinite(value)) {
                throw new IllegalArgumentException("JSON has no " + value);
            }
        }
    }

    /** A string. */
    record Str(String value) implements Json {}

    /** An array. */
    record Arr(List<Json> items) implements Json {
        public Arr {
            items = List.copyOf(items);
        }
    }

    /** An object; {@code members} keeps its order. */
    record Obj(Map<String, Json> members) implements Json {
        /** The member, or JSON null where there is none. */
        public Json get(String name) {
            return members.getOrDefault(name, Null.INSTANCE);
        }
    }

    /** JSON null. */
    static Json none() {
        return Null.INSTANCE;
    }

    static Json of(String value) {
        return new Str(value);
    }

    static Json of(boolean value) {
        return new Bool(value);
    }

    /** A number; NaN and infinity become null, because JSON has no word for them. */
    static Json of(double value) {
        return Double.isFinite(value) ? new Num(value) : none();
    }

    static Json of(List<? extends Json> items) {
        return new Arr(new ArrayList<>(items));
    }

    static Json strings(Iterable<String> items) {
        List<Json> list = new ArrayList<>();
        items.forEach(item -> list.add(of(item)));
        return new Arr(list);
    }

    static Builder object() {
        return new Builder();
    }

    /** Puts an object together, member by member. */
    final class Builder {
        private final Map<String, Json> members = new LinkedHashMap<>();

        public Builder put(String name, Json value) {
            members.put(name, value);
            return this;
        }

        public Builder put(String name, String value) {
            return put(name, of(value));
        }

        public Builder put(String name, double value) {
            return put(name, of(value));
        }

        public Builder put(String name, boolean value) {
            return put(name, of(value));
        }

        public Obj build() {
            return new Obj(new LinkedHashMap<>(members));
        }
    }

    /** Two-space indented text, ended by no newline. */
    default String print() {
        return JsonWriter.write(this);
    }

    /** One line of text without blanks between its parts, ended by no newline. */
    default String printLine() {
        return JsonWriter.writeLine(this);
    }

    /**
     * Reads strict JSON (RFC 8259).
     *
     * @throws org.varwright.problem.VarwrightException with {@code JSON_SYNTAX} and line and column
     */
    static Json parse(String text) {
        return new JsonReader(text).read();
    }
}
