/** Photographs made fit for a report: upright, small, without what a camera writes beside the picture. */
@NullMarked
package org.varwright.report.photo;

import org.jspecify.annotations.NullMarked;
