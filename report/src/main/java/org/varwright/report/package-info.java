/** The report as PDF. */
@NullMarked
package org.varwright.report;

import org.jspecify.annotations.NullMarked;
