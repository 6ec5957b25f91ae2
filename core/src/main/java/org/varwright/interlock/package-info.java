/** Keys, locks, conductors: what they allow, what is proven of them, and the shortest way to harm where nothing is. */
@NullMarked
package org.varwright.interlock;

import org.jspecify.annotations.NullMarked;
