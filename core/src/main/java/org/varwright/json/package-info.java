/** A small JSON tree with a strict reader and a deterministic writer; reflection-free, so that a browser can run it. */
@NullMarked
package org.varwright.json;

import org.jspecify.annotations.NullMarked;
