/** What a disturbance record says of a bank: channels matched to its legs and sensors, what was switched, what failed, what the record can't tell. */
@NullMarked
package org.varwright.record;

import org.jspecify.annotations.NullMarked;
