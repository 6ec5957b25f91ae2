package org.varwright.bankfile;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.varwright.bank.Bank;
import org.varwright.bank.Standard;
import org.varwright.jobsheet.JobSheet;
import org.varwright.jobsheet.PaperSize;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;

/** Job sheets: read whole, and every fault with its place. */
class JobSheetFileTest {
    private static final String WHOLE = """
            format: varwright-job/1
            number: J-17
            bank: larch.bank.yaml
            readings: larch.readings.csv
            spares: larch.spares.csv
            record: larch.trip.cfg
            alarm: "neutral voltage alarm, stage 1"
            reason: find and replace failed units
            date: 2024-02-29
            people:
              - {name: Ida Quill, role: in charge}
              - {name: Bo Ávila}
            access: [bay 1]
            start: {24-1: open}
            bus: 13.9 kV
            measured:
              stage 1/A: 12.5 A
              stage 1 neutral-voltage: 120 mV
            paper: a4
            """;

    private static final String BANK = """
            format: varwright/1
            name: Larch
            standard: IEEE
            system: {voltage: 13.8 kV, frequency: 60 Hz, grounding: solid}
            unit-types:
              - {name: U300, rating: 300 kvar, voltage: 7.96 kV, frequency: 60 Hz, tolerance: [0 %, +10 %]}
            stages:
              - {name: stage 1, connection: wye-ungrounded, switch: 24-1, groups: 1, units: 1, unit: U300}
            protection: [{stage: stage 1, senses: neutral-voltage, ratio: "8400:120"}]
            isolation:
              sources: [{name: feeder, at: line}]
              devices:
                - {name: 89-1, kind: disconnector, between: [line, bus], seen-through: window}
                - {name: 24-1, kind: stage-switch, between: [bus, stage 1]}
              compartments: [{name: bay 1, exposes: [bus, stage 1]}]
              locks: [{device: 89-1, key: K1, holds: open}, {door: bay 1, key: K1}]
            """;

    @Test
    void everythingIsRead() {
        assertEquals(
                new JobSheet(
                        "larch.bank.yaml",
                        Optional.of("larch.readings.csv"),
                        Optional.of("larch.spares.csv"),
                        Optional.of("larch.trip.cfg"),
                        List.of("bay 1"),
                        OptionalDouble.of(13900.0),
                        Map.of(
                                "stage 1/A", new JobSheet.Measured(12.5, Dimension.CURRENT),
                                "stage 1 neutral-voltage", new JobSheet.Measured(0.12, Dimension.VOLTAGE)),
                        Optional.of("J-17"),
                        Optional.of("neutral voltage alarm, stage 1"),
                        Optional.of("find and replace failed units"),
                        Optional.of("2024-02-29"),
                        List.of(
                                new JobSheet.Person("Ida Quill", Optional.of("in charge")),
                                new JobSheet.Person("Bo \u00c1vila", Optional.empty())),
                        Optional.of(PaperSize.A4),
                        Map.of("24-1", "open")),
                read(WHOLE).requireFor(bank()));
    }

    @Test
    void aBankAloneIsEnough() {
        JobSheet job = read("format: varwright-job/1\nbank: larch.bank.yaml\n").requireFor(bank());
        assertEquals(JobSheet.ofBank("larch.bank.yaml"), job);
        assertEquals(PaperSize.LETTER, job.paperFor(Standard.IEEE));
        assertEquals(PaperSize.A4, job.paperFor(Standard.IEC));
    }

    @Test
    void everyFaultIsFoundInOneRun() {
        assertEquals(
                List.of(
                        "x.job.yaml:1:9 format: \"varwright/1\" is not known here; allowed are varwright-job/1",
                        "x.job.yaml:3:1 readngs: there is no key \"readngs\" here; maybe \"readings\"; allowed are format, number,"
                                + " bank, readings, spares, record, alarm, reason, date, people, access, start, bus, measured, paper",
                        "x.job.yaml:4:7 date: \"2023-02-29\" is no day of the calendar; write it such as \"2026-05-04\"",
                        "x.job.yaml:5:6 bus: \"13.8\" has no unit; write it with one, such as \"13.8 kV\"",
                        "x.job.yaml:7:14 measured.stage 1/A: \"12,5 A\" has a decimal comma; write \"12.5 A\"",
                        "x.job.yaml:8:8 paper: \"A5\" is not known here; maybe \"A4\"; allowed are A4, Letter"),
                errors("""
                        format: varwright/1
                        bank: larch.bank.yaml
                        readngs: a.csv
                        date: 2023-02-29
                        bus: 13.8
                        measured:
                          stage 1/A: 12,5 A
                        paper: A5
                        """));
    }

    @Test
    void namesThatTheBankLacksAreFoundWithTheirPlace() {
        JobSheetReading reading = read("""
                format: varwright-job/1
                bank: larch.bank.yaml
                access: [bay 11]
                start: {24-9: open, 89-1: shut}
                measured: {stage 1/D: 2 A}
                """);
        VarwrightException thrown = assertThrows(VarwrightException.class, () -> reading.requireFor(bank()));
        assertEquals(
                List.of(
                        "x.job.yaml:3:10 access[0]: there is no compartment \"bay 11\"; maybe \"bay 1\"; known are \"bay 1\"",
                        "x.job.yaml:4:9 start.24-9: there is no device \"24-9\"; maybe \"24-1\"; known are \"89-1\", \"24-1\"",
                        "x.job.yaml:4:21 start.89-1: \"shut\" is not known here; allowed are closed, open",
                        "x.job.yaml:5:12 measured.stage 1/D: there is no line, leg or sensor \"stage 1/D\"; known are"
                                + " \"stage 1/A\", \"stage 1/B\", \"stage 1/C\", \"stage 1 neutral-voltage\""),
                thrown.problems().stream().map(Problem::print).toList());
    }

    @Test
    void whatIsNoMappingIsRefused() {
        assertTrue(errors("").getFirst().contains("empty"));
        assertEquals(1, errors("- one\n- two\n").size());
        assertTrue(errors("format: varwright-job/1\nbank: a\nmeasured: 5 A\n")
                .getFirst()
                .contains("expected a mapping"));
    }

    private static Bank bank() {
        return BankFile.read("larch.bank.yaml", BANK.getBytes(StandardCharsets.UTF_8))
                .requireBank();
    }

    private static JobSheetReading read(String text) {
        return JobSheetFile.read("x.job.yaml", text.getBytes(StandardCharsets.UTF_8));
    }

    private static List<String> errors(String text) {
        return read(text).errors().stream().map(Problem::print).toList();
    }
}
