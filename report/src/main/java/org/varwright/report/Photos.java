package org.varwright.report;

import java.util.Optional;

/** Where attachments are found. */
@FunctionalInterface
public interface Photos {
    /** None is at hand: names and hashes are printed. */
    Photos NONE = sha256 -> Optional.empty();

    /**
     * The bytes of an attachment.
     *
     * @param sha256 64 hexadecimal digits
     * @return empty where it is not at hand
     */
    Optional<byte[]> find(String sha256);
}
