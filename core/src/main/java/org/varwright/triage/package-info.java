/** What happened: from an alarm or what was seen to likely causes, what to check first and from where, whether the bank may run on, and what to bring. */
@NullMarked
package org.varwright.triage;

import org.jspecify.annotations.NullMarked;
