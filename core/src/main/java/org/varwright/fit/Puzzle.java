package org.varwright.fit;

import java.util.List;
import org.varwright.bank.Spare;

/**
 * The fit as numbers: groups with what stays in them, open places, units that may move, spares. Units of the same capacitance in the same group are one
 * class, so are spares of the same type and capacitance: which of them is taken makes no difference, the first by name is.
 *
 * <ul>
 * <li>{@code stages}: in play
 * <li>{@code stageOf}: [group] its stage
 * <li>{@code localOf}: [group] its number within the stage
 * <li>{@code kept}: [group] capacitance of all units that stay unless moved [F]
 * <li>{@code open}: [group] places to be filled
 * <li>{@code movables}: units that may move, by class, in order of position
 * <li>{@code shelf}: spares, by class, in order of serial number
 * </ul>
 */
final class Puzzle {
    private final List<StageModel> stages;
    private final int[] stageOf;
    private final int[] localOf;
    private final double[] kept;
    private final int[] open;
    private final List<Movable> movables;
    private final List<Shelf> shelf;

    Puzzle(
            List<StageModel> stages,
            int[] stageOf,
            int[] localOf,
            double[] kept,
            int[] open,
            List<Movable> movables,
            List<Shelf> shelf) {
        this.stages = stages;
        this.stageOf = stageOf;
        this.localOf = localOf;
        this.kept = kept;
        this.open = open;
        this.movables = movables;
        this.shelf = shelf;
    }

    List<StageModel> stages() {
        return stages;
    }

    int[] stageOf() {
        return stageOf;
    }

    int[] localOf() {
        return localOf;
    }

    double[] kept() {
        return kept;
    }

    int[] open() {
        return open;
    }

    List<Movable> movables() {
        return movables;
    }

    List<Shelf> shelf() {
        return shelf;
    }

    /**
     * Units of the same capacitance in the same group.
     *
     * <ul>
     * <li>{@code group}: where they are
     * <li>{@code farads}: of each [F]
     * <li>{@code members}: in order of position
     * <li>{@code fits}: [stage] whether they may go there
     * </ul>
     */
    static final class Movable {
        private final int group;
        private final double farads;
        private final List<Fitted> members;
        private final boolean[] fits;

        Movable(int group, double farads, List<Fitted> members, boolean[] fits) {
            this.group = group;
            this.farads = farads;
            this.members = members;
            this.fits = fits;
        }

        int group() {
            return group;
        }

        double farads() {
            return farads;
        }

        List<Fitted> members() {
            return members;
        }

        boolean[] fits() {
            return fits;
        }
    }

    /**
     * Spares of the same type and capacitance.
     *
     * <ul>
     * <li>{@code farads}: of each [F]
     * <li>{@code members}: in order of serial number
     * <li>{@code fits}: [stage] whether they may go there
     * </ul>
     */
    static final class Shelf {
        private final double farads;
        private final List<Spare> members;
        private final boolean[] fits;

        Shelf(double farads, List<Spare> members, boolean[] fits) {
            this.farads = farads;
            this.members = members;
            this.fits = fits;
        }

        double farads() {
            return farads;
        }

        List<Spare> members() {
            return members;
        }

        boolean[] fits() {
            return fits;
        }
    }

    int groupCount() {
        return kept.length;
    }

    int openPlaces() {
        int sum = 0;
        for (int o : open) {
            sum += o;
        }
        return sum;
    }

    int spares() {
        return shelf.stream().mapToInt(s -> s.members().size()).sum();
    }

    /** Fresh states of all stages with what stays. */
    StageState[] states() {
        StageState[] states = new StageState[stages.size()];
        for (int s = 0; s < states.length; s++) {
            double[] sums = new double[stages.get(s).groupCount];
            for (int g = 0; g < kept.length; g++) {
                if (stageOf[g] == s) {
                    sums[localOf[g]] = kept[g];
                }
            }
            states[s] = new StageState(stages.get(s), sums);
        }
        return states;
    }
}
