package org.varwright.bank;

/**
 * What is inside one phase of a unit.
 *
 * @param sections element groups in series, 1 or more
 * @param elements elements in parallel in each section, 1 or more
 * @param internallyFused whether every element has its own fuse
 */
public record Construction(int sections, int elements, boolean internallyFused) {}
