package org.varwright.json;

import java.util.Iterator;
import java.util.Map;

/** Writes a tree as indented JSON, in which short arrays of plain values stay on one line; or all of it on one line. */
final class JsonWriter {
    private static final String HEX = "0123456789abcdef";

    private final StringBuilder out = new StringBuilder();
    private final boolean oneLine;

    private JsonWriter(boolean oneLine) {
        this.oneLine = oneLine;
    }

    static String write(Json value) {
        return write(value, false);
    }

    static String writeLine(Json value) {
        return write(value, true);
    }

    private static String write(Json value, boolean oneLine) {
        JsonWriter writer = new JsonWriter(oneLine);
        writer.value(value, 0);
        return writer.out.toString();
    }

    private void value(Json value, int depth) {
        switch (value) {
            case Json.Null n -> out.append("null");
            case Json.Bool b -> out.append(b.value());
            case Json.Num n -> out.append(number(n.value()));
            case Json.Str s -> string(s.value());
            case Json.Arr a -> array(a, depth);
            case Json.Obj o -> object(o, depth);
        }
    }

    /** Whole numbers without a point, all others with the fewest digits that read back the same. */
    static String number(double value) {
        if (value == Math.rint(value) && Math.abs(value) < 1e15) {
            return Long.toString((long) value);
        }
        return Double.toString(value);
    }

    private void array(Json.Arr array, int depth) {
        if (array.items().isEmpty()) {
            out.append("[]");
            return;
        }
        boolean flat = array.items().stream().noneMatch(item -> item instanceof Json.Arr || item instanceof Json.Obj);
        out.append('[');
        Iterator<Json> items = array.items().iterator();
        while (items.hasNext()) {
            if (!flat) {
                newline(depth + 1);
            }
            value(items.next(), depth + 1);
            if (items.hasNext()) {
                out.append(flat && !oneLine ? ", " : ",");
            }
        }
        if (!flat) {
            newline(depth);
        }
        out.append(']');
    }

    private void object(Json.Obj object, int depth) {
        if (object.members().isEmpty()) {
            out.append("{}");
            return;
        }
        out.append('{');
        Iterator<Map.Entry<String, Json>> members = object.members().entrySet().iterator();
        while (members.hasNext()) {
            Map.Entry<String, Json> member = members.next();
            newline(depth + 1);
            string(member.getKey());
            out.append(oneLine ? ":" : ": ");
            value(member.getValue(), depth + 1);
            if (members.hasNext()) {
                out.append(',');
            }
        }
        newline(depth);
        out.append('}');
    }

    private void newline(int depth) {
        if (oneLine) {
            return;
        }
        out.append('\n');
        for (int i = 0; i < depth; i++) {
            out.append("  ");
        }
    }

    private void string(String text) {
        out.append('"');
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            switch (c) {
                case '"' -> out.append("\\\"");
                case '\\' -> out.append("\\\\");
                case '\n' -> out.append("\\n");
                case '\r' -> out.append("\\r");
                case '\t' -> out.append("\\t");
                default -> {
                    if (c < 0x20 || c == 0x2028 || c == 0x2029 || (Character.isSurrogate(c) && !paired(text, i))) {
                        out.append("\\u");
                        for (int shift = 12; shift >= 0; shift -= 4) {
                            out.append(HEX.charAt((c >> shift) & 0xf));
                        }
                    } else {
                        out.append(c);
                    }
                }
            }
        }
        out.append('"');
    }

    private static boolean paired(String text, int at) {
        char c = text.charAt(at);
        return Character.isHighSurrogate(c)
                ? at + 1 < text.length() && Character.isLowSurrogate(text.charAt(at + 1))
                : at > 0 && Character.isHighSurrogate(text.charAt(at - 1));
    }
}
