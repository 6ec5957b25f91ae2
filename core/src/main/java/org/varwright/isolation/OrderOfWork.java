package org.varwright.isolation;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;

/**
 * A proven way in and back, step by step.
 *
 * @param bank the bank
 * @param access compartments whose doors it opens
 * @param start state from which it goes
 * @param in steps until work may begin
 * @param back steps from the end of the work to service
 * @param faults single faults and the step that shows each
 * @param responsibilities what no lock and no switch does, so that people must
 * @param cautions what holds for every work on this bank
 * @param cost of the moves in, and of those back (ISO-1)
 * @param costBack of the moves back
 * @param statesExplored how many states were looked at to prove that nothing is cheaper
 */
public record OrderOfWork(
        Bank bank,
        List<String> access,
        SavedState start,
        List<OrderStep> in,
        List<OrderStep> back,
        List<Fault> faults,
        List<Responsibility> responsibilities,
        List<String> cautions,
        int cost,
        int costBack,
        int statesExplored) {
    public OrderOfWork {
        access = List.copyOf(access);
        in = List.copyOf(in);
        back = List.copyOf(back);
        faults = List.copyOf(faults);
        responsibilities = List.copyOf(responsibilities);
        cautions = List.copyOf(cautions);
    }

    /**
     * Something that only people see to.
     *
     * @param property id of the property that no lock and no switch keeps here, such as {@code ungrounded-entry}; empty where it is none of them
     * @param text in words
     */
    public record Responsibility(String property, String text) {}

    /** The way in and the way back. */
    public List<OrderStep> steps() {
        List<OrderStep> all = new ArrayList<>(in);
        all.addAll(back);
        return all;
    }

    /**
     * The state after so many steps, to be saved, or to plan anew from where the scope changed.
     *
     * @param n number of the last step done; 0 for the start
     * @throws VarwrightException {@code ISOLATION_NO_STEP} where the order has no such step
     */
    public SavedState stateAfter(int n) {
        int last = in.size() + back.size();
        if (n < 0 || n > last) {
            throw new VarwrightException(
                    Message.ISOLATION_NO_STEP, Place.NOWHERE, String.valueOf(n), String.valueOf(last));
        }
        return States.after(this, n);
    }
}
