package org.varwright.comtrade;

import java.util.List;
import java.util.Optional;

/**
 * What a configuration says; its channels have no samples yet.
 *
 * @param revision by which it was read
 * @param year as written
 * @param station as written
 * @param device as written
 * @param analogs without values
 * @param statuses without states
 * @param hertz of the line; 0 where not said
 * @param rates as written
 * @param start of the first sample
 * @param trigger of the recorder
 * @param format of the data; empty where it says none that is known
 * @param stampSeconds seconds in one unit of the time stamps, the multiplier included
 * @param clock 2013 only
 * @param codePage of its names
 */
record Configuration(
        Revision revision,
        String year,
        String station,
        String device,
        List<Analog> analogs,
        List<Status> statuses,
        double hertz,
        List<Rate> rates,
        Moment start,
        Moment trigger,
        Optional<DataFormat> format,
        double stampSeconds,
        Optional<Clock> clock,
        String codePage) {}
