/** What switching a stage does: inrush, outrush, trapped charge, opening, restrike; by closed form and in the time domain. */
@NullMarked
package org.varwright.switching;

import org.jspecify.annotations.NullMarked;
