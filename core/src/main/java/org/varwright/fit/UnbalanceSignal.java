package org.varwright.fit;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;

/**
 * What "unbalance" means at a stage.
 *
 * @param kind what is computed from the legs
 * @param alarmPerUnit primary value of the alarm over the kind's base; infinite where there is none
 * @param words what it is called in text
 */
record UnbalanceSignal(Kind kind, double alarmPerUnit, String words) {
    /** Kinds, each as a multiple of its base: system voltage to neutral, or the current of one leg as on the nameplates. */
    enum Kind {
        /** Voltage of the floating neutral. */
        NEUTRAL_VOLTS,
        /** Sum of all leg currents. */
        NEUTRAL_AMPERES,
        /** Between the neutrals of an ungrounded double wye. */
        BETWEEN_NEUTRALS,
        /** First wye's neutral current less the second's. */
        DIFFERENTIAL,
        /** Across the middle of a bridge, worst phase. */
        BRIDGE,
        /** Voltage of a tap against its share of the leg's, worst leg. */
        TAP,
        /** Largest deviation of a leg's capacitance from the mean of all legs: for stages that nothing watches. */
        LEG_DEVIATION
    }

    /** Every signal of the stage: those of its sensors in the order of the file, or one that stands in where there is no sensor. */
    static List<UnbalanceSignal> of(Bank bank, Stage stage) {
        List<UnbalanceSignal> signals = bank.protection().stream()
                .filter(p -> p.stage().equals(stage.name()))
                .map(p -> of(bank, stage, p))
                .toList();
        if (!signals.isEmpty()) {
            return signals;
        }
        Kind kind = standIn(stage);
        return List.of(new UnbalanceSignal(kind, Double.POSITIVE_INFINITY, words(kind) + " (no sensor)"));
    }

    private static Kind standIn(Stage stage) {
        if (stage.hasThreePhaseUnits()) {
            return Kind.LEG_DEVIATION;
        }
        return switch (stage.connection()) {
            case WYE_UNGROUNDED -> Kind.NEUTRAL_VOLTS;
            case DOUBLE_WYE_UNGROUNDED -> Kind.BETWEEN_NEUTRALS;
            case DOUBLE_WYE_GROUNDED -> Kind.DIFFERENTIAL;
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> Kind.BRIDGE;
            case WYE_GROUNDED, DELTA -> Kind.LEG_DEVIATION;
        };
    }

    private static UnbalanceSignal of(Bank bank, Stage stage, Protection protection) {
        Kind kind = switch (protection.senses()) {
            case NEUTRAL_VOLTAGE -> Kind.NEUTRAL_VOLTS;
            case NEUTRAL_CURRENT ->
                stage.connection() == Connection.DOUBLE_WYE_UNGROUNDED ? Kind.BETWEEN_NEUTRALS : Kind.NEUTRAL_AMPERES;
            case NEUTRAL_DIFFERENTIAL -> Kind.DIFFERENTIAL;
            case BRIDGE_CURRENT -> Kind.BRIDGE;
            case PHASE_VOLTAGE -> Kind.TAP;
        };
        double alarm = Balance.alarmPrimary(protection).orElse(Double.POSITIVE_INFINITY);
        return new UnbalanceSignal(
                kind, alarm / base(bank, stage, kind), protection.senses().code());
    }

    /** What a per-unit value of this kind is a multiple of [V or A, or 1 for a deviation]. */
    static double base(Bank bank, Stage stage, Kind kind) {
        return switch (kind) {
            case NEUTRAL_VOLTS, TAP -> bank.system().phaseVolts();
            case NEUTRAL_AMPERES, BETWEEN_NEUTRALS, DIFFERENTIAL, BRIDGE ->
                bank.system().angularFrequency() * bank.system().phaseVolts() * StageModel.nameplateLegFarads(stage);
            case LEG_DEVIATION -> 1.0;
        };
    }

    private static String words(Kind kind) {
        return switch (kind) {
            case NEUTRAL_VOLTS -> "neutral voltage over phase voltage";
            case NEUTRAL_AMPERES -> "neutral current over leg current";
            case BETWEEN_NEUTRALS -> "current between neutrals over leg current";
            case DIFFERENTIAL -> "difference of neutral currents over leg current";
            case BRIDGE -> "bridge current over leg current";
            case TAP -> "tap voltage over phase voltage";
            case LEG_DEVIATION -> "largest deviation of a leg from the mean";
        };
    }
}
