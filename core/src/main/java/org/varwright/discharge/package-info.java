/** Decay of the charge that an opened stage holds: initial voltages, waiting times, stored energy, discharge stick, trapped charge at reclosing. */
@NullMarked
package org.varwright.discharge;

import org.jspecify.annotations.NullMarked;
