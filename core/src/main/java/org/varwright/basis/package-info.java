/** How a number came about: formula, terms with units, source. Attached to every result that a person acts on. */
@NullMarked
package org.varwright.basis;

import org.jspecify.annotations.NullMarked;
