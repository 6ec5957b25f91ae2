/** First energization: the currents and sensor readings to expect, and what a reading outside them means. */
@NullMarked
package org.varwright.energize;

import org.jspecify.annotations.NullMarked;
