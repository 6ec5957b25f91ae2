package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.Construction;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.Spare;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitType;
import org.varwright.quantity.Dimension;

/** Whether a unit may stand in a stage's place: by its nameplate and, where measured, its capacitance (FIT-1). */
final class Compatibility {
    private Compatibility() {}

    /** Why the spare must not go into the stage, in one sentence; empty where it may. */
    static Optional<String> reason(Bank bank, Stage stage, Spare spare) {
        return typeReason(bank, stage, spare.unit()).or(() -> measuredReason(spare));
    }

    /** Why units of that type must not go into the stage, in one sentence; empty where they may. */
    static Optional<String> typeReason(Bank bank, Stage stage, UnitType type) {
        UnitType wanted = stage.unit();
        if (!type.threePhase().equals(wanted.threePhase())) {
            return Optional.of(phases(type) + " where " + stage.name() + " takes a " + phases(wanted));
        }
        if (!same(type.ratedHertz(), wanted.ratedHertz(), 1e-6)) {
            return Optional.of("rated for " + Dimension.FREQUENCY.format(type.ratedHertz()) + ", not "
                    + Dimension.FREQUENCY.format(wanted.ratedHertz()) + "; " + inPlace(bank, stage, type));
        }
        if (!same(type.ratedVolts(), wanted.ratedVolts(), FitLimits.SAME_VOLTS)) {
            return Optional.of("rated " + Dimension.VOLTAGE.format(type.ratedVolts()) + ", not "
                    + Dimension.VOLTAGE.format(wanted.ratedVolts()) + "; " + inPlace(bank, stage, type));
        }
        if (!same(type.capacitanceFarads(), wanted.capacitanceFarads(), FitLimits.SAME_FARADS)) {
            return Optional.of("rated " + Dimension.REACTIVE_POWER.format(type.ratedVars()) + ", not "
                    + Dimension.REACTIVE_POWER.format(wanted.ratedVars()) + "; " + inPlace(bank, stage, type));
        }
        if (type.bushings().isPresent()
                && wanted.bushings().isPresent()
                && type.bushings().getAsInt() != wanted.bushings().getAsInt()) {
            return Optional.of(type.bushings().getAsInt() + " insulated bushing"
                    + (type.bushings().getAsInt() == 1 ? "" : "s") + " where "
                    + wanted.bushings().getAsInt() + " are needed");
        }
        if (type.bilVolts().isPresent()
                && wanted.bilVolts().isPresent()
                && type.bilVolts().getAsDouble() < wanted.bilVolts().getAsDouble()) {
            return Optional.of("BIL " + Dimension.VOLTAGE.format(type.bilVolts().getAsDouble()) + ", at least "
                    + Dimension.VOLTAGE.format(wanted.bilVolts().getAsDouble()) + " is needed");
        }
        Optional<Boolean> has = type.construction().map(Construction::internallyFused);
        Optional<Boolean> needs = wanted.construction().map(Construction::internallyFused);
        if (has.isPresent() && needs.isPresent() && !has.equals(needs)) {
            return Optional.of(
                    has.get()
                            ? "has internal element fuses, the units of " + stage.name() + " have none"
                            : "has no internal element fuses, the units of " + stage.name() + " have");
        }
        return Optional.empty();
    }

    private static Optional<String> measuredReason(Spare spare) {
        if (spare.capacitanceFarads().isEmpty()) {
            return Optional.empty();
        }
        UnitType type = spare.unit();
        double deviation = spare.capacitanceFarads().getAsDouble() / type.capacitanceFarads() - 1.0;
        if (deviation >= type.tolerance().low() - 1e-9
                && deviation <= type.tolerance().high() + 1e-9) {
            return Optional.empty();
        }
        return Optional.of("measured "
                + Dimension.CAPACITANCE.format(spare.capacitanceFarads().getAsDouble()) + ", "
                + percent(deviation) + " on its nameplate's "
                + Dimension.CAPACITANCE.format(type.capacitanceFarads()) + ", outside "
                + percent(type.tolerance().low()) + " to "
                + percent(type.tolerance().high())
                + ": a section may be shorted; measure it again");
    }

