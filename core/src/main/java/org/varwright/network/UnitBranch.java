package org.varwright.network;

import org.varwright.bank.UnitPosition;

/**
 * One capacitive branch of the bank: a single-phase unit, or one leg inside a three-phase unit.
 *
 * @param at position of the unit
 * @param leg leg inside a three-phase unit, such as {@code AB}; empty for a single-phase unit
 */
public record UnitBranch(UnitPosition at, String leg) {
    /** The branch of a single-phase unit. */
    public static UnitBranch of(UnitPosition at) {
        return new UnitBranch(at, "");
    }

    /** Position, and where the unit is a three-phase one, the leg inside it. */
    public String name() {
        return leg.isEmpty() ? at.name() : at.name() + " leg " + leg;
    }

    /** Leg of the stage that the branch is part of. */
    public String stageLeg() {
        return leg.isEmpty() ? at.leg() : leg;
    }
}
