/** Measures speed and memory, and writes {@code docs/performance.md}. Asserts no time: machines differ. */
@NullMarked
package org.varwright.bench;

import org.jspecify.annotations.NullMarked;
