package org.varwright.fit;

import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;

/**
 * What to fit where.
 *
 * @param bank the bank
 * @param outcome what the plan is worth
 * @param moves lifts in the order in which to do them; the number of lifts is their count
 * @param before the bank as found
 * @param after the bank after the moves (and, where units are missing, before anything of {@code runOn} is done)
 * @param unbalance what the search made least: root of the sum of squares over the stages, per unit (FIT-2)
 * @param provenBest whether no better plan exists among those that {@code proof} names
 * @param proof what was tried and what that proves, in words
 * @param provisional positions whose units must be measured again before anything is fitted: until then nothing here is settled
 * @param alternatives plans with more lifts and less unbalance
 * @param rejected spares that fit nowhere, with the reason
 * @param unused serial numbers of spares that fit and stay on the shelf
 * @param runOn where spares are missing: how each stage could run on meanwhile
 * @param checks limits held against values
 * @param bases how the numbers came about
 * @param notes what to look at
 * @param plansExamined number of plans evaluated
 */
public record FitResult(
        Bank bank,
        Outcome outcome,
        List<Move> moves,
        Balance before,
        Balance after,
        double unbalance,
        boolean provenBest,
        String proof,
        List<String> provisional,
        List<Alternative> alternatives,
        List<Rejected> rejected,
        List<String> unused,
        List<RunOn> runOn,
        List<Check> checks,
        List<Basis> bases,
        List<String> notes,
        long plansExamined) {
    public FitResult {
        moves = List.copyOf(moves);
        provisional = List.copyOf(provisional);
        alternatives = List.copyOf(alternatives);
        rejected = List.copyOf(rejected);
        unused = List.copyOf(unused);
        runOn = List.copyOf(runOn);
        checks = List.copyOf(checks);
        bases = List.copyOf(bases);
        notes = List.copyOf(notes);
    }

    /** What a plan is worth. */
    public enum Outcome {
        /** Every position filled, every limit kept. */
        COMPLETE("complete"),
        /** Every position filled, and some limit broken whatever was tried. */
        LIMIT_BROKEN("limit-broken"),
        /** Spares are missing: some stage has to run on short of units, or stay off. */
        SPARES_MISSING("spares-missing");

        private final String code;

        Outcome(String code) {
            this.code = code;
        }

        /** The word in JSON. */
        public String code() {
            return code;
        }
    }

    /**
     * A spare that fits nowhere it is needed.
     *
     * @param serial number
     * @param reason one sentence
     */
    public record Rejected(String serial, String reason) {}

    /**
     * A plan with more lifts and less unbalance.
     *
     * @param extraLifts more than the plan
     * @param moves its lifts
     * @param after the bank after them
     * @param unbalance as in the plan
     */
    public record Alternative(int extraLifts, List<Move> moves, Balance after, double unbalance) {
        public Alternative {
            moves = List.copyOf(moves);
        }
    }
}
