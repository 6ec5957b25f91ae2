package org.varwright.network;

import org.varwright.bank.UnitPosition;

/** One thing that is wrong with the bank. */
public sealed interface Failure {
    /** What it is, in the words of the bank file and of the JSON: {@code unit-out}, {@code sections-shorted:2} … */
    default String kind() {
        return switch (this) {
            case UnitOut f -> "unit-out";
            case SectionsShorted f -> "sections-shorted:" + f.sections();
            case ElementsOut f -> "elements-out:" + f.elements();
            case UnitShorted f -> "unit-shorted";
            case PhaseOpen f -> "phase-open";
        };
    }

    /** Where it is: a position, or stage and phase. */
    default String where() {
        return switch (this) {
            case UnitOut f -> f.at().name();
            case SectionsShorted f -> f.at().name();
            case ElementsOut f -> f.at().name();
            case UnitShorted f -> f.at().name();
            case PhaseOpen f -> f.stage() + " phase " + f.phase();
        };
    }

    /** A failure of a whole single-phase unit or of one leg inside a three-phase unit. */
    sealed interface OfBranch extends Failure {
        UnitBranch at();
    }

    /**
     * The unit's fuse has operated, or the unit has been lifted; of a three-phase unit one leg.
     *
     * @param at the branch that is gone
     */
    record UnitOut(UnitBranch at) implements OfBranch {
        public UnitOut(UnitPosition at) {
            this(UnitBranch.of(at));
        }
    }

    /**
     * Some of the sections inside the unit are shorted.
     *
     * @param at the branch
     * @param sections how many, 1 or more; all of them shorts the unit
     */
    record SectionsShorted(UnitBranch at, int sections) implements OfBranch {
        public SectionsShorted(UnitPosition at, int sections) {
            this(UnitBranch.of(at), sections);
        }
    }

    /**
     * Some element fuses in one section have operated.
     *
     * @param at the branch
     * @param elements how many, 1 or more; all of them opens the unit
     */
    record ElementsOut(UnitBranch at, int elements) implements OfBranch {
        public ElementsOut(UnitPosition at, int elements) {
            this(UnitBranch.of(at), elements);
        }
    }

    /**
     * The unit is a short circuit and its fuse, if it has one, has not operated.
     *
     * @param at the branch
     */
    record UnitShorted(UnitBranch at) implements OfBranch {
        public UnitShorted(UnitPosition at) {
            this(UnitBranch.of(at));
        }
    }

    /**
     * No connection from the bus to one phase of a stage: a bank fuse has operated, or a switch pole did not close.
     *
     * @param stage name of the stage
     * @param phase {@code A}, {@code B} or {@code C}
     */
    record PhaseOpen(String stage, String phase) implements Failure {}
}
