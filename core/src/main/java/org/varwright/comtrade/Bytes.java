package org.varwright.comtrade;

import java.util.Arrays;

/** Where the bytes of a file come from: a file on disk, an array in a browser, a part of another. */
public interface Bytes {
    /** How many there are. */
    long size();

    /**
     * Copies bytes.
     *
     * @param from first byte wanted, from 0
     * @param into where they go
     * @param at first index in {@code into}
     * @param count how many are wanted, 1 or more
     * @return how many were copied, at least 1; 0 at the end
     */
    int read(long from, byte[] into, int at, int count);

    /** Bytes of an array, which nobody may write to again. */
    static Bytes of(byte[] bytes) {
        return new Bytes() {
            @Override
            public long size() {
                return bytes.length;
            }

            @Override
            public int read(long from, byte[] into, int at, int count) {
                int copied = (int) Math.max(0L, Math.min(count, bytes.length - from));
                System.arraycopy(bytes, (int) Math.min(from, bytes.length), into, at, copied);
                return copied;
            }
        };
    }

    /** A part of these bytes; shorter where they end before. */
    default Bytes part(long start, long length) {
        Bytes whole = this;
        long size = Math.max(0L, Math.min(length, size() - start));
        return new Bytes() {
            @Override
            public long size() {
                return size;
            }

            @Override
            public int read(long from, byte[] into, int at, int count) {
                int wanted = (int) Math.max(0L, Math.min(count, size - from));
                return wanted == 0 ? 0 : whole.read(start + from, into, at, wanted);
            }
        };
    }

    /** All of them, of a source known to be small. */
    default byte[] all() {
        byte[] bytes = new byte[(int) size()];
        int at = 0;
        while (at < bytes.length) {
            int read = read(at, bytes, at, bytes.length - at);
            if (read <= 0) {
                return Arrays.copyOf(bytes, at);
            }
            at += read;
        }
        return bytes;
    }
}
