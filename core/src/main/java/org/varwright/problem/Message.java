package org.varwright.problem;

import java.util.List;

/**
 * Every message about an input, by code. Placeholders are {@code {0}}, {@code {1}} …; a text says what is wrong, what is allowed and, where it helps,
 * what to try.
 */
public enum Message {
    // ---- quantities
    NO_UNIT("\"{0}\" has no unit; write it with one, such as \"{1}\""),
    WRONG_UNIT("\"{0}\" has the unit \"{1}\"; allowed are {2}, as in \"{3}\""),
    NOT_A_QUANTITY("\"{0}\" is not a number with a unit; write it such as \"{1}\""),
    DECIMAL_COMMA("\"{0}\" has a decimal comma; write \"{1}\""),

    // ---- bank: positions
    POSITION_UNKNOWN("there is no position \"{0}\"; {1}"),

    // ---- json
    JSON_SYNTAX("not JSON: {0}"),

// ---- bank file (bankfile)

// ---- interlock

// ---- isolation

// ---- network, unbalance

// ---- discharge

// ---- survey

// ---- fit, energize

// ---- command line, report
;

    private final String template;

    Message(String template) {
        this.template = template;
    }

    /** The template with its placeholders. */
    public String template() {
        return template;
    }

    /** Number of placeholders: one more than the highest that the template names. */
    public int placeholders() {
        int count = 0;
        while (template.contains("{" + count + "}")) {
            count++;
        }
        return count;
    }

    String fill(List<String> arguments) {
        if (arguments.size() != placeholders()) {
            throw new IllegalArgumentException(
                    name() + " takes " + placeholders() + " arguments, got " + arguments.size());
        }
        StringBuilder out = new StringBuilder();
        int at = 0;
        while (at < template.length()) {
            char c = template.charAt(at);
            if (c == '{'
                    && at + 2 < template.length()
                    && template.charAt(at + 2) == '}'
                    && Character.isDigit(template.charAt(at + 1))) {
                out.append(arguments.get(template.charAt(at + 1) - '0'));
                at += 3;
            } else {
                out.append(c);
                at++;
            }
        }
        return out.toString();
    }
}
