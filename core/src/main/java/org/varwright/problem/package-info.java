/** What is wrong with an input, where, what is allowed and what to try: one list of messages for the whole product. */
@NullMarked
package org.varwright.problem;

import org.jspecify.annotations.NullMarked;
