/** Which unit goes where: compatible spares, fewest lifts, least unbalance, and how to run on where no spare fits. */
@NullMarked
package org.varwright.fit;

import org.jspecify.annotations.NullMarked;
