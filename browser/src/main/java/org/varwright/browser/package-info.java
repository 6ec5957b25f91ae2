/** The face of {@code core} for JavaScript: one function, JSON text in and out. */
@NullMarked
package org.varwright.browser;

import org.jspecify.annotations.NullMarked;
