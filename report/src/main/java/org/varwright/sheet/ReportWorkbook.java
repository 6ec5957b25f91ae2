package org.varwright.sheet;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.apache.commons.compress.archivers.zip.ZipArchiveEntry;
import org.apache.commons.compress.archivers.zip.ZipFile;
import org.apache.commons.compress.utils.SeekableInMemoryByteChannel;
import org.dhatim.fastexcel.Workbook;
import org.varwright.basis.Check;
import org.varwright.energize.Energize;
import org.varwright.energize.ExpectedSensor;
import org.varwright.fit.FitResult;
import org.varwright.fit.RunOn;
import org.varwright.problem.Problem;
import org.varwright.report.InputFile;
import org.varwright.report.ReportInput;
import org.varwright.survey.Measured;
import org.varwright.survey.ReadingRow;
import org.varwright.survey.Survey;
import org.varwright.survey.UnitSurvey;

/** The results of a job as a workbook, to sort and to keep: one sheet a subject, numbers as numbers, units in the column names. */
public final class ReportWorkbook {
    private static final double MICRO = 1e6;

    /** Every entry of the file has this time (1 January 1980, the first that the format knows), so that the same job gives the same bytes. */
    private static final long NO_TIME = 315_532_800_000L;

    private ReportWorkbook() {}

    /** The workbook: the same bytes for the same input. */
    public static byte[] write(ReportInput input) {
        return write(input, workbook -> {});
    }

