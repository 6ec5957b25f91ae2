package org.varwright.comtrade;

import java.util.Locale;
import java.util.Optional;

/** How the samples are written. */
public enum DataFormat {
    ASCII(0),
    BINARY(2),
    BINARY32(4),
    FLOAT32(4);

    private final int valueBytes;

    DataFormat(int valueBytes) {
        this.valueBytes = valueBytes;
    }

    /** Bytes of one analog value; 0 for text. */
    int valueBytes() {
        return valueBytes;
    }

    /** Without regard to case and blanks. */
    static Optional<DataFormat> parse(String text) {
        return switch (text.strip().toUpperCase(Locale.ROOT)) {
            case "ASCII" -> Optional.of(ASCII);
            case "BINARY" -> Optional.of(BINARY);
            case "BINARY32" -> Optional.of(BINARY32);
            case "FLOAT32" -> Optional.of(FLOAT32);
            default -> Optional.empty();
        };
    }
}
