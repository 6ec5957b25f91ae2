package org.varwright.comtrade;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * When a record was taken and at what pace.
 *
 * @param start when the first sample was taken
 * @param trigger when the recorder was triggered
 * @param triggerSeconds the same from the first sample [s]; empty where the record doesn't say or it lies outside the record
 * @param rates as written
 * @param basis where the times of the samples come from
 * @param clock what it says of its clock; 2013 only
 */
public record Timing(
        Moment start,
        Moment trigger,
        OptionalDouble triggerSeconds,
        List<Rate> rates,
        TimeBasis basis,
        Optional<Clock> clock) {
    public Timing {
        rates = List.copyOf(rates);
    }
}
