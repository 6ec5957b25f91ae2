package org.varwright.network;

import java.util.Optional;
import org.varwright.bank.Construction;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * What is left of one branch.
 *
 * @param out gone altogether
 * @param shorted a short circuit
 * @param sectionsShorted sections shorted, fewer than there are
 * @param elementsOut element fuses operated in one section, fewer than there are elements
 */
record UnitState(boolean out, boolean shorted, int sectionsShorted, int elementsOut) {
    static final UnitState HEALTHY = new UnitState(false, false, 0, 0);

    UnitState and(Failure.OfBranch failure, UnitType type) {
        return switch (failure) {
            case Failure.UnitOut f -> new UnitState(true, shorted, sectionsShorted, elementsOut);
            case Failure.UnitShorted f -> new UnitState(out, true, sectionsShorted, elementsOut);
            case Failure.SectionsShorted f -> {
                int k = sectionsShorted + positive(f, f.sections());
                yield k >= construction(f, type).sections()
                        ? new UnitState(out, true, 0, 0)
                        : new UnitState(out, shorted, k, elementsOut);
            }
            case Failure.ElementsOut f -> {
                int n = elementsOut + positive(f, f.elements());
                yield n >= construction(f, type).elements()
                        ? new UnitState(true, shorted, 0, 0)
                        : new UnitState(out, shorted, sectionsShorted, n);
            }
        };
    }

    /**
     * Capacitance as a multiple of healthy.
     *
     * <p><b>Model.</b> {@code s} sections of {@code p} elements in series, {@code k} shorted, {@code n} elements out in one of the others:
     * {@code s(p−n)/((s−k−1)(p−n)+p)} (NET-3); with n = 0 {@code s/(s−k)}, with k = 0 {@code s(p−n)/(s(p−n)+n)}.
     */
    double capacitanceFactor(Optional<Construction> construction) {
        if (out) {
            return 0.0;
        }
        if (construction.isEmpty() || (sectionsShorted == 0 && elementsOut == 0)) {
            return 1.0;
        }
        double s = construction.get().sections();
        double p = construction.get().elements();
        double left = p - elementsOut;
        return s * left / ((s - sectionsShorted - 1.0) * left + p);
    }

    /** Voltage of the worst section over its share of the unit's voltage when healthy: {@code s·p/((s−k−1)(p−n)+p)} (NET-4); 0 where none is left. */
    double sectionFactor(Optional<Construction> construction) {
        if (out || shorted) {
            return 0.0;
        }
        if (construction.isEmpty() || (sectionsShorted == 0 && elementsOut == 0)) {
            return 1.0;
        }
        double s = construction.get().sections();
        double p = construction.get().elements();
        return s * p / ((s - sectionsShorted - 1.0) * (p - elementsOut) + p);
    }

    private static int positive(Failure failure, int count) {
        if (count < 1) {
            throw new VarwrightException(Message.FAILURE_COUNT, Place.NOWHERE, failure.where(), String.valueOf(count));
        }
        return count;
    }

    private static Construction construction(Failure failure, UnitType type) {
        return type.construction()
                .orElseThrow(() -> new VarwrightException(
                        Message.CONSTRUCTION_MISSING, Place.NOWHERE, failure.where(), failure.kind(), type.name()));
    }
}
