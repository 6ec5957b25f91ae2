package org.varwright.fit;

import java.util.Arrays;
import org.varwright.bank.Connection;

/**
 * A stage with so much capacitance in each group, changed in place while a search runs.
 *
 * <p><b>Model.</b> Lossless capacitors at the fundamental, balanced stiff supply; a string is its groups in series, a leg its strings in parallel; the
 * neutral of an ungrounded wye stands at {@code ΣC·e/ΣC} of the voltage to neutral (FIT-2).
 * <p><b>Not modelled.</b> Reactors, losses, supply unbalance: the result shown comes from the network.
 * <p><b>Source.</b> First principles.
 */
final class StageState {
    private static final double ROOT3 = Math.sqrt(3.0);

    final StageModel model;
    final double[] sums;
    final double[] strings;
    final double[] legs;

    private int trialGroup = -1;
    private double trialInverseRest;
    private final double[] trialLegRest;
    private final double[] phaseCapacitance = new double[3];

    StageState(StageModel model, double[] sums) {
        this.model = model;
        this.sums = sums.clone();
        this.strings = new double[model.groupsOfString.length];
        this.legs = new double[model.legCount];
        this.trialLegRest = new double[model.legCount];
        for (int[] groups : model.groupsOfString) {
            refresh(groups[0]);
        }
    }

    /** Sets the capacitance of a group [F]. */
    void set(int group, double farads) {
        sums[group] = farads;
        refresh(group);
    }

    private void refresh(int group) {
        int string = model.stringOfGroup[group];
        strings[string] = series(model.groupsOfString[string]);
        for (int leg : model.legsOfString[string]) {
            double sum = 0.0;
            for (int s : model.stringsOfLeg[leg]) {
                sum += strings[s];
            }
            legs[leg] = sum;
        }
    }

    private double series(int[] groups) {
        if (groups.length == 1) {
            return sums[groups[0]];
        }
        double inverse = 0.0;
        for (int g : groups) {
            if (sums[g] <= 0.0) {
                return 0.0;
            }
            inverse += 1.0 / sums[g];
        }
        return 1.0 / inverse;
    }

    /** Gets ready for {@link #squaredWith(double)} on one group. */
    void aim(int group) {
        trialGroup = group;
        int string = model.stringOfGroup[group];
        trialInverseRest = 0.0;
        for (int g : model.groupsOfString[string]) {
            if (g != group) {
                trialInverseRest += 1.0 / sums[g];
            }
        }
        for (int leg : model.legsOfString[string]) {
            double rest = 0.0;
            for (int s : model.stringsOfLeg[leg]) {
                if (s != string) {
                    rest += strings[s];
                }
            }
            trialLegRest[leg] = rest;
        }
    }

    /** {@link #squared()} as it would be with {@code farads} more in the group aimed at; nothing is changed. */
    double squaredWith(double farads) {
        int leg = trialLeg();
        if (leg >= 0 && model.signals.getFirst().kind() != UnbalanceSignal.Kind.TAP) {
            double before = legs[leg];
            legs[leg] = legWith(farads);
            double result = squared();
            legs[leg] = before;
            return result;
        }
        double before = sums[trialGroup];
        set(trialGroup, before + farads);
        double result = squared();
        set(trialGroup, before);
        return result;
    }

    /** The one leg that the group aimed at feeds; −1 where it feeds several. */
    int trialLeg() {
        int[] fed = model.legsOfString[model.stringOfGroup[trialGroup]];
        return fed.length == 1 ? fed[0] : -1;
    }

    /** Capacitance of {@link #trialLeg()} with {@code farads} more in the group aimed at [F]. */
    double legWith(double farads) {
        double group = sums[trialGroup] + farads;
        double string = trialInverseRest == 0.0 ? group : 1.0 / (trialInverseRest + 1.0 / group);
        return trialLegRest[trialLeg()] + string;
    }

    /** Square of the first signal, per unit. */
    double squared() {
        return squared(model.signals.getFirst().kind());
    }

