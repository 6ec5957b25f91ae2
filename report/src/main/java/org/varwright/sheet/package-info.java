/** Workbooks (.xlsx): the cells of a sheet for {@code core} to judge, and results as sheets. */
@NullMarked
package org.varwright.sheet;

import org.jspecify.annotations.NullMarked;
