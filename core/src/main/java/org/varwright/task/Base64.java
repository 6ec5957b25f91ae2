package org.varwright.task;

import java.util.Arrays;
import java.util.Optional;

/** Bytes written as text (RFC 4648, section 4). */
final class Base64 {
    private static final String DIGITS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    private static final byte[] VALUES = new byte[128];

    static {
        Arrays.fill(VALUES, (byte) -1);
        for (int i = 0; i < DIGITS.length(); i++) {
            VALUES[DIGITS.charAt(i)] = (byte) i;
        }
    }

    private Base64() {}

    /** The bytes; empty where the text is none of this kind, down to the bits that must be 0. */
    static Optional<byte[]> decode(String text) {
        int length = text.length();
        int padding = text.endsWith("==") ? 2 : text.endsWith("=") ? 1 : 0;
        if (length % 4 != 0) {
            return Optional.empty();
        }
        byte[] bytes = new byte[length / 4 * 3 - padding];
        int at = 0;
        int held = 0;
        int bits = 0;
        for (int i = 0; i < length - padding; i++) {
            char c = text.charAt(i);
            int value = c < VALUES.length ? VALUES[c] : -1;
            if (value < 0) {
                return Optional.empty();
            }
            held = (held << 6 | value) & 0xFFFF;
            bits += 6;
            if (bits >= 8) {
                bits -= 8;
                bytes[at] = (byte) (held >> bits);
                at++;
            }
        }
        return (held & (1 << bits) - 1) == 0 ? Optional.of(bytes) : Optional.empty();
    }
}
