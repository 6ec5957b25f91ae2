/** What failures do to a bank: voltages, sensor signals, limits, settings; and which failure explains a signal. */
@NullMarked
package org.varwright.unbalance;

import org.jspecify.annotations.NullMarked;
