package org.varwright.resonance;

import java.util.List;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.basis.Check;

/**
 * A stage with a reactor: to which order it is tuned, what that does to the capacitors, and how far it drifts.
 *
 * @param stage which
 * @param purpose of the reactor
 * @param detuning {@code p} with the capacitances as known
 * @param farads of one branch [F]
 * @param henries of one branch [H]
 * @param netVars that the stage gives at nominal voltage [var]
 * @param aim order that it is built for or against: of a filter the nearest harmonic above, of a detuned stage the lowest harmonic there is
 * @param drifts what changes it; empty for an inrush reactor
 * @param checks tuning against the aim
 */
public record StageTuning(
        Stage stage,
        Reactor.Purpose purpose,
        Detuning detuning,
        double farads,
        double henries,
        double netVars,
        int aim,
        List<Drift> drifts,
        List<Check> checks) {
    public StageTuning {
        drifts = List.copyOf(drifts);
        checks = List.copyOf(checks);
    }
}
