package org.varwright.sheet;

import java.nio.charset.StandardCharsets;

/** The compound files of old spreadsheets; a password puts a new workbook into one as well. */
final class OldWorkbook {
    private static final byte[] SIGNATURE = {(byte) 0xd0, (byte) 0xcf, 0x11, (byte) 0xe0, (byte) 0xa1, (byte) 0xb1};
    private static final byte[] LOCKED = "EncryptedPackage".getBytes(StandardCharsets.UTF_16LE);

    private OldWorkbook() {}

    static boolean is(byte[] content) {
        return holdsAt(content, 0, SIGNATURE);
    }

    /** Whether it holds a new workbook under a password: the name of that part stands in the directory. */
    static boolean isLocked(byte[] content) {
        for (int at = 0; at + LOCKED.length <= content.length; at++) {
            if (holdsAt(content, at, LOCKED)) {
                return true;
            }
        }
        return false;
    }

    private static boolean holdsAt(byte[] content, int at, byte[] wanted) {
        if (content.length < at + wanted.length) {
            return false;
        }
        for (int i = 0; i < wanted.length; i++) {
            if (content[at + i] != wanted[i]) {
                return false;
            }
        }
        return true;
    }
}
