package org.varwright.isolation;

import java.util.List;
import org.varwright.interlock.Move;

/** What planning comes to. Only {@link Planned} is an order of work. */
public sealed interface Plan {
    /** Proven: every state and move of it was checked, and every single fault of the table is caught or can't reach a hand. */
    record Planned(OrderOfWork order) implements Plan {}

    /**
     * There is no order of work that could be proven.
     *
     * @param reason in words
     * @param wayToHarm the shortest way in which getting in would hurt someone; empty where there is no way in at all
     * @param harm what that way breaks, in words; empty where there is no such way
     * @param holes single faults that nothing would catch; empty where the plan failed for another reason
     */
    record Refused(String reason, List<Move> wayToHarm, String harm, List<Fault> holes) implements Plan {
        public Refused {
            wayToHarm = List.copyOf(wayToHarm);
            holes = List.copyOf(holes);
        }

        static Refused because(String reason) {
            return new Refused(reason, List.of(), "", List.of());
        }
    }

    /** Not known: given up after so many states. Never to be read as safe, nor as impossible. */
    record Undecided(int limit) implements Plan {}
}
