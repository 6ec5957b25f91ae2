/** The bank at harmonics: resonance with the source, amplification, who carries which harmonic, tuning of reactors. */
@NullMarked
package org.varwright.resonance;

import org.jspecify.annotations.NullMarked;
