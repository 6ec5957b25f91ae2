package org.varwright.report;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/**
 * A file that went into a report, with what tells it from every other.
 *
 * @param what it is, such as {@code bank file}
 * @param name as the person gave it
 * @param sha256 digest of its bytes, 64 hexadecimal digits
 */
public record InputFile(String what, String name, String sha256) {
    /** The file with this content. */
    public static InputFile of(String what, String name, byte[] content) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(content);
            return new InputFile(what, name, HexFormat.of().formatHex(digest));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
