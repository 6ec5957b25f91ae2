/** Results as pictures: phasors of a failure, of a fit, of a first energization; the map and the ranking of a survey. What is drawn is computed elsewhere. */
@NullMarked
package org.varwright.picture;

import org.jspecify.annotations.NullMarked;
