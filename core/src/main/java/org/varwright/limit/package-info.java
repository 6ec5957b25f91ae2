/** Published limits as data: what a capacitor unit and a bus may bear, with the standard beside each number. */
@NullMarked
package org.varwright.limit;

import org.jspecify.annotations.NullMarked;
