package org.varwright.survey;

import java.util.Locale;
import org.varwright.bank.Construction;
import org.varwright.bank.UnitType;
import org.varwright.quantity.Dimension;

/** Puts explanations into words. */
final class Reasons {
    private Reasons() {}

    static String deviation(double ratio) {
        if (ratio >= 1.9) {
            return Dimension.digits(ratio, 3) + " times";
        }
        if (ratio < 0.5) {
            return Dimension.digits(100.0 * ratio, 2) + " % of";
        }
        double percent = 100.0 * (ratio - 1.0);
        if (Math.abs(percent) < 0.05) {
            return "right on";
        }
        return oneDecimal(Math.abs(percent)) + (percent > 0.0 ? " % above" : " % below");
    }

    /** A doubled percent sign stands in no format: the browser's formatter takes an argument for it. */
    private static String oneDecimal(double value) {
        return String.format(Locale.ROOT, "%.1f", value);
    }

    static String percent(double probability) {
        double percent = 100.0 * probability;
        return percent > 99.9 ? "over 99.9 %" : percent < 0.1 ? "under 0.1 %" : Dimension.digits(percent, 3) + " %";
    }

    static String times(double factor) {
        return String.format(Locale.ROOT, "%.2f×", factor);
    }

    static String failure(Hypothesis hypothesis) {
        return switch (hypothesis) {
            case Hypothesis.SectionsShorted shorted ->
                shorted.count()
                        + (shorted.of().isPresent() ? " of " + shorted.of().getAsInt() : "")
                        + (shorted.count() == 1 && shorted.of().isEmpty() ? " section" : " sections") + " shorted";
            case Hypothesis.ElementsOut out ->
                out.count() + " of " + out.elements() + (out.count() == 1 ? " element fuse has" : " element fuses have")
                        + " operated in one section";
            case Hypothesis.Healthy ignored -> "healthy";
            case Hypothesis.LeadsOpen ignored -> slip(hypothesis);
            case Hypothesis.WrongRange ignored -> slip(hypothesis);
            case Hypothesis.NeighbourConnected ignored -> slip(hypothesis);
            case Hypothesis.WrongTerminals ignored -> slip(hypothesis);
            case Hypothesis.FitsNothing ignored -> slip(hypothesis);
        };
    }

    static String slip(Hypothesis hypothesis) {
        return switch (hypothesis) {
            case Hypothesis.LeadsOpen ignored ->
                "the leads made no contact; if it reads the same again with leads proved on another unit, this one is open inside";
            case Hypothesis.WrongRange range ->
                range.exponent() > 0
                        ? "too large by a factor of 10^" + range.exponent() + ", a wrong range or unit"
                        : "too small by a factor of 10^" + -range.exponent() + ", a wrong range or unit";
            case Hypothesis.NeighbourConnected together ->
                "as if " + together.units() + " units were measured together; take the links off and measure again";
            case Hypothesis.WrongTerminals wrong -> "as " + wrong.words() + " would read";
            case Hypothesis.FitsNothing ignored -> "no state of the unit and no usual slip reads so";
            case Hypothesis.Healthy ignored -> failure(hypothesis);
            case Hypothesis.SectionsShorted ignored -> failure(hypothesis);
            case Hypothesis.ElementsOut ignored -> failure(hypothesis);
        };
    }

    static String code(Hypothesis hypothesis) {
        return switch (hypothesis) {
            case Hypothesis.Healthy ignored -> "healthy";
            case Hypothesis.SectionsShorted ignored -> "sections-shorted";
            case Hypothesis.ElementsOut ignored -> "elements-out";
            case Hypothesis.LeadsOpen ignored -> "leads-open";
            case Hypothesis.WrongRange ignored -> "wrong-range";
            case Hypothesis.NeighbourConnected ignored -> "neighbour-connected";
            case Hypothesis.WrongTerminals ignored -> "wrong-terminals";
            case Hypothesis.FitsNothing ignored -> "fits-nothing";
        };
    }

    /** What the reading could not have shown: the smallest failure whose step is within three standard deviations. */
    static String blind(UnitType type, Reference reference, double meterSigma) {
        if (type.construction().isEmpty()) {
            return "";
        }
        Construction inside = type.construction().get();
        double sigma = Math.hypot(reference.relativeSigma(), meterSigma);
        if (inside.internallyFused() && inside.elements() > 1) {
            double step = 1.0 - new Hypothesis.ElementsOut(1, inside.sections(), inside.elements()).factor();
            if (step < 3.0 * sigma) {
                int shown = 1;
                while (shown < inside.elements()
                        && 1.0 - new Hypothesis.ElementsOut(shown, inside.sections(), inside.elements()).factor()
                                < 3.0 * sigma) {
                    shown++;
                }
                return " One element out changes it by " + oneDecimal(100.0 * step) + " % only; from " + shown
                        + " out on it would show for certain.";
            }
        } else if (inside.sections() > 1) {
            double step = 1.0 / (inside.sections() - 1.0);
            if (step < 3.0 * sigma) {
                return " One shorted section changes it by " + oneDecimal(100.0 * step)
                        + " % only, which this reference can't show for certain.";
            }
        }
        return "";
    }
}
