package org.varwright.report.photo;

/** What comes of wanting to show a photograph. */
public sealed interface PhotoReading {
    /**
     * It can be shown.
     *
     * @param jpeg the picture, upright, as JPEG in sRGB
     * @param width in pixels
     * @param height in pixels
     */
    @SuppressWarnings("ArrayRecordComponent") // never compared; copied by nobody
    record Shown(byte[] jpeg, int width, int height) implements PhotoReading {}

    /** It can't. */
    record NotShown(String reason) implements PhotoReading {}
}
