/** Pictures as SVG 1.1: escaped text with estimated widths, and a sheet of lines, areas and words in tones that suit light, dark and paper. */
@NullMarked
package org.varwright.svg;

import org.jspecify.annotations.NullMarked;
