package org.varwright.discharge;

import java.util.List;
import org.varwright.basis.Basis;

/**
 * The minimum wait after a stage was opened. Its end is never a permission to touch: the conductors are proved dead, and every unit gets the stick.
 *
 * @param stage name of the stage
 * @param seconds minimum wait [s]
 * @param decayKnown whether the decay could be computed; if not, the units count as charged when the wait is over
 * @param basis how it came about
 * @param notes what to bear in mind, in words
 */
public record Wait(String stage, double seconds, boolean decayKnown, Basis basis, List<String> notes) {
    public Wait {
        notes = List.copyOf(notes);
    }
}
