package org.varwright.bankfile;

import java.util.List;
import org.varwright.problem.Place;

/** A document as it stands, before any meaning. Scalars are the text as written: {@code off}, {@code 0123} and {@code 1e3} stay what they are. */
sealed interface Tree {
    Place place();

    /** What stands there, in words, for messages. */
    default String describe() {
        return switch (this) {
            case Scalar s -> s.isNothing() ? "nothing" : "\"" + Shown.of(s.text()) + "\"";
            case Sequence s -> "a list";
            case Mapping m -> "a mapping";
            case Unreadable u -> "something unreadable";
        };
    }

    /** A single value; {@code plain} where it stands without quotes. */
    record Scalar(String text, boolean plain, Place place) implements Tree {
        /** Whether nothing stands there, which YAML can write in three ways. */
        boolean isNothing() {
            return plain && (text.isEmpty() || text.equals("~") || text.equals("null"));
        }
    }

    record Sequence(List<Tree> items, Place place) implements Tree {}

    record Mapping(List<Entry> entries, Place place) implements Tree {}

    /** Something of which a fault has been reported already. */
    record Unreadable(Place place) implements Tree {}

    /** One key with its value. */
    record Entry(String key, Place keyPlace, Tree value) {}
}
