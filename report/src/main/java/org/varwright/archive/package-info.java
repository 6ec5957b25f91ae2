/** A whole job as one file: its log and its attachments. */
@NullMarked
package org.varwright.archive;

import org.jspecify.annotations.NullMarked;
