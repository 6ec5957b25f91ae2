/** Values with units at the edges: text such as {@code 13.8 kV} in and out; inside, SI doubles whose names carry the unit. */
@NullMarked
package org.varwright.quantity;

import org.jspecify.annotations.NullMarked;
