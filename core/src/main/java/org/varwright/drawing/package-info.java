/** The one-line diagram and the key-flow diagram of a bank as SVG: what stands where, and what is live, charged and grounded in a given state. */
@NullMarked
package org.varwright.drawing;

import org.jspecify.annotations.NullMarked;
