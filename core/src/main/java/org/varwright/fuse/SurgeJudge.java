package org.varwright.fuse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.FuseType;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Unanswered;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/**
 * Holds a fuse against surges that it must survive: outrush into a failed neighbour, inrush at switching.
 *
 * <p>The I²t to melt in milliseconds stands in the bank file or nowhere. The table's I²t at 0.1 s is an upper bound of it: a surge above that melts the link
 * for certain, a surge below it may.
 */
final class SurgeJudge {
    private final FuseType fuse;
    private final Optional<Link> link;
    private final String name;
    private final List<Check> checks = new ArrayList<>();
    private final List<Unanswered> missing = new ArrayList<>();

    SurgeJudge(FuseType fuse, Optional<Link> link, String name) {
        this.fuse = fuse;
        this.link = link;
        this.name = name;
    }

    List<Check> checks() {
        return checks;
    }

    List<Unanswered> missing() {
        return missing;
    }

    /** Whether the fuses of healthy units melt as these discharge into a shorted one (FUS-14). */
    void outrush(Outrush outrush) {
        if (outrush.neighbours() == 0) {
            return;
        }
        if (outrush.neighbourAmpereSquaredSeconds().isEmpty()) {
            missing.add(new Unanswered(
                    "resistance of one unit's fuse and leads (--fuse-resistance)",
                    "whether outrush into a shorted unit melts the healthy neighbours' fuses"));
            return;
        }
        judge(
                ": outrush into a shorted neighbour leaves it whole",
                "outrush into a shorted neighbour",
                outrush.neighbourAmpereSquaredSeconds().getAsDouble(),
                "FUS-14",
                List.of(
                        new Term("E", "energy of the neighbours at 1.1 times peak", outrush.joules(), "J"),
                        new Term("n", "neighbours", outrush.neighbours(), "")),
                "n·½CV²/(R·(1 + 1/n))/n² ≤ I²t_melt");
    }

    /** Whether inrush at switching leaves the fuse whole (FUS-15). */
    void inrush(double i2t) {
        judge(
                ": inrush leaves it whole",
                "inrush",
                i2t,
                "FUS-15",
                List.of(new Term("∫i²dt", "worst closing of this or another stage, simulated (SWI-6)", i2t, "A²s")),
                "∫i²dt ≤ I²t_melt");
    }

    private void judge(String subject, String what, double i2t, String id, List<Term> terms, String formula) {
        OptionalDouble melting = fuse.meltingAmpereSquaredSeconds();
        if (melting.isPresent()) {
            checks.add(new Check(
                    name + subject,
                    i2t,
                    melting.getAsDouble(),
                    "A²s",
                    i2t < melting.getAsDouble() ? Verdict.PASS : Verdict.FAIL,
                    new Basis(id, formula, terms, Source.published("melting-i2t in the bank file"))));
            return;
        }
        Optional<Double> bound =
                link.map(l -> l.points().getLast()).map(p -> p.leastAmperes() * p.leastAmperes() * p.seconds());
        if (bound.isPresent() && i2t >= bound.get()) {
            checks.add(new Check(
                    name + subject,
                    i2t,
                    bound.get(),
                    "A²s",
                    Verdict.FAIL,
                    new Basis(id, formula + ", at most that at 0.1 s", terms, LinkTable.SOURCE)));
            return;
        }
        missing.add(new Unanswered(
                "melting-i2t of fuse type " + fuse.name(),
                "whether " + what + " (" + Dimension.digits(i2t, 3) + " A²s) melts it"
                        + bound.map(b -> "; for certain it does from " + Dimension.digits(b, 3) + " A²s")
                                .orElse("")));
    }
}
