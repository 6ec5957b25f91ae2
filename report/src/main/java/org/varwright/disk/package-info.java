/** Files that are written whole or not at all, and what went wrong with one, in words. */
@NullMarked
package org.varwright.disk;

import org.jspecify.annotations.NullMarked;
