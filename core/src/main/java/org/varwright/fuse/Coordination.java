package org.varwright.fuse;

import java.util.List;
import java.util.Optional;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;

/**
 * A unit fuse and the line fuse ahead of it, with a unit shorted (FUS-16).
 *
 * @param unitAmperes through the unit fuse [A]
 * @param lineAmperes through the line fuse [A]
 * @param clearSeconds when every unit fuse of its rating has cleared [s]
 * @param earliestSeconds before which no line fuse melts [s]
 * @param meltSeconds when the quickest line fuse melts by its curve, which may lie later than the truth [s]
 */
record Coordination(
        double unitAmperes, double lineAmperes, double clearSeconds, double earliestSeconds, double meltSeconds) {
    /** Part of the melting time of the fuse ahead within which the fuse behind must have cleared. */
    private static final double MARGIN = 0.75;

    /** Empty where the times can't be told. */
    static Optional<Coordination> of(FuseCurve unit, double unitAmperes, FuseCurve line, double lineAmperes) {
        FuseTime clear = unit.clearing(unitAmperes);
        FuseTime earliest = line.earliest(lineAmperes);
        FuseTime melting = line.melting(lineAmperes);
        boolean ends = clear.bound() == FuseTime.Bound.ABOUT || clear.bound() == FuseTime.Bound.AT_MOST;
        if (!ends || !earliest.isKnown()) {
            return Optional.empty();
        }
        Coordination found =
                new Coordination(unitAmperes, lineAmperes, clear.seconds(), earliest.seconds(), melting.seconds());
        boolean curve = melting.bound() == FuseTime.Bound.ABOUT || melting.bound() == FuseTime.Bound.LONGER_OR_NEVER;
        return curve || found.verdict() == Verdict.PASS ? Optional.of(found) : Optional.empty();
    }

    /** PASS for certain, WARN by the curve, FAIL otherwise. */
    Verdict verdict() {
        if (clearSeconds <= MARGIN * earliestSeconds) {
            return Verdict.PASS;
        }
        return clearSeconds <= MARGIN * meltSeconds ? Verdict.WARN : Verdict.FAIL;
    }

    Check check(String unitName, String lineName) {
        return new Check(
                unitName + ": has cleared before line fuse " + lineName + " melts",
                clearSeconds,
                MARGIN * Math.max(earliestSeconds, meltSeconds),
                "s",
                verdict(),
                new Basis(
                        "FUS-16",
                        "t_clear(I_unit) ≤ 0.75·t_melt(I_line)",
                        List.of(
                                new Term("I_unit", "through the unit fuse, one unit shorted", unitAmperes, "A"),
                                new Term("I_line", "through the line fuse", lineAmperes, "A"),
                                new Term("t_melt", "of the quickest line fuse by its curve", meltSeconds, "s"),
                                new Term(
                                        "t_first",
                                        "before which none melts (FUS-3); within 0.75 of this it is certain",
                                        earliestSeconds,
                                        "s")),
                        Source.commonPractice("75 % for preload, ambient temperature and tolerance")));
    }
}
