/** Plain text laid out for printing: 100 columns, headings, rows, tables, wrapped lines. */
@NullMarked
package org.varwright.page;

import org.jspecify.annotations.NullMarked;
