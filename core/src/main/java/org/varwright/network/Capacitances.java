package org.varwright.network;

import java.util.HashMap;
import java.util.Map;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;

/** Capacitance of every capacitive branch of a bank [F]: of a single-phase unit, or of one leg inside a three-phase unit. Immutable. */
public final class Capacitances {
    private final Map<UnitBranch, Double> farads;

    private Capacitances(Map<UnitBranch, Double> farads) {
        this.farads = farads;
    }

    /** By the nameplates alone (NET-1). */
    public static Capacitances nameplate(Bank bank) {
        Map<UnitBranch, Double> farads = new HashMap<>();
        for (Stage stage : bank.stages()) {
            for (UnitPosition position : stage.positions()) {
                for (UnitBranch branch : Circuit.branchesOf(stage, position)) {
                    farads.put(branch, stage.unit().capacitanceFarads());
                }
            }
        }
        return new Capacitances(farads);
    }

    /** The measured value where the bank file has one, else the nameplate's. */
    public static Capacitances known(Bank bank) {
        Capacitances all = nameplate(bank);
        for (KnownUnit unit : bank.units()) {
            OptionalDouble measured = unit.capacitanceFarads();
            if (measured.isPresent()) {
                all = all.with(unit.at(), measured.getAsDouble());
            }
        }
        return all;
    }

    /**
     * The same with another value at one position; for a three-phase unit the value holds for each leg inside it.
     *
     * @throws VarwrightException {@code CAPACITANCE_NOT_POSITIVE}
     */
    public Capacitances with(UnitPosition at, double value) {
        return with(Map.of(at, value));
    }

    /** The same with other values at some positions. */
    public Capacitances with(Map<UnitPosition, Double> values) {
        Map<UnitBranch, Double> copy = new HashMap<>(farads);
        values.forEach((at, value) -> require(at.name(), value));
        copy.replaceAll((branch, old) -> values.getOrDefault(branch.at(), old));
        return new Capacitances(copy);
    }

    /** The same with another value for one branch. */
    public Capacitances with(UnitBranch branch, double value) {
        require(branch.name(), value);
        Map<UnitBranch, Double> copy = new HashMap<>(farads);
        copy.put(branch, value);
        return new Capacitances(copy);
    }

    /** All values multiplied by {@code factor}. */
    public Capacitances times(double factor) {
        Map<UnitBranch, Double> copy = new HashMap<>(farads);
        copy.replaceAll((branch, old) -> old * factor);
        return new Capacitances(copy);
    }

    /**
     * Capacitance of one branch [F].
     *
     * @throws VarwrightException {@code CAPACITANCE_MISSING} where the branch is none of the bank's
     */
    public double farads(UnitBranch branch) {
        Double value = farads.get(branch);
        if (value == null) {
            throw new VarwrightException(Message.CAPACITANCE_MISSING, Place.NOWHERE, branch.name());
        }
        return value;
    }

    private static void require(String where, double value) {
        if (!(value > 0.0) || !Double.isFinite(value)) {
            throw new VarwrightException(
                    Message.CAPACITANCE_NOT_POSITIVE, Place.NOWHERE, where, Dimension.CAPACITANCE.format(value));
        }
    }
}
