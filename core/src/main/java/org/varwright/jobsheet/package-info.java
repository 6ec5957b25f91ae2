/** The job sheet: one small file that names what belongs to one job. */
@NullMarked
package org.varwright.jobsheet;

import org.jspecify.annotations.NullMarked;
