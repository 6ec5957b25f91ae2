/** What the bank does to its units and to the bus: limits in service, output, voltage rise, control, power factor. */
@NullMarked
package org.varwright.duty;

import org.jspecify.annotations.NullMarked;
