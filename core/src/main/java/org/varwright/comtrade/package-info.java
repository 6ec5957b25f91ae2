/**
 * Disturbance records of IEEE C37.111 (= IEC 60255-24): read and written, in all revisions and data formats. What was forgiven is said. Knows nothing of
 * banks.
 */
@NullMarked
package org.varwright.comtrade;

import org.jspecify.annotations.NullMarked;
