package org.varwright.record;

import java.util.List;
import org.varwright.waveform.Signal;

/** Which channel measures what. Where that is not clear it is asked for, never guessed. */
public sealed interface ChannelMatching {
    /** Every channel that could matter has its place. */
    record Matched(List<Assignment> assignments, List<Unused> unused) implements ChannelMatching {
        public Matched {
            assignments = List.copyOf(assignments);
            unused = List.copyOf(unused);
        }
    }

    /** Some have; of others it must be said. */
    record Unclear(List<Assignment> assignments, List<Unused> unused, List<Question> questions)
            implements ChannelMatching {
        public Unclear {
            assignments = List.copyOf(assignments);
            unused = List.copyOf(unused);
            questions = List.copyOf(questions);
        }
    }

    /** Channels whose place is clear. */
    List<Assignment> assignments();

    /** Channels that are of no use here. */
    List<Unused> unused();

    /** What must be said; empty where everything is clear. */
    default List<Question> open() {
        return switch (this) {
            case Matched m -> List.of();
            case Unclear u -> u.questions();
        };
    }

    /**
     * A channel in its place.
     *
     * @param channel the channel
     * @param role what it measures
     * @param primary its values at the primary side [V] or [A], polarity put right
     * @param why in words
     */
    record Assignment(Channel channel, Role role, Signal primary, List<String> why) {
        public Assignment {
            why = List.copyOf(why);
        }
    }

    /**
     * A channel that is of no use here.
     *
     * @param channel the channel
     * @param why in words
     */
    record Unused(Channel channel, String why) {}

    /**
     * What must be said.
     *
     * @param channels it is about
     * @param what is unclear, in words
     * @param choices roles that are possible, as typed in a channel map
     */
    record Question(List<Channel> channels, String what, List<String> choices) {
        public Question {
            channels = List.copyOf(channels);
            choices = List.copyOf(choices);
        }
    }
}