    /** Square of a signal, per unit. */
    double squared(UnbalanceSignal.Kind kind) {
        double base = model.nameplateLegFarads;
        return switch (kind) {
            case NEUTRAL_VOLTS -> {
                phases();
                double total = phaseCapacitance[0] + phaseCapacitance[1] + phaseCapacitance[2];
                yield total > 0.0 ? rotating(phaseCapacitance) / (total * total) : 0.0;
            }
            case NEUTRAL_AMPERES -> {
                phases();
                yield rotating(phaseCapacitance) / (base * base);
            }
            case BETWEEN_NEUTRALS -> betweenNeutrals() / (base * base);
            case DIFFERENTIAL -> {
                for (int p = 0; p < 3; p++) {
                    phaseCapacitance[p] = legs[p] - legs[p + 3];
                }
                yield rotating(phaseCapacitance) / (base * base);
            }
            case BRIDGE -> bridge() / (base * base);
            case TAP -> {
                double tap = tap();
                yield tap * tap;
            }
            case LEG_DEVIATION -> legDeviation();
        };
    }

    /** Capacitance that each phase sees, into {@code phaseCapacitance}. */
    private void phases() {
        switch (model.connection) {
            case WYE_GROUNDED, WYE_UNGROUNDED, DELTA -> System.arraycopy(legs, 0, phaseCapacitance, 0, 3);
            case DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> {
                for (int p = 0; p < 3; p++) {
                    phaseCapacitance[p] = legs[p] + legs[p + 3];
                }
            }
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> {
                for (int p = 0; p < 3; p++) {
                    double upper = legs[4 * p] + legs[4 * p + 2];
                    double lower = legs[4 * p + 1] + legs[4 * p + 3];
                    phaseCapacitance[p] = upper + lower > 0.0 ? upper * lower / (upper + lower) : 0.0;
                }
            }
        }
    }

    /** {@code |a + b·e^{−j120°} + c·e^{+j120°}|²}. */
    private static double rotating(double[] c) {
        double ab = c[0] - c[1];
        double bc = c[1] - c[2];
        double ca = c[2] - c[0];
        return 0.5 * (ab * ab + bc * bc + ca * ca);
    }

    private double betweenNeutrals() {
        double[] c = legs;
        double first = c[0] + c[1] + c[2];
        double total = first + c[3] + c[4] + c[5];
        if (total <= 0.0) {
            return 0.0;
        }
        double share = first / total;
        phaseCapacitance[0] = c[0] - share * (c[0] + c[3]);
        phaseCapacitance[1] = c[1] - share * (c[1] + c[4]);
        phaseCapacitance[2] = c[2] - share * (c[2] + c[5]);
        return rotating(phaseCapacitance);
    }

    /** Square of the largest bridge current over ω and voltage to neutral: a capacitance squared [F²]. */
    private double bridge() {
        boolean floating = model.connection.hasFloatingNeutral();
        double shiftRe = 0.0;
        double shiftIm = 0.0;
        if (floating) {
            phases();
            double total = phaseCapacitance[0] + phaseCapacitance[1] + phaseCapacitance[2];
            if (total > 0.0) {
                shiftRe = (phaseCapacitance[0] - 0.5 * (phaseCapacitance[1] + phaseCapacitance[2])) / total;
                shiftIm = 0.5 * ROOT3 * (phaseCapacitance[2] - phaseCapacitance[1]) / total;
            }
        }
        double worst = 0.0;
        for (int p = 0; p < 3; p++) {
            double across = acrossBridge(p);
            double squared = across * across;
            if (floating) {
                double re = StageModel.COS[p] - shiftRe;
                double im = StageModel.SIN[p] - shiftIm;
                squared *= re * re + im * im;
            }
            worst = Math.max(worst, squared);
        }
        return worst;
    }

    /** {@code |C_ul·C_lr − C_ll·C_ur|/ΣC} of a phase [F]. */
    private double acrossBridge(int p) {
        double ul = legs[4 * p];
        double ll = legs[4 * p + 1];
        double ur = legs[4 * p + 2];
        double lr = legs[4 * p + 3];
        double all = ul + ll + ur + lr;
        return all > 0.0 ? Math.abs(ul * lr - ll * ur) / all : 0.0;
    }

