package org.varwright.network;

import java.util.List;
import java.util.Map;
import org.varwright.quantity.Complex;

/** Failures resolved against one network once, to be asked about often; see {@link Sweep}. Immutable. */
public final class Fault {
    /**
     * What happens at one port.
     *
     * @param port index
     * @param inverse the 1/D of NET-6: of the change of admittance in units of the network's base; 0 for a short circuit, 1 for an open pole
     * @param siemens change of admittance in those units; 0 for a short circuit and an open pole
     * @param isShort whether it is a short circuit
     * @param isDead whether no unit at the port is left in service
     */
    record At(int port, Complex inverse, Complex siemens, boolean isShort, boolean isDead) {
        double inverseRe() {
            return inverse.re();
        }

        double inverseIm() {
            return inverse.im();
        }
    }

    private final List<Failure> failures;
    final At[] at;
    final Map<Integer, UnitState> states;

    Fault(List<? extends Failure> failures, List<At> at, Map<Integer, UnitState> states) {
        this.failures = List.copyOf(failures);
        this.at = at.toArray(At[]::new);
        this.states = states;
    }

    /** What failed. */
    public List<Failure> failures() {
        return failures;
    }

    /** Whether both change something at the same port. */
    boolean touches(Fault other) {
        for (At here : at) {
            for (At there : other.at) {
                if (here.port() == there.port()) {
                    return true;
                }
            }
        }
        return false;
    }
}
