package org.varwright.bank;

import java.util.Optional;

/**
 * A key of which the file says how many copies there are.
 *
 * @param name of the key
 * @param copies 1 or more
 * @param note free text
 */
public record KeyCopies(String name, int copies, Optional<String> note) {}
