package org.varwright.bankfile;

/**
 * Something that was read, with where it stands.
 *
 * @param path in IEEE words, such as {@code stages[1]}
 * @param value what was read
 */
record Item<T>(String path, T value) {}
