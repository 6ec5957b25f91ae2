/** The order of work: the cheapest proven way in and back, with every look, hold, test, discharge, ground, lock and count that belongs to it. */
@NullMarked
package org.varwright.isolation;

import org.jspecify.annotations.NullMarked;