    /** Voltage across phase {@code p} of a wye or bridge over the system's voltage to neutral; {@link #phases()} must have run. */
    private double phaseVolts(int p) {
        if (!model.connection.hasFloatingNeutral()) {
            return 1.0;
        }
        double total = phaseCapacitance[0] + phaseCapacitance[1] + phaseCapacitance[2];
        if (total <= 0.0) {
            return 1.0;
        }
        double re = 0.0;
        double im = 0.0;
        for (int q = 0; q < 3; q++) {
            re += phaseCapacitance[q] * StageModel.COS[q];
            im += phaseCapacitance[q] * StageModel.SIN[q];
        }
        return Math.hypot(StageModel.COS[p] - re / total, StageModel.SIN[p] - im / total);
    }

    /** Voltage across each leg over the system's voltage to neutral. */
    double[] legVolts() {
        double[] volts = new double[model.legCount];
        if (model.stage.hasThreePhaseUnits() || model.connection == Connection.DELTA) {
            boolean delta = model.connection == Connection.DELTA;
            Arrays.fill(volts, delta ? ROOT3 : 1.0);
            return volts;
        }
        phases();
        for (int leg = 0; leg < volts.length; leg++) {
            int p = model.phaseOf(leg);
            volts[leg] = phaseVolts(p);
            if (model.connection.isBridge()) {
                double upper = legs[4 * p] + legs[4 * p + 2];
                double lower = legs[4 * p + 1] + legs[4 * p + 3];
                boolean isUpper = leg % 2 == 0;
                if (upper + lower > 0.0) {
                    volts[leg] *= (isUpper ? lower : upper) / (upper + lower);
                }
            }
        }
        return volts;
    }

    /** Tap against its share, worst leg, over the system's voltage to neutral; 1 where a watched string is open. */
    private double tap() {
        double worst = 0.0;
        double[] volts = legVolts();
        if (model.connection.isBridge()) {
            for (int p = 0; p < 3; p++) {
                worst = Math.max(worst, 0.5 * Math.abs(volts[4 * p] - volts[4 * p + 1]));
            }
            return worst;
        }
        for (int leg = 0; leg < model.legCount; leg++) {
            int string = model.stringsOfLeg[leg][0];
            int[] groups = model.groupsOfString[string];
            if (strings[string] <= 0.0) {
                return 1.0;
            }
            double below = 0.0;
            for (int i = model.groupsAboveTap[leg]; i < groups.length; i++) {
                below += strings[string] / sums[groups[i]];
            }
            double share = (groups.length - model.groupsAboveTap[leg]) / (double) groups.length;
            worst = Math.max(worst, volts[leg] * Math.abs(below - share));
        }
        return worst;
    }

    private double legDeviation() {
        double mean = 0.0;
        for (double c : legs) {
            mean += c / legs.length;
        }
        double worst = 0.0;
        for (double c : legs) {
            worst = Math.max(worst, Math.abs(c - mean));
        }
        return mean > 0.0 ? worst * worst / (mean * mean) : 0.0;
    }

    /** Highest voltage on any unit over its rated voltage, at the highest voltage of the system. */
    double highestUnitPerRated() {
        double worst = 0.0;
        double[] volts = legVolts();
        for (int leg = 0; leg < model.legCount; leg++) {
            for (int string : model.stringsOfLeg[leg]) {
                for (int g : model.groupsOfString[string]) {
                    if (sums[g] > 0.0 && strings[string] > 0.0) {
                        worst = Math.max(worst, volts[leg] * strings[string] / sums[g]);
                    }
                }
            }
        }
        return worst / model.ratedPerPhaseVolts;
    }

    /** How far limits are broken: the sum of what lies above the voltage limit and above each alarm, as parts of those; 0 where all are kept. */
    double excess() {
        double excess =
                model.voltageIsHopeless ? 0.0 : Math.max(0.0, highestUnitPerRated() / FitLimits.VOLTS_PER_RATED - 1.0);
        for (UnbalanceSignal signal : model.signals) {
            if (Double.isFinite(signal.alarmPerUnit())) {
                double seen = Math.sqrt(squared(signal.kind())) * model.highestPerNominal * model.rise(signal.kind());
                excess += Math.max(0.0, seen / signal.alarmPerUnit() - 1.0);
            }
        }
        return excess < FitLimits.ROUNDING ? 0.0 : excess;
    }
}
