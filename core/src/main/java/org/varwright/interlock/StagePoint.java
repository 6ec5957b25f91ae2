package org.varwright.interlock;

import java.util.Optional;

/**
 * A stage as far as interlocking is concerned.
 *
 * @param name of the stage and of its conductor
 * @param switchName its switch; empty where it has none of its own
 */
public record StagePoint(String name, Optional<String> switchName) {}
