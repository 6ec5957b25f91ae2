package org.varwright.comtrade;

import java.util.Optional;

/** Code pages beyond those that {@link TextDecoder} knows by itself; what runs the reader may know more. */
@FunctionalInterface
public interface CodePages {
    CodePages NONE = (name, bytes) -> Optional.empty();

    /** The text of bytes; empty where the code page is not known. */
    Optional<String> decode(String name, byte[] bytes);
}
