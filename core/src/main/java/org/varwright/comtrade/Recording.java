package org.varwright.comtrade;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.problem.Problem;

/**
 * A disturbance record, or the part of it that was asked for.
 *
 * @param origin how it is written
 * @param station as in the record
 * @param device as in the record
 * @param hertz frequency of the line; 0 where the record doesn't say
 * @param analogs analog channels that were asked for
 * @param statuses status channels
 * @param seconds time of each sample from the record's first one [s], the channels' skew not applied; the first is above 0 where a later part was read
 * @param timing when it was taken and at what pace
 * @param header text of the header file; empty where there is none
 * @param information text of the information file; empty where there is none
 * @param remarks what departs from the standard and how it was read all the same
 */
public record Recording(
        Origin origin,
        String station,
        String device,
        double hertz,
        List<Analog> analogs,
        List<Status> statuses,
        Samples seconds,
        Timing timing,
        String header,
        String information,
        List<Problem> remarks) {
    public Recording {
        analogs = List.copyOf(analogs);
        statuses = List.copyOf(statuses);
        remarks = List.copyOf(remarks);
        for (Analog analog : analogs) {
            if (analog.values().size() != seconds.size()) {
                throw new IllegalArgumentException(
                        analog.title() + " has " + analog.values().size() + " values at " + seconds.size() + " times");
            }
        }
        for (Status status : statuses) {
            if (status.bits().size() != seconds.size()) {
                throw new IllegalArgumentException(
                        status.title() + " has " + status.bits().size() + " states at " + seconds.size() + " times");
            }
        }
    }

    public Revision revision() {
        return origin.revision();
    }

    /** When the recorder was triggered, from the first sample [s]; empty where not known. */
    public OptionalDouble triggerSeconds() {
        return timing.triggerSeconds();
    }

    /** The analog channel of a name, without regard to case and blanks around it. */
    public Optional<Analog> analog(String name) {
        String wanted = name.strip().toLowerCase(Locale.ROOT);
        return analogs.stream()
                .filter(a -> a.name().strip().toLowerCase(Locale.ROOT).equals(wanted))
                .findFirst();
    }
}
