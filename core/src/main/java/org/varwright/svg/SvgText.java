package org.varwright.svg;

/** Text made fit for XML. */
public final class SvgText {
    private SvgText() {}

    /** Without control characters, lone surrogates, non-characters and marks that turn the direction of reading; tabs and line ends become blanks. */
    public static String clean(String text) {
        StringBuilder out = new StringBuilder(text.length());
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (Character.isHighSurrogate(c) && i + 1 < text.length() && Character.isLowSurrogate(text.charAt(i + 1))) {
                int whole = Character.toCodePoint(c, text.charAt(i + 1));
                i++;
                if ((whole & 0xFFFE) != 0xFFFE) {
                    out.appendCodePoint(whole);
                }
            } else if (c == '\t' || c == '\n' || c == '\r' || c == '\u2028' || c == '\u2029' || c == '\u00A0') {
                out.append(' ');
            } else if (!isDropped(c)) {
                out.append(c);
            }
        }
        return out.toString();
    }

    private static boolean isDropped(char c) {
        return c < 0x20
                || (c >= 0x7F && c <= 0x9F)
                || Character.isSurrogate(c)
                || (c >= '\u200B' && c <= '\u200F')
                || (c >= '\u202A' && c <= '\u202E')
                || (c >= '\u2060' && c <= '\u206F')
                || c == '\uFEFF'
                || c == '\uFFFE'
                || c == '\uFFFF';
    }

    /** Cleaned and escaped, for an attribute or between tags. */
    public static String escape(String text) {
        StringBuilder out = new StringBuilder(text.length() + 16);
        for (char c : clean(text).toCharArray()) {
            switch (c) {
                case '&' -> out.append("&amp;");
                case '<' -> out.append("&lt;");
                case '>' -> out.append("&gt;");
                case '"' -> out.append("&quot;");
                case '\'' -> out.append("&#39;");
                default -> out.append(c);
            }
        }
        return out.toString();
    }

    /** A number with at most two decimals and a point. */
    public static String number(double value) {
        long hundredths = Math.round(value * 100.0);
        String sign = hundredths < 0 ? "-" : "";
        long whole = Math.abs(hundredths);
        String text = sign + whole / 100;
        long rest = whole % 100;
        if (rest == 0) {
            return text;
        }
        return text + (rest % 10 == 0 ? "." + rest / 10 : rest < 10 ? ".0" + rest : "." + rest);
    }
}
