package org.varwright.fuse;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/**
 * Finds the standard link for a place (FUS-18): of each type the smallest that carries, with something left, both what the rule asks and the most that the
 * bank's own data give. Of the two types the one that does better on a shorted unit; where both meet everything the slow one, because it bears inrush
 * and outrush better, where neither does the fast one.
 */
final class Proposer {
    private static final Source SOURCE = Source.commonPractice(
            "the smallest link that carries the current: it clears soonest; slow links bear inrush better");

    /** Rms current over rated that units carry for good, IEEE Std 18; IEC 60871-1 allows less. */
    private static final double UNITS_CARRY = 1.35;

    private final Demand demand;
    private final ServiceCurrent service;
    private final Optional<FuseCurve> behind;
    private final double ruled;
    private final double needed;

    private Proposer(Demand demand, ServiceCurrent service, Optional<FuseCurve> behind) {
        this.demand = demand;
        this.service = service;
        this.behind = behind;
        this.ruled = demand.rule().least() * service.ruleAmperes();
        this.needed = isOverloaded() ? ruled : Math.max(ruled, service.worstAmperes());
    }

    /**
     * One proposal a type; none where the current of service isn't known.
     *
     * @param behind curve of the unit fuses behind a line fuse
     */
    static List<Proposal> propose(Demand demand, Optional<FuseCurve> behind) {
        if (demand.service().isEmpty()) {
            return List.of();
        }
        Proposer proposer = new Proposer(demand, demand.service().get(), behind);
        Proposal fast = proposer.of(LinkType.K);
        Proposal slow = proposer.of(LinkType.T);
        boolean fastIsBetter = fast.link().isPresent()
                && (slow.link().isEmpty()
                        || fast.verdict().compareTo(slow.verdict()) < 0
                        || (fast.verdict() == slow.verdict() && fast.verdict() != Verdict.PASS));
        return List.of(
                fast.recommend(fastIsBetter),
                slow.recommend(!fastIsBetter && slow.link().isPresent()));
    }

    private Proposal of(LinkType type) {
        List<Link> links = LinkTable.of(type);
        int at = 0;
        while (at < links.size() && tooSmall(links.get(at)).isPresent()) {
            at++;
        }
        Optional<String> notSmaller = at == 0 ? Optional.empty() : tooSmall(links.get(at - 1));
        if (at == links.size()) {
            return new Proposal(
                    type,
                    Optional.empty(),
                    false,
                    Verdict.FAIL,
                    "no type " + type + " link of the table carries it"
                            + (behind.isPresent() ? " and waits for the unit fuses" : ""),
                    List.of(),
                    notSmaller,
                    Optional.empty(),
                    basis());
        }
        Link link = links.get(at);
        List<Check> checks = checks(link);
        return new Proposal(
                type,
                Optional.of(link),
                false,
                worst(checks),
                "carries " + amperes(link.carriesAmperes()) + ", needed " + amperes(needed) + speed(link),
                left(checks),
                notSmaller,
                at == links.size() - 1 ? Optional.empty() : Optional.of(larger(link, links.get(at + 1))),
                basis());
    }

    /** Why a link is too small; empty where it isn't. */
    private Optional<String> tooSmall(Link link) {
        double carries = link.carriesAmperes();
        double limit = needed;
        String asks = limit > ruled
                ? "the most by the bank's own data is " + amperes(limit)
                : "the rule asks " + amperes(limit);
        if (RatingRule.isAtEdge(carries, limit)) {
            return Optional.of(link.name() + " stands exactly at the edge: carries " + amperes(carries) + ", " + asks
                    + ", nothing left for tolerance");
        }
        if (carries < limit) {
            return Optional.of(link.name() + " is too small: carries " + amperes(carries) + ", " + asks);
        }
        return coordination(link)
                .filter(c -> c.verdict() == Verdict.FAIL)
                .map(c -> link.name() + " is too quick: with a unit shorted it may melt after "
                        + Dimension.TIME.format(c.meltSeconds(), 2) + ", the unit fuse has cleared after "
                        + Dimension.TIME.format(c.clearSeconds(), 2));
    }

    /** With the unit fuses behind; empty where there are none or the times can't be told. */
    private Optional<Coordination> coordination(Link link) {
        return behind.isPresent() && demand.found().isPresent()
                ? Coordination.of(
                        behind.get(),
                        demand.found().get().unitAmperes(),
                        curve(link),
                        demand.found().get().lineAmperes())
                : Optional.empty();
    }

