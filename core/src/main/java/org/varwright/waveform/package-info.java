/** Sampled waveforms and what is measured of them: phasors, frequency, conduction, ringing, decay. Knows nothing of banks or of files. */
@NullMarked
package org.varwright.waveform;

import org.jspecify.annotations.NullMarked;
