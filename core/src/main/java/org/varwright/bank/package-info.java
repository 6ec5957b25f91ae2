/** Immutable description of one capacitor bank: supply, unit and fuse types, stages, protection, isolation, units in place, spares. */
@NullMarked
package org.varwright.bank;

import org.jspecify.annotations.NullMarked;
