package org.varwright.record;

import java.util.List;
import java.util.OptionalDouble;
import org.varwright.comtrade.Recording;
import org.varwright.waveform.TimeBase;

/**
 * A record ready to be measured.
 *
 * @param station as in the record
 * @param device as in the record
 * @param hertz nominal frequency; 0 where the record doesn't say
 * @param base times of the samples, the first at 0
 * @param channels analog channels
 * @param statuses status channels
 * @param triggerSeconds when the recorder was triggered, on the same clock; empty where not known
 */
public record RecordInput(
        String station,
        String device,
        double hertz,
        TimeBase base,
        List<Channel> channels,
        List<StatusTrack> statuses,
        OptionalDouble triggerSeconds) {
    public RecordInput {
        channels = List.copyOf(channels);
        statuses = List.copyOf(statuses);
    }

    /** What a recording gives; without channels where it tells no times. */
    public static RecordInput of(Recording recording) {
        return Inputs.of(recording);
    }
}
