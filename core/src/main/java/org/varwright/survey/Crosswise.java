package org.varwright.survey;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.varwright.bank.UnitPosition;

/** Finds two positions whose readings fit each other's earlier values: rows written under each other's name. */
final class Crosswise {
    /** How close a reading must be to the other's value, in standard deviations. */
    private static final double CLOSE = 2.0;

    /** How far it must be from its own, likewise. */
    private static final double FAR = 4.0;

    private Crosswise() {}

    /** Replaces the opinions of such pairs. */
    static void apply(
            List<Gathered> all, Map<UnitPosition, Judge.Opinion> opinions, Judge judge, SurveySettings settings) {
        for (int i = 0; i < all.size(); i++) {
            for (int j = i + 1; j < all.size(); j++) {
                Gathered one = all.get(i);
                Gathered other = all.get(j);
                Judge.Opinion first = opinions.get(one.position());
                Judge.Opinion second = opinions.get(other.position());
                if (first != null && second != null && crossed(one, first, other, second, settings)) {
                    opinions.put(one.position(), swapped(one, first, other, judge));
                    opinions.put(other.position(), swapped(other, second, one, judge));
                }
            }
        }
    }

    private static boolean crossed(
            Gathered one, Judge.Opinion first, Gathered other, Judge.Opinion second, SurveySettings settings) {
        return one.type().equals(other.type())
                && first.verdict() != UnitVerdict.HEALTHY
                && second.verdict() != UnitVerdict.HEALTHY
                && first.reference().isPresent()
                && second.reference().isPresent()
                && first.reference().get().isOwn()
                && second.reference().get().isOwn()
                && away(first.farads(), first.reference().get(), one, settings) > FAR
                && away(second.farads(), second.reference().get(), other, settings) > FAR
                && away(first.farads(), second.reference().get(), one, settings) < CLOSE
                && away(second.farads(), first.reference().get(), other, settings) < CLOSE;
    }

    private static double away(OptionalDouble farads, Reference reference, Gathered unit, SurveySettings settings) {
        if (farads.isEmpty()) {
            return Double.NaN;
        }
        double sigma =
                reference.farads() * Math.hypot(reference.relativeSigma(), settings.meterSigma(unit.instrument()));
        return Math.abs(farads.getAsDouble() - reference.farads()) / sigma;
    }

    private static Judge.Opinion swapped(Gathered unit, Judge.Opinion opinion, Gathered with, Judge judge) {
        return judge.notJudged(
                unit,
                UnitVerdict.MEASURE_AGAIN,
                "positions-swapped",
                "The readings here and at " + with.position().name()
                        + " fit each other's earlier values: rows or units are swapped; look at the nameplates.",
                opinion.farads(),
                opinion.reference(),
                opinion.remarks());
    }
}
