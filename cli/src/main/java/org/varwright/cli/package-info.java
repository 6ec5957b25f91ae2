/** The command line: files in, text or JSON out. */
@NullMarked
package org.varwright.cli;

import org.jspecify.annotations.NullMarked;
