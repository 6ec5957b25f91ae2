package org.varwright.fit;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How a stage could run on short of units until spares come.
 *
 * @param stage name of the stage
 * @param missing positions for which there is no spare
 * @param options ways to run on, the recommended one first; empty where none was found
 * @param recommended whether the first option keeps every limit; if not, the stage stays off
 * @param search what was tried, in words
 */
public record RunOn(String stage, int missing, List<Option> options, boolean recommended, String search) {
    public RunOn {
        options = List.copyOf(options);
    }

    /**
     * One way.
     *
     * @param title in a few words
     * @param empty positions left empty
     * @param moves lifts of this stage, the condemned units included
     * @param varsLost reactive power less than with every position filled, by the nameplates at rated voltage [var]
     * @param limitsKept whether every unit's voltage stays inside its limit and every sensor below its alarm
     * @param highestUnitVoltagePerRated at the highest voltage of the system
     * @param signal what the unbalance is called
     * @param signalPrimary the unbalance at nominal voltage [V] or [A]; of a stage without a sensor a part of one
     * @param signalUnit {@code V}, {@code A} or empty
     * @param settings that go with it; empty where the stage has no sensor
     */
    public record Option(
            String title,
            List<String> empty,
            List<Move> moves,
            double varsLost,
            boolean limitsKept,
            double highestUnitVoltagePerRated,
            String signal,
            double signalPrimary,
            String signalUnit,
            Optional<Settings> settings) {
        public Option {
            empty = List.copyOf(empty);
            moves = List.copyOf(moves);
        }
    }

    /**
     * Settings for the bank short of units, as primary values.
     *
     * @param alarmPrimary half way from the standing unbalance to the least that units more make of it, where that is more [V] or [A]; empty where none is
     * @param tripPrimary between the last state that keeps the voltage limit and the first that does not; empty where no count breaks it, or none that can be seen
     * @param alarmSecondary the same at the relay; empty where the file gives no ratio
     * @param tripSecondary the same at the relay
     * @param presentAlarmSuits whether the present alarm lies above the standing unbalance and below the next failure's
     * @param unseen legs of which one unit more makes the reading fall, or leaves it as it is
     * @param untripped legs in which units can be lost until the voltage limit is broken while the reading is no more than it is now
     */
    public record Settings(
            OptionalDouble alarmPrimary,
            OptionalDouble tripPrimary,
            OptionalDouble alarmSecondary,
            OptionalDouble tripSecondary,
            boolean presentAlarmSuits,
            List<String> unseen,
            List<String> untripped) {
        public Settings {
            unseen = List.copyOf(unseen);
            untripped = List.copyOf(untripped);
        }
    }
}
