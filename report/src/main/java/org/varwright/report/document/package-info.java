/** What a printed report is made of: sections of blocks, free of any page layout. */
@NullMarked
package org.varwright.report.document;

import org.jspecify.annotations.NullMarked;
