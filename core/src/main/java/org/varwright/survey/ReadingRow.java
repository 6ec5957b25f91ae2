package org.varwright.survey;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.varwright.bank.UnitPosition;

/**
 * One row of readings.
 *
 * @param row as a spreadsheet counts it
 * @param position of the unit
 * @param serial number read on the unit
 * @param terminals between which a three-phase unit was measured
 * @param capacitance as measured [F]
 * @param resistance of the discharge resistor [Ω]
 * @param insulation terminals to case [Ω]
 * @param fuse of the unit's fuse [Ω]
 * @param temperature of the unit [°C]
 * @param caseTemperature of the case in service [°C]
 * @param instrument what it was measured with
 * @param taken when, as written
 * @param note free text
 * @param other cells of columns that are not known, by the column's name
 */
public record ReadingRow(
        int row,
        UnitPosition position,
        Optional<String> serial,
        Optional<Terminals> terminals,
        Optional<Measured> capacitance,
        Optional<Measured> resistance,
        Optional<Measured> insulation,
        Optional<Measured> fuse,
        Optional<Measured> temperature,
        Optional<Measured> caseTemperature,
        Optional<String> instrument,
        Optional<String> taken,
        Optional<String> note,
        Map<String, String> other) {
    public ReadingRow {
        other = Collections.unmodifiableMap(new LinkedHashMap<>(other));
    }
}
