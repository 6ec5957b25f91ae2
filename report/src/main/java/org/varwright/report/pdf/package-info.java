/** A report document set on pages: XHTML with every text escaped, then PDF/A with embedded fonts. */
@NullMarked
package org.varwright.report.pdf;

import org.jspecify.annotations.NullMarked;
