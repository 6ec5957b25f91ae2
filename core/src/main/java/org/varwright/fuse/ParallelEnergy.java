package org.varwright.fuse;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/**
 * Energy stored in a unit and those parallel to it (FUS-10).
 *
 * <p><b>Model.</b> {@code n·½CV²}, C by the nameplate, V the peak of rated voltage at 1.0 and at 1.1 times. The unit that shorts is counted with its
 * neighbours: the guidance limits the whole group; through the fuse goes what the others hold.
 * <p><b>Source.</b> First principles.
 *
 * @param units in parallel, by how far they are joined
 * @param unitJoules of one unit at the peak of rated voltage [J]
 * @param volts peak of rated voltage across a unit [V]
 * @param outrush what flows at 1.1 times that peak
 */
public record ParallelEnergy(ParallelUnits units, double unitJoules, double volts, Outrush outrush) {
    /** Highest continuous voltage over rated at which energy is judged. */
    public static final double HIGH = 1.1;

    static ParallelEnergy of(Bank bank, Stage stage, String leg, FuseOptions options) {
        ParallelUnits units = ParallelUnits.of(bank, stage, leg);
        double farads = stage.unit().capacitanceFarads();
        double peak = Math.sqrt(2.0) * stage.unit().legVolts();
        Outrush outrush = Outrush.compute(
                units.ownStage() - 1, farads, HIGH * peak, options.branchOhms(), options.branchHenries());
        return new ParallelEnergy(units, 0.5 * farads * peak * peak, peak, outrush);
    }

    /** Of all units in parallel, those of other stages through the bus included [J]. */
    public double groupJoules(double perRated) {
        return units.wholeBank() * unitJoules * perRated * perRated;
    }

    /** What the neighbours discharge through the fuse of a shorted unit [J]. */
    public double neighbourJoules(double perRated) {
        return (units.wholeBank() - 1.0) * unitJoules * perRated * perRated;
    }

    Basis basis(double perRated, Source limit) {
        return new Basis(
                "FUS-10",
                "E = n·½C·(k·V)²",
                List.of(
                        new Term("n", "units in parallel, the shorted one included", units.wholeBank(), ""),
                        new Term("½CV²", "energy of one at the peak of rated voltage", unitJoules, "J"),
                        new Term("V", "peak of rated voltage across a unit", volts, "V"),
                        new Term("k", "voltage over rated", perRated, "")),
                limit);
    }
}
