package org.varwright.comtrade;

/**
 * Bytes that come from a slow disk: one or 4093 at a time.
 *
 * @param bytes all of them
 * @param every at every so manieth byte only one comes
 */
@SuppressWarnings("ArrayRecordComponent") // nobody compares two of them
record SlowBytes(byte[] bytes, int every) implements Bytes {
    @Override
    public long size() {
        return bytes.length;
    }

    @Override
    public int read(long from, byte[] into, int at, int count) {
        int given = (int) Math.min(Math.min(count, bytes.length - from), from % every == 0 ? 1 : 4093);
        System.arraycopy(bytes, (int) from, into, at, given);
        return given;
    }
}
