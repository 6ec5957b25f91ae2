package org.varwright.problem;

import java.util.List;

/**
 * One thing that is wrong or unusual in an input.
 *
 * @param message which message
 * @param place where
 * @param arguments what fills the placeholders of the message, in order
 */
public record Problem(Message message, Place place, List<String> arguments) {
    public Problem {
        arguments = List.copyOf(arguments);
    }

    public static Problem of(Message message, Place place, String... arguments) {
        return new Problem(message, place, List.of(arguments));
    }

    /** The message with its placeholders filled, without the place. */
    public String text() {
        return message.fill(arguments);
    }

    /** {@code file:line:column path: what is wrong; what is allowed}. */
    public String print() {
        String where = place.print();
        return where.isEmpty() ? text() : where + ": " + text();
    }
}
