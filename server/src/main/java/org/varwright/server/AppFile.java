package org.varwright.server;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Optional;

/** One file of the app, as it is sent. */
final class AppFile {
    private static final int TAG_BYTES = 16;

    private final String mediaType;
    private final byte[] plain;
    private final Optional<byte[]> squeezed;
    private final boolean isNamedByContent;
    private final String tag;

    private AppFile(String mediaType, byte[] plain, Optional<byte[]> squeezed, boolean isNamedByContent, String tag) {
        this.mediaType = mediaType;
        this.plain = plain;
        this.squeezed = squeezed;
        this.isNamedByContent = isNamedByContent;
        this.tag = tag;
    }

    /**
     * A file.
     *
     * @param plain its bytes
     * @param squeezed the same in gzip, where the build made that
     * @param isNamedByContent whether another content would have another name, so that a browser may keep it for good
     */
    static AppFile of(String mediaType, byte[] plain, Optional<byte[]> squeezed, boolean isNamedByContent) {
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(plain);
            return new AppFile(
                    mediaType, plain, squeezed, isNamedByContent, HexFormat.of().formatHex(hash, 0, TAG_BYTES));
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    String mediaType() {
        return mediaType;
    }

    byte[] plain() {
        return plain;
    }

    Optional<byte[]> squeezed() {
        return squeezed;
    }

    /** A browser asks each time whether it still has the right one, or never again. */
    String cacheControl() {
        return isNamedByContent ? "public, max-age=31536000, immutable" : "no-cache";
    }

    /** The tag of the bytes as sent: the squeezed ones are other bytes. */
    String tag(boolean isSqueezed) {
        return '"' + tag + (isSqueezed ? "-gz" : "") + '"';
    }
}
