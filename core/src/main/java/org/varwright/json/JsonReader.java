package org.varwright.json;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/** A strict reader of RFC 8259: no comments, no trailing commas, no duplicate names, nesting bounded. */
final class JsonReader {
    private static final int DEEPEST = 200;

    private final String text;
    private int at;

    JsonReader(String text) {
        this.text = text;
    }

    Json read() {
        Json value = value(0);
        space();
        if (at < text.length()) {
            throw fault("something follows the end of the value");
        }
        return value;
    }

    private Json value(int depth) {
        if (depth > DEEPEST) {
            throw fault("nested more than " + DEEPEST + " deep");
        }
        space();
        if (at >= text.length()) {
            throw fault("the text ends where a value should stand");
        }
        char c = text.charAt(at);
        return switch (c) {
            case '{' -> object(depth);
            case '[' -> array(depth);
            case '"' -> new Json.Str(string());
            case 't' -> word("true", new Json.Bool(true));
            case 'f' -> word("false", new Json.Bool(false));
            case 'n' -> word("null", Json.none());
            default -> number();
        };
    }

    private Json word(String word, Json value) {
        if (!text.startsWith(word, at)) {
            throw fault("expected " + word);
        }
        at += word.length();
        return value;
    }

    private Json object(int depth) {
        Map<String, Json> members = new LinkedHashMap<>();
        at++;
        space();
        if (taken('}')) {
            return new Json.Obj(members);
        }
        do {
            space();
            if (at >= text.length() || text.charAt(at) != '"') {
                throw fault("a member needs a name in double quotes");
            }
            String name = string();
            space();
            if (!taken(':')) {
                throw fault("a colon must follow the name \"" + name + "\"");
            }
            if (members.put(name, value(depth + 1)) != null) {
                throw fault("the name \"" + name + "\" stands twice");
            }
            space();
        } while (taken(','));
        if (!taken('}')) {
            throw fault("an object must end with }");
        }
        return new Json.Obj(members);
    }

    private Json array(int depth) {
        List<Json> items = new ArrayList<>();
        at++;
        space();
        if (taken(']')) {
            return new Json.Arr(items);
        }
        do {
            items.add(value(depth + 1));
            space();
        } while (taken(','));
        if (!taken(']')) {
            throw fault("an array must end with ]");
        }
        return new Json.Arr(items);
    }

    private String string() {
        StringBuilder out = new StringBuilder();
        at++;
        while (true) {
            if (at >= text.length()) {
                throw fault("a string is not closed");
            }
            char c = text.charAt(at++);
            if (c == '"') {
                return out.toString();
            }
            if (c < 0x20) {
                throw fault("a control character stands in a string; write it as an escape");
            }
            out.append(c == '\\' ? escape() : c);
        }
    }

    private char escape() {
        if (at >= text.length()) {
            throw fault("a string is not closed");
        }
        char c = text.charAt(at++);
        return switch (c) {
            case '"', '\\', '/' -> c;
            case 'b' -> '\b';
            case 'f' -> '\f';
            case 'n' -> '\n';
            case 'r' -> '\r';
            case 't' -> '\t';
            case 'u' -> {
                int code = 0;
                for (int i = 0; i < 4; i++) {
                    int digit = at < text.length() ? Character.digit(text.charAt(at), 16) : -1;
                    if (digit < 0) {
                        throw fault("four hexadecimal digits must follow \\u");
                    }
                    code = code * 16 + digit;
                    at++;
                }
                yield (char) code;
            }
            default -> throw fault("there is no escape \\" + c);
        };
    }

    private Json number() {
        int start = at;
        if (at < text.length() && text.charAt(at) == '-') {
            at++;
        }
        int whole = at;
        digits();
        if (at - whole > 1 && text.charAt(whole) == '0') {
            throw fault("a number must not start with 0");
        }
        if (at < text.length() && text.charAt(at) == '.') {
            at++;
            digits();
        }
        if (at < text.length() && (text.charAt(at) == 'e' || text.charAt(at) == 'E')) {
            at++;
            if (at < text.length() && (text.charAt(at) == '+' || text.charAt(at) == '-')) {
                at++;
            }
            digits();
        }
        double value = Double.parseDouble(text.substring(start, at));
        if (!Double.isFinite(value)) {
            throw fault("the number is too large");
        }
        return new Json.Num(value);
    }

    private void digits() {
        int start = at;
        while (at < text.length() && text.charAt(at) >= '0' && text.charAt(at) <= '9') {
            at++;
        }
        if (at == start) {
            throw fault("expected a value");
        }
    }

    private void space() {
        while (at < text.length() && " \t\r\n".indexOf(text.charAt(at)) >= 0) {
            at++;
        }
    }

    private boolean taken(char c) {
        if (at < text.length() && text.charAt(at) == c) {
            at++;
            return true;
        }
        return false;
    }

    private VarwrightException fault(String what) {
        int line = 1;
        int column = 1;
        for (int i = 0; i < Math.min(at, text.length()); i++) {
            if (text.charAt(i) == '\n') {
                line++;
                column = 1;
            } else {
                column++;
            }
        }
        return new VarwrightException(Message.JSON_SYNTAX, new Place("", line, column, ""), what);
    }
}
