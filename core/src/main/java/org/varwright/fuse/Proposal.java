package org.varwright.fuse;

import java.util.List;
import java.util.Optional;
import org.varwright.basis.Basis;
import org.varwright.basis.Verdict;

/**
 * Which standard link of one type suits a place.
 *
 * @param type fast or slow
 * @param link the link; empty where none of the table carries the current
 * @param recommended whether it is the better of the two types
 * @param verdict PASS where it meets everything that could be judged; otherwise the worst that is left
 * @param why what it carries and how it does on a shorted unit, in words
 * @param left what no choice of link mends, or this one doesn't, in words
 * @param notSmaller why the next smaller doesn't suit; empty where there is none
 * @param notLarger what the next larger costs; empty where there is none
 * @param basis how it was chosen
 */
public record Proposal(
        LinkType type,
        Optional<Link> link,
        boolean recommended,
        Verdict verdict,
        String why,
        List<String> left,
        Optional<String> notSmaller,
        Optional<String> notLarger,
        Basis basis) {
    public Proposal {
        left = List.copyOf(left);
    }

    Proposal recommend(boolean better) {
        return new Proposal(type, link, better, verdict, why, left, notSmaller, notLarger, basis);
    }
}