    /**
     * What a type would do in the place: {@code Q = Q_r·(V/V_r)²·f/f_r}, current {@code V·ωC}, voltage over rated (FIT-1).
     *
     * <p><b>Source.</b> First principles.
     */
    private static String inPlace(Bank bank, Stage stage, UnitType type) {
        double volts = unitVolts(bank, stage);
        double omega = bank.system().angularFrequency();
        double phases = type.threePhase().isPresent() ? 3.0 : 1.0;
        double amperes = volts * omega * type.capacitanceFarads();
        double wantedAmperes = volts * omega * stage.unit().capacitanceFarads();
        return "in this place it would carry " + Dimension.CURRENT.format(amperes) + " and give "
                + Dimension.REACTIVE_POWER.format(phases * volts * amperes) + " instead of "
                + Dimension.CURRENT.format(wantedAmperes) + " and "
                + Dimension.REACTIVE_POWER.format(phases * volts * wantedAmperes) + ", at "
                + Dimension.digits(volts / type.legVolts(), 4) + " times its rated voltage";
    }

    /** Voltage across a healthy unit of the stage at nominal system voltage [V]. */
    static double unitVolts(Bank bank, Stage stage) {
        double phase = bank.system().phaseVolts();
        double leg = switch (stage.connection()) {
            case DELTA -> bank.system().nominalVolts();
            case WYE_GROUNDED, WYE_UNGROUNDED, DOUBLE_WYE_GROUNDED, DOUBLE_WYE_UNGROUNDED -> phase;
            case BRIDGE_GROUNDED, BRIDGE_UNGROUNDED -> phase / 2.0;
        };
        return leg / stage.layout().groups();
    }

    /** What to look at before such a unit is lifted in; empty where nothing differs. */
    static List<String> cautions(Stage stage, UnitType type) {
        UnitType wanted = stage.unit();
        List<String> cautions = new ArrayList<>();
        if (type.massKilograms().isPresent()
                && wanted.massKilograms().isPresent()
                && type.massKilograms().getAsDouble()
                        > wanted.massKilograms().getAsDouble() * (1.0 + FitLimits.HEAVIER)) {
            cautions.add("weighs " + Dimension.MASS.format(type.massKilograms().getAsDouble()) + " where "
                    + Dimension.MASS.format(wanted.massKilograms().getAsDouble())
                    + " stood: rack and lifting gear must take it");
        }
        if (slower(type, wanted)) {
            cautions.add("discharges more slowly than the units of " + stage.name()
                    + ": the waiting time of the whole stage becomes the slower one's");
        }
        if (!type.name().equals(wanted.name())) {
            List<String> silent = new ArrayList<>();
            if (type.bushings().isEmpty() || wanted.bushings().isEmpty()) {
                silent.add("bushings");
            }
            if (type.bilVolts().isEmpty() || wanted.bilVolts().isEmpty()) {
                silent.add("BIL");
            }
            if (type.construction().isEmpty() || wanted.construction().isEmpty()) {
                silent.add("element fuses");
            }
            if (type.discharge().isEmpty() || wanted.discharge().isEmpty()) {
                silent.add("discharge resistor");
            }
            if (!silent.isEmpty()) {
                cautions.add(
                        "the files don't say whether these agree, read both nameplates: " + String.join(", ", silent));
            }
        }
        return cautions;
    }

    private static boolean slower(UnitType type, UnitType wanted) {
        return type.discharge().isPresent()
                && wanted.discharge().isPresent()
                && resistance(type.discharge().get(), type) * type.capacitanceFarads()
                        > 1.02 * resistance(wanted.discharge().get(), wanted) * wanted.capacitanceFarads();
    }

    private static double resistance(DischargeDevice device, UnitType type) {
        return switch (device) {
            case DischargeDevice.Resistor r -> r.ohms();
            case DischargeDevice.Rated r ->
                r.seconds() / (type.capacitanceFarads() * Math.log(Math.sqrt(2.0) * type.ratedVolts() / r.volts()));
        };
    }

    private static String phases(UnitType type) {
        return type.threePhase()
                .map(c -> "three-phase unit, joined inside in "
                        + (c == org.varwright.bank.InternalConnection.DELTA ? "delta" : "wye"))
                .orElse("single-phase unit");
    }

    private static boolean same(double a, double b, double part) {
        return Math.abs(a - b) <= part * Math.max(Math.abs(a), Math.abs(b));
    }

    static String percent(double part) {
        double rounded = Math.rint(1000.0 * part) / 10.0;
        return (rounded == 0.0 ? "0.0" : String.format(Locale.ROOT, "%+.1f", rounded)) + " %";
    }
}
