package org.varwright.discharge;

import java.util.OptionalDouble;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;

/**
 * How one stage discharges once it is open.
 *
 * @param stage of the bank
 * @param capacitanceFarads largest that one of its units may have: measured, else the upper tolerance (one leg of a three-phase unit) [F]
 * @param capacitanceFrom where that comes from, in words
 * @param resistance at the slow end
 * @param opening what opening leaves on a unit
 * @param chosen rule of the bank's standard
 * @param other rule of the other standard
 * @param chosenSeconds computed time to the chosen rule's voltage [s]; empty where the resistance is not known
 * @param otherSeconds computed time to the other rule's voltage [s]; likewise
 * @param shortedSectionSeconds computed time to the chosen rule's voltage of a unit with one section shorted [s]; empty where not known
 * @param waitSeconds the minimum wait [s]
 * @param waitBasis how it came about (DIS-5)
 * @param unitPeakJoules energy of one unit at worst [J]
 * @param unitEndJoules energy of one unit at the end of the wait [J]; the peak's where the resistance is not known
 * @param stagePeakJoules energy of the stage at the peak [J]
 * @param stageEndJoules energy of the stage at the end of the wait [J]
 * @param endVolts voltage of a unit at the end of the wait [V]; the initial one where the resistance is not known
 * @param betweenConductorsVolts highest voltage between two conductors of the stage at the end of the wait [V]
 * @param absorptionVolts voltage that may come back after a short is taken off [V] (DIS-9)
 * @param openResistorVolts what a unit with an open resistor holds at the end of the wait [V] (DIS-8)
 * @param hiddenVolts what a series group holds while the conductors at its ends read 0 V [V]; empty without groups in series (DIS-8)
 * @param residualPercent what is left of the peak after the control's reclosing delay [%]; empty where delay or resistance is not known
 * @param recloseSeconds shortest delay before the stage may be switched on again [s]; empty where the resistance is not known
 * @param stickNeeded what stick serves
 */
public record StageDischarge(
        Stage stage,
        double capacitanceFarads,
        String capacitanceFrom,
        Resistance resistance,
        Opening opening,
        DischargeRule chosen,
        DischargeRule other,
        OptionalDouble chosenSeconds,
        OptionalDouble otherSeconds,
        OptionalDouble shortedSectionSeconds,
        double waitSeconds,
        Basis waitBasis,
        double unitPeakJoules,
        double unitEndJoules,
        double stagePeakJoules,
        double stageEndJoules,
        double endVolts,
        double betweenConductorsVolts,
        double absorptionVolts,
        double openResistorVolts,
        OptionalDouble hiddenVolts,
        OptionalDouble residualPercent,
        OptionalDouble recloseSeconds,
        Stick.Needed stickNeeded) {

    /** One leg as a stick or a winding meets it: by the largest capacitance, which need not be that of the slowest unit. */
    LegCharge legCharge() {
        int legs = stage.hasThreePhaseUnits() ? 3 : 1;
        double volts = opening.initialVolts();
        return LegCharge.of(stage, 2.0 * unitPeakJoules / (legs * volts * volts), opening);
    }

    /** Whether a time can be computed at all. */
    public boolean isKnown() {
        return resistance instanceof Resistance.Known;
    }

    /** Voltage of a unit after so many seconds [V]; empty where the resistance is not known. */
    public OptionalDouble voltsAfter(double seconds) {
        return switch (resistance) {
            case Resistance.Known known ->
                OptionalDouble.of(Decay.voltsAfter(capacitanceFarads, known.ohms(), opening.initialVolts(), seconds));
            case Resistance.NotKnown ignored -> OptionalDouble.empty();
        };
    }

    /** Time constant of a unit [s]; empty where the resistance is not known. */
    public OptionalDouble timeConstantSeconds() {
        return resistance instanceof Resistance.Known known
                ? OptionalDouble.of(known.ohms() * capacitanceFarads)
                : OptionalDouble.empty();
    }

    /** Highest voltage when the stage is switched on after the control's reclosing delay at the worst moment, as a multiple of peak, undamped (DIS-7). */
    public OptionalDouble reclosePerPeak() {
        return residualPercent.isPresent()
                ? OptionalDouble.of(2.0 + residualPercent.getAsDouble() / 100.0)
                : OptionalDouble.empty();
    }
}
