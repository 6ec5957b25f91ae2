package org.varwright.job;

import java.util.List;
import org.varwright.problem.Problem;

/** What comes of wanting to write an event. */
public sealed interface Proposal {
    /** It may be written: the line to be put on disk before anybody is told that it stands. */
    record Accepted(LoggedEvent event) implements Proposal {}

    /** The rules refuse it; nothing was written. */
    record Refused(List<Problem> why) implements Proposal {
        public Refused {
            why = List.copyOf(why);
        }
    }
}
