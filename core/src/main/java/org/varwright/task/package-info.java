/** One door to everything {@code core} can do: a request as JSON in, the answer as JSON out. The browser, the server and the shared test vectors use it. */
@NullMarked
package org.varwright.task;

import org.jspecify.annotations.NullMarked;
