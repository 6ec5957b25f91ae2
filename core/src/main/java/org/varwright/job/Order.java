package org.varwright.job;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.isolation.OrderOfWork;
import org.varwright.isolation.OrderStep;
import org.varwright.isolation.SavedState;

/**
 * An order of work in a job and how far it has come.
 *
 * @param event that made it; its id names the order
 * @param work the steps
 * @param confirmed one entry a step done, in order
 * @param standing whether it may be worked on
 * @param why it may not; empty where it may
 */
public record Order(
        JobEvent event, OrderOfWork work, List<Confirmation> confirmed, Standing standing, Optional<String> why) {
    public Order {
        confirmed = List.copyOf(confirmed);
    }

    /** Whether an order may be worked on. */
    public enum Standing {
        /** It is the one to work by. */
        CURRENT("current"),
        /** A later order took its place. */
        REPLACED("replaced"),
        /** Something was not as it says: nobody may go on by it. */
        ENDED("ended");

        private final String code;

        Standing(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    /** Where the work stands. */
    public enum Phase {
        WAY_IN("way-in"),
        WORK("work"),
        WAY_BACK("way-back"),
        IN_SERVICE("in-service");

        private final String code;

        Phase(String code) {
            this.code = code;
        }

        public String code() {
            return code;
        }
    }

    /** A step that was done. */
    public record Confirmation(JobEvent event, Fact.StepConfirmed fact) {}

    public String id() {
        return event.id();
    }

    public Phase phase() {
        int done = confirmed.size();
        int in = work.in().size();
        int all = in + work.back().size();
        if (done == all) {
            return Phase.IN_SERVICE;
        }
        return done < in ? Phase.WAY_IN : done == in ? Phase.WORK : Phase.WAY_BACK;
    }

    /** The step to be done next; empty where all are done. */
    public Optional<OrderStep> next() {
        List<OrderStep> steps = work.steps();
        return confirmed.size() < steps.size() ? Optional.of(steps.get(confirmed.size())) : Optional.empty();
    }

    /** Some step is done, of this order or of one that it goes on from, and not all. */
    public boolean isUnderWay() {
        return (!confirmed.isEmpty() || beginsUnderWay()) && phase() != Phase.IN_SERVICE;
    }

    /** It goes on from another one that had not come back to service. */
    private boolean beginsUnderWay() {
        return goesOn() && !work.start().equals(work.stateAfter(work.steps().size()));
    }

    /** It begins where the last confirmed step of the order that it replaces left things. */
    boolean goesOn() {
        return event.fact() instanceof Fact.OrderMade made && made.origin() instanceof Fact.Origin.AfterLastStep;
    }

    /** Something is on the bank that must come off, or a door stands open, after the last confirmed step. */
    boolean leavesSomethingOn() {
        SavedState now = work.stateAfter(confirmed.size());
        return !now.grounds().isEmpty()
                || !now.shorts().isEmpty()
                || now.openDoors().containsValue(true);
    }

    Order with(Confirmation confirmation) {
        List<Confirmation> more = new ArrayList<>(confirmed);
        more.add(confirmation);
        return new Order(event, work, more, standing, why);
    }

    Order ended(String reason) {
        return new Order(event, work, confirmed, Standing.ENDED, Optional.of(reason));
    }

    Order replaced(String by) {
        return new Order(event, work, confirmed, Standing.REPLACED, Optional.of("order " + by + " took its place"));
    }
}
