package org.varwright.comtrade;

import java.util.OptionalInt;

/**
 * What a record of 2013 says of its clock.
 *
 * @param timeCode offset of its times from UTC, as written
 * @param localCode offset of its place from UTC, as written
 * @param offsetMinutes the time code in minutes; empty where it is none
 * @param quality the time quality code, as written
 * @param qualityText what the code means; empty where it means nothing
 * @param leap the leap second code, as written
 * @param leapText what the code means; empty where it means nothing
 */
public record Clock(
        String timeCode,
        String localCode,
        OptionalInt offsetMinutes,
        String quality,
        String qualityText,
        String leap,
        String leapText) {}
