package org.varwright.survey;

import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;
import org.varwright.bank.Construction;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.UnitType;

/** One explanation of a reading. */
public sealed interface Hypothesis {
    /** The unit is as it was. */
    record Healthy() implements Hypothesis {}

    /**
     * Sections shorted.
     *
     * @param count of shorted sections, 1 or more
     * @param of sections in the unit; empty where the nameplate doesn't say and {@code assumed} was tried
     * @param assumed sections that this hypothesis reckons with
     */
    record SectionsShorted(int count, OptionalInt of, int assumed) implements Hypothesis {}

    /**
     * Element fuses operated, all in one section.
     *
     * @param count of operated fuses, 1 or more
     * @param sections in the unit
     * @param elements in a section
     */
    record ElementsOut(int count, int sections, int elements) implements Hypothesis {}

    /** The leads made no contact (or the unit is open inside). */
    record LeadsOpen() implements Hypothesis {}

    /**
     * A slip of the decimal point or of the unit.
     *
     * @param exponent of ten by which the reading is too large
     */
    record WrongRange(int exponent) implements Hypothesis {}

    /**
     * Other units were still connected.
     *
     * @param units that were measured together, 2 or more
     */
    record NeighbourConnected(int units) implements Hypothesis {}

    /**
     * A three-phase unit was measured between other terminals than those reckoned with.
     *
     * @param factor on the capacitance of one leg
     * @param words what was measured
     */
    record WrongTerminals(double factor, String words) implements Hypothesis {}

    /** Nothing that is known explains the reading. */
    record FitsNothing() implements Hypothesis {}

    /** Kinds of explanation that a verdict turns on. */
    enum Kind {
        HEALTHY,
        FAILED,
        IMPOSSIBLE
    }

    default Kind kind() {
        return switch (this) {
            case Healthy ignored -> Kind.HEALTHY;
            case SectionsShorted ignored -> Kind.FAILED;
            case ElementsOut ignored -> Kind.FAILED;
            case LeadsOpen ignored -> Kind.IMPOSSIBLE;
            case WrongRange ignored -> Kind.IMPOSSIBLE;
            case NeighbourConnected ignored -> Kind.IMPOSSIBLE;
            case WrongTerminals ignored -> Kind.IMPOSSIBLE;
            case FitsNothing ignored -> Kind.IMPOSSIBLE;
        };
    }

    /**
     * What the reading is multiplied by under this explanation; 0 where it has no particular value.
     *
     * <p><b>Model.</b> {@code k} of {@code s} sections shorted: {@code s/(s−k)}; {@code n} of {@code p} elements out in one of {@code s} sections:
     * {@code s(p−n)/(s(p−n)+n)} (SRV-2).
     * <p><b>Not modelled.</b> Elements out in several sections at once, shorts with resistance.
     * <p><b>Source.</b> First principles.
     */
    default double factor() {
        return switch (this) {
            case Healthy ignored -> 1.0;
            case SectionsShorted shorted -> (double) shorted.assumed() / (shorted.assumed() - shorted.count());
            case ElementsOut out -> {
                double left = (double) out.sections() * (out.elements() - out.count());
                yield left / (left + out.count());
            }
            case LeadsOpen ignored -> 0.0;
            case WrongRange range -> Math.pow(10.0, range.exponent());
            case NeighbourConnected together -> together.units();
            case WrongTerminals wrong -> wrong.factor();
            case FitsNothing ignored -> 0.0;
        };
    }

    /**
     * Voltage on the most stressed section that is left, as a multiple of healthy, at unchanged voltage across the unit.
     *
     * <p><b>Model.</b> {@code s/(s−k)} or {@code s·p/(s(p−n)+n)} (SRV-3).
     * <p><b>Source.</b> First principles.
     */
    default double voltageLeft() {
        return switch (this) {
            case SectionsShorted ignored -> factor();
            case ElementsOut out ->
                (double) out.sections()
                        * out.elements()
                        / (out.sections() * (double) (out.elements() - out.count()) + out.count());
            case Healthy ignored -> 1.0;
            case LeadsOpen ignored -> 1.0;
            case WrongRange ignored -> 1.0;
            case NeighbourConnected ignored -> 1.0;
            case WrongTerminals ignored -> 1.0;
            case FitsNothing ignored -> 1.0;
        };
    }

    /**
     * An explanation with its weight before the reading.
     *
     * @param hypothesis the explanation
     * @param weight prior, not normalised among the others
     */
    record Prior(Hypothesis hypothesis, double weight) {}

    /**
     * Every explanation of a reading of a unit, with the weights of {@code priors}; that of the healthy unit is what the others leave of 1.
     *
     * @param type of the unit
     * @param together numbers of units that may have been measured together, each 2 or more
     * @param priors weights
     */
    static List<Prior> of(UnitType type, List<Integer> together, Priors priors) {
        List<Prior> all = new ArrayList<>();
        sections(type, priors, all);
        type.construction().filter(Construction::internallyFused).ifPresent(inside -> elements(inside, priors, all));
        all.add(new Prior(new LeadsOpen(), priors.leadsOpen()));
        List<Integer> exponents = List.of(-6, -3, -2, -1, 1, 2, 3, 6);
        exponents.forEach(e -> all.add(new Prior(new WrongRange(e), priors.wrongRange() / exponents.size())));
        together.forEach(
                n -> all.add(new Prior(new NeighbourConnected(n), priors.neighbourConnected() / together.size())));
        type.threePhase().ifPresent(inside -> terminals(inside, priors, all));
        all.add(new Prior(new FitsNothing(), priors.fitsNothing()));
        double others = all.stream().mapToDouble(Prior::weight).sum();
        all.addFirst(new Prior(new Healthy(), Math.max(0.0, 1.0 - others)));
        return List.copyOf(all);
    }

    private static void sections(UnitType type, Priors priors, List<Prior> all) {
        if (type.construction().isPresent()) {
            int s = type.construction().get().sections();
            double weight = priors.sectionsShorted() * (1.0 - priors.next());
            for (int k = 1; k < s; k++) {
                all.add(new Prior(new SectionsShorted(k, OptionalInt.of(s), s), weight));
                weight *= priors.next();
            }
            return;
        }
        // the nameplate doesn't say how many sections there are: 2 to 14 are all as likely
        int kinds = 13;
        for (int s = 2; s <= 14; s++) {
            double weight = priors.sectionsShorted() * (1.0 - priors.next()) / kinds;
            for (int k = 1; k < s && k <= 2; k++) {
                all.add(new Prior(new SectionsShorted(k, OptionalInt.empty(), s), weight));
                weight *= priors.next();
            }
        }
    }

    private static void elements(Construction inside, Priors priors, List<Prior> all) {
        double weight = priors.elementsOut() * (1.0 - priors.next());
        for (int n = 1; n < inside.elements(); n++) {
            all.add(new Prior(new ElementsOut(n, inside.sections(), inside.elements()), weight));
            weight *= priors.next();
        }
    }

    private static void terminals(InternalConnection inside, Priors priors, List<Prior> all) {
        List<WrongTerminals> slips = switch (inside) {
            case DELTA ->
                List.of(
                        new WrongTerminals(1.5, "two terminals of a delta with the third open"),
                        new WrongTerminals(2.0, "one terminal of a delta against the other two joined"));
            case WYE_UNGROUNDED ->
                List.of(
                        new WrongTerminals(0.5, "two terminals of a wye with the third open"),
                        new WrongTerminals(2.0 / 3.0, "one terminal of a wye against the other two joined"));
        };
        slips.forEach(slip -> all.add(new Prior(slip, priors.wrongTerminals() / slips.size())));
    }
}
