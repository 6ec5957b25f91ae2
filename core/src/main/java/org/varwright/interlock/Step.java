package org.varwright.interlock;

/**
 * A move and the state after it.
 *
 * @param move what is done
 * @param after the state that it leads to
 */
public record Step(Move move, State after) {}
