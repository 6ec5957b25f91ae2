package org.varwright.jobsheet;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Standard;
import org.varwright.quantity.Dimension;

/**
 * What belongs to one job. Paths are as written, relative to the job sheet.
 *
 * @param bank path of the bank file
 * @param readings path of the readings
 * @param spares path of the spares
 * @param record path of a disturbance record of the event: the .cff, or the .cfg beside its .dat
 * @param access compartments that people must get into; empty where the job needs none
 * @param busVolts voltage at the bus, line to line [V], at which currents are predicted
 * @param measured what was read at the first energization, by line, leg or sensor as written
 * @param number what the owner calls the job
 * @param alarm what was reported: relay, annunciator, complaint
 * @param reason why the job is done
 * @param date day of the job, {@code 2026-05-04}
 * @param people who takes part
 * @param paper what the report is printed on
 * @param start positions of devices where they differ from those in service
 */
public record JobSheet(
        String bank,
        Optional<String> readings,
        Optional<String> spares,
        Optional<String> record,
        List<String> access,
        OptionalDouble busVolts,
        Map<String, Measured> measured,
        Optional<String> number,
        Optional<String> alarm,
        Optional<String> reason,
        Optional<String> date,
        List<Person> people,
        Optional<PaperSize> paper,
        Map<String, String> start) {
    public JobSheet {
        access = List.copyOf(access);
        people = List.copyOf(people);
        measured = Collections.unmodifiableMap(new LinkedHashMap<>(measured));
        start = Collections.unmodifiableMap(new LinkedHashMap<>(start));
    }

    /** Someone who takes part. */
    public record Person(String name, Optional<String> role) {}

    /**
     * A value that was read.
     *
     * @param value in {@code dimension}'s SI unit, 0 or more
     * @param dimension current or voltage
     */
    public record Measured(double value, Dimension dimension) {}

    /** A job sheet that names the bank file and nothing else. */
    public static JobSheet ofBank(String bankPath) {
        return new JobSheet(
                bankPath,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                OptionalDouble.empty(),
                Map.of(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Map.of());
    }

    /** The paper asked for, else the one usual where the standard is used: Letter with IEEE, A4 with IEC. */
    public PaperSize paperFor(Standard standard) {
        return paper.orElse(
                switch (standard) {
                    case IEEE -> PaperSize.LETTER;
                    case IEC -> PaperSize.A4;
                });
    }
}
