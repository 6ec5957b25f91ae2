package org.varwright.network;

import java.util.List;
import java.util.Optional;
import org.varwright.bank.Protection;
import org.varwright.quantity.Complex;

/** What came of solving the network. Phasors are rms; angles are against phase A of the supply. */
public sealed interface Solution {
    /**
     * Every voltage and current.
     *
     * @param units in order of positions
     * @param groups in order of legs, strings, groups
     * @param legs in order
     * @param lines current of each phase of each stage
     * @param neutrals reachable neutrals
     * @param stages reactive power
     * @param sensors in order of the file, phase by phase where one watches each phase
     */
    record Solved(
            List<UnitValue> units,
            List<GroupValue> groups,
            List<LegValue> legs,
            List<LineValue> lines,
            List<NeutralValue> neutrals,
            List<StageValue> stages,
            List<SensorValue> sensors)
            implements Solution {
        public Solved {
            units = List.copyOf(units);
            groups = List.copyOf(groups);
            legs = List.copyOf(legs);
            lines = List.copyOf(lines);
            neutrals = List.copyOf(neutrals);
            stages = List.copyOf(stages);
            sensors = List.copyOf(sensors);
        }

        /** The value of one branch; empty where it is in none of the stages solved. */
        public Optional<UnitValue> unit(UnitBranch unit) {
            return units.stream().filter(u -> u.unit().equals(unit)).findFirst();
        }

        /** The leg of a stage. */
        public Optional<LegValue> leg(String stage, String leg) {
            return legs.stream()
                    .filter(l -> l.stage().equals(stage) && l.leg().equals(leg))
                    .findFirst();
        }

        /** The current of one phase of a stage. */
        public Optional<LineValue> line(String stage, String phase) {
            return lines.stream()
                    .filter(l -> l.stage().equals(stage) && l.phase().equals(phase))
                    .findFirst();
        }

        /** Highest voltage on any unit that is in service, as a multiple of its rated voltage. */
        public double highestUnitPerRated() {
            return units.stream()
                    .filter(UnitValue::inService)
                    .mapToDouble(UnitValue::voltsPerRated)
                    .max()
                    .orElse(0.0);
        }

        /** Highest voltage on any section of any unit in service, as a multiple of its share of the rated voltage. */
        public double highestSectionPerRated() {
            return units.stream().mapToDouble(UnitValue::sectionPerRated).max().orElse(0.0);
        }

        /** Highest voltage of any group with a unit in service, as a multiple of what it was before the failures. */
        public double highestGroupPerHealthy() {
            return groups.stream()
                    .filter(GroupValue::inService)
                    .mapToDouble(GroupValue::perHealthy)
                    .max()
                    .orElse(0.0);
        }
    }

    /**
     * No unique answer: some part of the bank floats, is in resonance, or is a short circuit across a source without impedance.
     *
     * @param reason in words
     */
    record Singular(String reason) implements Solution {}

    /**
     * One capacitive branch.
     *
     * @param unit which
     * @param volts across it [V]
     * @param amperes through it [A], from the line end; of several shorted units in one group, the first carries all
     * @param farads capacitance as it is now; 0 where it is out, and what it was where it is shorted
     * @param voltsPerRated over rated voltage
     * @param sectionPerRated worst section over its share of rated voltage; 0 where it is out or shorted
     * @param inService whether it is neither out nor shorted
     */
    record UnitValue(
            UnitBranch unit,
            Complex volts,
            Complex amperes,
            double farads,
            double voltsPerRated,
            double sectionPerRated,
            boolean inService) {}

    /**
     * One group of units in parallel.
     *
     * @param stage name of the stage
     * @param leg name of the leg
     * @param string 1-based
     * @param group 1-based from the line end
     * @param volts across it [V]
     * @param perHealthy over its voltage without failures
     * @param perRated over the rated voltage of its units
     * @param inService whether any unit in it is neither out nor shorted
     */
    record GroupValue(
            String stage,
            String leg,
            int string,
            int group,
            Complex volts,
            double perHealthy,
            double perRated,
            boolean inService) {}

    /**
     * One leg.
     *
     * @param stage name of the stage
     * @param leg name of the leg
     * @param volts across its capacitors [V]; of three-phase units with their own star points, the first unit's
     * @param amperes through it [A], from the line end
     */
    record LegValue(String stage, String leg, Complex volts, Complex amperes) {}

    /**
     * Current from the bus into one phase of a stage.
     *
     * @param stage name of the stage
     * @param phase {@code A}, {@code B} or {@code C}
     * @param amperes [A]
     * @param volts from ground to the stage's side of the switch pole and reactor [V]
     */
    record LineValue(String stage, String phase, Complex amperes, Complex volts) {}

    /**
     * One neutral that can be reached.
     *
     * @param stage name of the stage
     * @param number 1, or 2 for the second wye
     * @param volts to ground [V]
     * @param amperes to ground, or of an ungrounded double wye from the first to the second neutral (given at the first) [A]
     */
    record NeutralValue(String stage, int number, Complex volts, Complex amperes) {}

    /**
     * A stage.
     *
     * @param stage its name
     * @param vars reactive power that it gives the bus [var]
     */
    record StageValue(String stage, double vars) {}

    /**
     * What a sensor sees.
     *
     * @param stage name of the stage
     * @param senses what it measures
     * @param place phase or leg where there is one each; empty where there is one a stage
     * @param primary [V] or [A]
     * @param secondary at the relay; empty where the file gives no ratio
     */
    record SensorValue(
            String stage, Protection.Senses senses, String place, Complex primary, Optional<Complex> secondary) {
        /** Such as {@code rack neutral-current} or {@code F bridge-current A}. */
        public String name() {
            return stage + " " + senses.code() + (place.isEmpty() ? "" : " " + place);
        }
    }
}