    /** The same with more sheets behind the first. */
    static byte[] write(ReportInput input, Consumer<Workbook> more) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            Workbook workbook = new Workbook(out, "Varwright", "1.0");
            job(workbook, input);
            more.accept(workbook);
            input.survey().ifPresent(survey -> survey(workbook, survey));
            input.fit().ifPresent(fit -> fit(workbook, fit));
            input.energize().ifPresent(energize -> energize(workbook, energize));
            checks(workbook, input);
            workbook.finish();
            return timeless(out.toByteArray(), input.date().toString());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void job(Workbook workbook, ReportInput input) {
        SheetWriter sheet = new SheetWriter(workbook.newWorksheet("Job"), List.of("what", "value"));
        sheet.row("bank", input.bank().name());
        sheet.row("site", input.bank().site());
        sheet.row("date", input.date().toString());
        sheet.row("job", input.job().number());
        sheet.row("alarm", input.job().alarm());
        sheet.row("reason", input.job().reason());
        input.survey().ifPresent(survey -> {
            sheet.row("readings", survey.readings().file());
            survey.findings().forEach(finding -> sheet.row("whole bank", finding));
        });
        input.fit().ifPresent(fit -> {
            sheet.row(
                    "fit",
                    fit.outcome().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '));
            sheet.row("proof", fit.proof());
        });
        for (InputFile file : input.files()) {
            sheet.row(file.what(), file.name() + ", SHA-256 " + file.sha256());
        }
        sheet.row("note", "Planning information, never a permission to touch");
        sheet.finish();
    }

    /** The columns of readings carry the names that the reader of readings knows: the sheet can be read again. */
    private static void survey(Workbook workbook, Survey survey) {
        SheetWriter sheet = new SheetWriter(
                workbook.newWorksheet("Units"),
                List.of(
                        "position",
                        "serial",
                        "capacitance (µF)",
                        "reference (µF)",
                        "held against",
                        "off (%)",
                        "verdict",
                        "probability",
                        "sections shorted",
                        "elements out",
                        "voltage inside / rated",
                        "discharge resistance (MΩ)",
                        "finding",
                        "reason",
                        "remarks"));
        for (UnitSurvey unit : survey.units()) {
            sheet.row(
                    unit.position().name(),
                    unit.serial(),
                    times(unit.capacitanceFarads(), MICRO),
                    times(unit.referenceFarads(), MICRO),
                    unit.reference().map(reference -> reference.words()),
                    unit.ratio().isPresent()
                            ? OptionalDouble.of(100.0 * (unit.ratio().getAsDouble() - 1.0))
                            : OptionalDouble.empty(),
                    unit.verdict().words(),
                    unit.probability(),
                    unit.sectionsShorted(),
                    unit.elementsOut(),
                    unit.voltagePerRated(),
                    resistance(survey, unit),
                    unit.finding(),
                    unit.reason(),
                    String.join(" ", unit.remarks()));
        }
        sheet.finish();
        legs(workbook, survey);
        others(workbook, survey);
    }

    private static OptionalDouble times(OptionalDouble value, double factor) {
        return value.isPresent() ? OptionalDouble.of(value.getAsDouble() * factor) : OptionalDouble.empty();
    }

    /** The last reading of the discharge resistor in MΩ; what the meter showed where that is no number. */
    private static Object resistance(Survey survey, UnitSurvey unit) {
        Optional<Measured> last = survey.readings().rows().stream()
                .filter(row -> row.position().equals(unit.position()))
                .map(ReadingRow::resistance)
                .flatMap(Optional::stream)
                .reduce((first, second) -> second);
        return last.isPresent() && last.get().value().isEmpty()
                ? last.get().raw()
                : times(last.map(Measured::value).orElse(OptionalDouble.empty()), 1e-6);
    }

    private static void legs(Workbook workbook, Survey survey) {
        SheetWriter sheet = new SheetWriter(
                workbook.newWorksheet("Legs and stages"),
                List.of(
                        "place",
                        "leg capacitance (µF)",
                        "off the mean (%)",
                        "units",
                        "taken at reference",
                        "kvar",
                        "kvar by nameplates",
                        "largest / smallest phase"));
        Optional<Double> none = Optional.empty();
        survey.legs()
                .forEach(leg -> sheet.row(
                        leg.stage() + "/" + leg.leg(),
                        leg.capacitanceFarads() * MICRO,
                        100.0 * leg.deviation(),
                        leg.units(),
                        leg.assumed()));
        survey.stages()
                .forEach(stage -> sheet.row(
                        stage.name(),
                        none,
                        none,
                        none,
                        stage.assumed(),
                        stage.vars() / 1e3,
                        stage.ratedVars() / 1e3,
                        stage.spread()));
        sheet.finish();
    }

    private static void others(Workbook workbook, Survey survey) {
        if (!survey.groups().isEmpty()
                || !survey.spots().isEmpty()
                || !survey.trends().isEmpty()) {
            SheetWriter sheet = new SheetWriter(
                    workbook.newWorksheet("Other readings"),
                    List.of("place", "row", "what", "read", "verdict", "reason"));
            survey.groups()
                    .forEach(group -> sheet.row(
                            group.name(),
                            group.row(),
                            "units together, µF",
                            group.capacitanceFarads() * MICRO,
                            group.verdict().words(),
                            group.reason()));
            survey.spots()
                    .forEach(spot -> sheet.row(
                            spot.name(),
                            spot.row(),
                            spot.what(),
                            spot.shown(),
                            spot.verdict().code(),
                            spot.reason()));
            survey.trends()
                    .forEach(trend -> sheet.row(
                            trend.position(),
                            Optional.empty(),
                            "since earlier visits, %",
                            100.0 * trend.change(),
                            trend.drifts() ? "drifts" : "as before",
                            trend.sentence()));
            sheet.finish();
        }
        List<Problem> unused = survey.readings().problems();
        if (!unused.isEmpty()) {
            SheetWriter sheet = new SheetWriter(workbook.newWorksheet("Not used"), List.of("where", "why"));
            unused.forEach(problem -> sheet.row(problem.place().print(), problem.text()));
            sheet.finish();
        }
    }

    private static void fit(Workbook workbook, FitResult fit) {
        SheetWriter sheet = new SheetWriter(
                workbook.newWorksheet("Lifts"), List.of("lift", "do", "serial", "from", "to", "wait aside", "why"));
        fit.moves()
                .forEach(move -> sheet.row(
                        move.number(),
                        move.kind().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '),
                        move.serial(),
                        move.from(),
                        move.to(),
                        move.setDown() ? "yes" : "",
                        move.why()));
        sheet.finish();
        if (!fit.runOn().isEmpty()) {
            SheetWriter runOn = new SheetWriter(
                    workbook.newWorksheet("Run on"),
                    List.of(
                            "stage",
                            "missing",
                            "way",
                            "left empty",
                            "kvar lost",
                            "limits kept",
                            "voltage / rated",
                            "unbalance",
                            "unit",
                            "alarm",
                            "trip"));
            for (RunOn advice : fit.runOn()) {
                for (RunOn.Option option : advice.options()) {
                    runOn.row(
                            advice.stage(),
                            advice.missing(),
                            option.title(),
                            String.join(", ", option.empty()),
                            option.varsLost() / 1e3,
                            option.limitsKept() ? "yes" : "no",
                            option.highestUnitVoltagePerRated(),
                            option.signalPrimary(),
                            option.signalUnit(),
                            option.settings().map(RunOn.Settings::alarmPrimary).orElse(OptionalDouble.empty()),
                            option.settings().map(RunOn.Settings::tripPrimary).orElse(OptionalDouble.empty()));
                }
            }
            runOn.finish();
        }
    }

    private static void energize(Workbook workbook, Energize energize) {
        SheetWriter sheet = new SheetWriter(
                workbook.newWorksheet("First energization"),
                List.of("where", "unit", "expected", "low", "high", "measured", "verdict"));
        Map<String, org.varwright.energize.Comparison> measured = new java.util.LinkedHashMap<>();
        energize.comparison().forEach(comparison -> measured.put(comparison.name(), comparison));
        energize.currents()
                .forEach(current -> sheet.row(
                        current.name(),
                        "A",
                        current.amperes().expected(),
                        current.amperes().low(),
                        current.amperes().high(),
                        Optional.ofNullable(measured.get(current.name())).map(c -> c.measured()),
                        Optional.ofNullable(measured.get(current.name())).map(c -> c.words())));
        for (ExpectedSensor sensor : energize.sensors()) {
            sheet.row(
                    sensor.name(),
                    sensor.senses().unit(),
                    sensor.read().expected(),
                    sensor.read().low(),
                    sensor.read().high(),
                    Optional.ofNullable(measured.get(sensor.name())).map(c -> c.measured()),
                    Optional.ofNullable(measured.get(sensor.name())).map(c -> c.words()));
        }
        sheet.finish();
    }

    private static void checks(Workbook workbook, ReportInput input) {
        SheetWriter sheet = new SheetWriter(
                workbook.newWorksheet("Checks"),
                List.of("subject", "value", "limit", "unit", "verdict", "formula", "source"));
        input.survey().ifPresent(result -> result.checks().forEach(check -> check(sheet, check)));
        input.fit().ifPresent(result -> result.checks().forEach(check -> check(sheet, check)));
        input.energize().ifPresent(result -> result.checks().forEach(check -> check(sheet, check)));
        input.discharge().ifPresent(result -> result.checks().forEach(check -> check(sheet, check)));
        sheet.finish();
    }

    private static void check(SheetWriter sheet, Check check) {
        sheet.row(
                check.subject(),
                check.value(),
                check.limit(),
                check.unit(),
                check.verdict().code(),
                check.basis().id() + ": " + check.basis().formula(),
                check.basis().source().print());
    }

    /** The library stamps the file with the clock; the job's date stands there instead. */
    private static byte[] timeless(byte[] workbook, String date) throws IOException {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try (ZipFile in = ZipFile.builder()
                        .setSeekableByteChannel(new SeekableInMemoryByteChannel(workbook))
                        .get();
                ZipOutputStream zip = new ZipOutputStream(out)) {
            for (ZipArchiveEntry entry : Collections.list(in.getEntries())) {
                byte[] part;
                try (InputStream stream = in.getInputStream(entry)) {
                    part = stream.readAllBytes();
                }
                if (entry.getName().equals("docProps/core.xml")) {
                    part = new String(part, StandardCharsets.UTF_8)
                            .replaceAll("(<dcterms:[a-z]+[^>]*>)[^<]*", "$1" + date + "T00:00:00Z")
                            .getBytes(StandardCharsets.UTF_8);
                }
                ZipEntry copy = new ZipEntry(entry.getName());
                copy.setTime(NO_TIME);
                zip.putNextEntry(copy);
                zip.write(part);
                zip.closeEntry();
            }
        }
        return out.toByteArray();
    }
}
