/** Fuses: standard links, rating, what flows when a unit shorts, how fast the fuse clears, what its neighbours bear, which link suits. */
@NullMarked
package org.varwright.fuse;

import org.jspecify.annotations.NullMarked;