    private String larger(Link link, Link next) {
        OptionalDouble fault = demand.faultAmperes();
        if (fault.isEmpty()) {
            return next.name() + " is larger than needed: it melts from " + amperes(melts(next)) + ", " + link.name()
                    + " from " + amperes(melts(link));
        }
        double low = Demand.LOW * fault.getAsDouble();
        FuseTime own = clearing(link, low);
        FuseTime others = clearing(next, low);
        if (others.bound() == FuseTime.Bound.LONGER_OR_NEVER) {
            return next.name() + " is too large: " + amperes(low) + " need not melt it within " + longest(next)
                    + ", if ever" + (own.bound() == FuseTime.Bound.LONGER_OR_NEVER ? "; nor does " + link.name() : "");
        }
        return next.name() + " is larger than needed: it clears " + amperes(low) + " within " + time(others) + ", "
                + link.name() + " within " + time(own);
    }

    private String speed(Link link) {
        OptionalDouble fault = demand.faultAmperes();
        if (fault.isEmpty()) {
            return "; the current of a shorted unit isn't known";
        }
        double low = Demand.LOW * fault.getAsDouble();
        FuseTime clearing = clearing(link, low);
        return clearing.bound() == FuseTime.Bound.LONGER_OR_NEVER
                ? "; a shorted unit's " + amperes(low) + " need not melt it within " + longest(link)
                : "; clears a shorted unit's " + amperes(low) + " within " + time(clearing);
    }

    private List<Check> checks(Link link) {
        SpeedJudge speed = new SpeedJudge(demand, curve(link), link.name());
        speed.judge();
        return speed.checks();
    }

    private static Verdict worst(List<Check> checks) {
        Verdict worst = Verdict.PASS;
        for (Check check : checks) {
            if (check.verdict().compareTo(worst) > 0) {
                worst = check.verdict();
            }
        }
        return worst;
    }

    /** Whether the bank's own data give more than the units themselves may carry for good: no larger fuse mends that. */
    private boolean isOverloaded() {
        return service.worstAmperes() > UNITS_CARRY * service.ruleAmperes() * (1.0 + RatingRule.EDGE);
    }

    /** What is left with a link, in words. */
    private List<String> left(List<Check> checks) {
        List<String> left = new ArrayList<>();
        if (isOverloaded()) {
            left.add("the bank's own data give " + amperes(service.worstAmperes())
                    + ", more than the units may carry for good ("
                    + amperes(UNITS_CARRY * service.ruleAmperes())
                    + "): mend that first, see \"duty\" and \"resonance\"; no larger fuse does");
        }
        for (Check check : checks) {
            if (check.verdict() == Verdict.PASS) {
                continue;
            }
            switch (check.basis().id()) {
                case "FUS-13" ->
                    left.add(demand.overvoltage()
                            .map(o -> "too slow for the other units, which bear " + Dimension.digits(o.perRated(), 3)
                                    + " times rated voltage for " + Dimension.TIME.format(o.strictSeconds(), 2))
                            .orElse("the other units bear more than the standard's table has a time for"));
                case "FUS-17" ->
                    left.add("the bank trips first, after " + Dimension.TIME.format(check.limit(), 2)
                            + ": the fuse may mark no unit");
                default -> left.add("a shorted unit may not melt it");
            }
        }
        return left;
    }

    private FuseTime clearing(Link link, double amperes) {
        return curve(link).clearing(amperes);
    }

    private FuseCurve curve(Link link) {
        return new FuseCurve.OfLink(link, demand.bank().system().frequencyHertz(), OptionalDouble.empty());
    }

    private Basis basis() {
        List<Term> terms = new ArrayList<>(List.of(
                new Term(
                        "k",
                        "multiple by the rule: " + demand.rule().source().print(),
                        demand.rule().least(),
                        ""),
                new Term("I", "current in service by the nameplates", service.ruleAmperes(), "A"),
                new Term("I_worst", "most by this bank's own data", service.worstAmperes(), "A")));
        demand.faultAmperes().ifPresent(a -> terms.add(new Term("I_short", "current with one unit shorted", a, "A")));
        return new Basis(
                "FUS-18", "smallest link with 1.5·I_link > max(k·I, I_worst) by more than 0.1 %", terms, SOURCE);
    }

    private static double melts(Link link) {
        return link.points().getFirst().mostAmperes();
    }

    private static String longest(Link link) {
        return Dimension.TIME.format(link.points().getFirst().seconds());
    }

    private static String amperes(double amperes) {
        return Dimension.CURRENT.format(amperes, 3);
    }

    private static String time(FuseTime time) {
        return Dimension.TIME.format(time.seconds(), 2);
    }
}
