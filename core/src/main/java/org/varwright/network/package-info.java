/** Phasor network of a bank: every unit, healthy and with failures; what the sensors show. */
@NullMarked
package org.varwright.network;

import org.jspecify.annotations.NullMarked;
