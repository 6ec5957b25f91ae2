package org.varwright.fuse;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Term;
import org.varwright.network.Capacitances;
import org.varwright.network.Network;
import org.varwright.network.Solution;
import org.varwright.network.Supply;

/**
 * What a fuse carries in service.
 *
 * @param ruleAmperes current that the rating rule multiplies: a unit's rated current, or what it carries at nominal voltage where that is more; of a line the
 *     current at nominal voltage by the nameplates [A]
 * @param worstAmperes most that it carries by this bank's own data [A]
 * @param worstVolts line voltage at which that is so [V]
 * @param harmonicFactor by which harmonics raise the rms current, worst combination of stages; 1 where none are counted
 * @param tolerance by which a unit without measured capacitance was taken above its nameplate, a part of one
 */
public record ServiceCurrent(
        double ruleAmperes, double worstAmperes, double worstVolts, double tolerance, double harmonicFactor) {
    /**
     * Current of service of a stage's unit fuses or line fuses; empty where the network in good order has no solution.
     *
     * <p><b>Model.</b> FUS-7: the healthy network with measured capacitances, the others at the upper limit of their tolerance, at the highest sustained voltage of
     * the bank file; times what the file's harmonics add in the worst combination of stages (DUT-1).
     * <p><b>Not modelled.</b> Skin effect, ambient temperature. <b>Source.</b> First principles; the network solver.
     */
    static Optional<ServiceCurrent> of(Bank bank, Stage stage, FusePlace place, double harmonicFactor) {
        double volts = bank.system().maximumVolts().orElse(bank.system().nominalVolts());
        double tolerance = stage.unit().tolerance().high();
        Solution worst = solve(bank, stage, high(bank, stage, 1.0 + tolerance), new Supply.Balanced(volts));
        Solution plain = solve(bank, stage, Capacitances.nameplate(bank), Supply.nominal(bank.system()));
        if (!(worst instanceof Solution.Solved high && plain instanceof Solution.Solved usual)) {
            return Optional.empty();
        }
        return Optional.of(
                switch (place) {
                    case UNIT ->
                        new ServiceCurrent(
                                Math.max(ratedUnitAmperes(stage), unit(stage, usual)),
                                harmonicFactor * unit(stage, high),
                                volts,
                                tolerance,
                                harmonicFactor);
                    case LINE ->
                        new ServiceCurrent(line(usual), harmonicFactor * line(high), volts, tolerance, harmonicFactor);
                });
    }

    /** Rated current of a unit; of a three-phase unit in each of its lines [A]. */
    static double ratedUnitAmperes(Stage stage) {
        double volts = stage.unit().ratedVolts();
        return stage.unit().ratedVars() / (stage.hasThreePhaseUnits() ? Math.sqrt(3.0) * volts : volts);
    }

    List<Term> terms() {
        List<Term> terms = new ArrayList<>();
        terms.add(new Term("V", "highest line voltage of the bank file, else nominal", worstVolts, "V"));
        terms.add(new Term("tol", "taken above nameplate where no capacitance is on file", tolerance, ""));
        terms.add(new Term("h", "rms current with harmonics over that without; 1: none counted", harmonicFactor, ""));
        return terms;
    }

    private static Capacitances high(Bank bank, Stage stage, double factor) {
        Map<UnitPosition, Double> farads = new LinkedHashMap<>();
        for (UnitPosition at : stage.positions()) {
            OptionalDouble measured =
                    bank.unitAt(at).map(u -> u.capacitanceFarads()).orElse(OptionalDouble.empty());
            farads.put(at, measured.orElse(stage.unit().capacitanceFarads() * factor));
        }
        return Capacitances.nameplate(bank).with(farads);
    }

    private static Solution solve(Bank bank, Stage stage, Capacitances capacitances, Supply supply) {
        return Network.of(bank, stage, capacitances, supply).healthy();
    }

    private static double unit(Stage stage, Solution.Solved solved) {
        // The lines of a delta can carry √3 times its legs.
        double lines = stage.hasThreePhaseUnits() && !stage.connection().hasFloatingNeutral() ? Math.sqrt(3.0) : 1.0;
        return lines
                * solved.units().stream()
                        .mapToDouble(u -> u.amperes().magnitude())
                        .max()
                        .orElseThrow();
    }

    private static double line(Solution.Solved solved) {
        return solved.lines().stream()
                .mapToDouble(l -> l.amperes().magnitude())
                .max()
                .orElseThrow();
    }
}
