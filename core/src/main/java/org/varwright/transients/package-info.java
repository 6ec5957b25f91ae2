/** Circuits of resistors, inductors, capacitors, sinusoidal sources and switch poles, solved exactly in time. Knows nothing of banks. */
@NullMarked
package org.varwright.transients;

import org.jspecify.annotations.NullMarked;
