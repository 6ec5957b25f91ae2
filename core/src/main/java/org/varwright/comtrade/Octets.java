package org.varwright.comtrade;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** A row of bytes that grows; numbers go in with the lowest byte first, as C37.111 has them. */
final class Octets {
    private byte[] bytes = new byte[1024];
    private int size;

    Octets octet(int value) {
        if (size == bytes.length) {
            bytes = Arrays.copyOf(bytes, size * 2);
        }
        bytes[size++] = (byte) value;
        return this;
    }

    Octets word(int value) {
        return octet(value).octet(value >> 8);
    }

    Octets doubleWord(int value) {
        return word(value).word(value >> 16);
    }

    Octets text(String text) {
        return all(text.getBytes(StandardCharsets.UTF_8));
    }

    Octets line(String text) {
        return text(text).text("\r\n");
    }

    Octets all(byte[] more) {
        if (size + more.length > bytes.length) {
            bytes = Arrays.copyOf(bytes, Math.max(size * 2, size + more.length));
        }
        System.arraycopy(more, 0, bytes, size, more.length);
        size += more.length;
        return this;
    }

    byte[] toArray() {
        return Arrays.copyOf(bytes, size);
    }
}
