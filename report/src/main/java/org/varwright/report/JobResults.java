package org.varwright.report;

import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.varwright.bank.Bank;
import org.varwright.bank.Spare;
import org.varwright.bank.UnitPosition;
import org.varwright.discharge.Discharge;
import org.varwright.energize.BusVolts;
import org.varwright.energize.Energize;
import org.varwright.energize.MeasuredValue;
import org.varwright.energize.Uncertainty;
import org.varwright.fit.Fit;
import org.varwright.fit.FitInput;
import org.varwright.fit.FitOptions;
import org.varwright.fit.FitResult;
import org.varwright.fit.Fitted;
import org.varwright.job.Counted;
import org.varwright.job.Fact;
import org.varwright.job.Job;
import org.varwright.job.Order;
import org.varwright.job.ReadingsTable;
import org.varwright.jobsheet.JobSheet;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;
import org.varwright.survey.Readings;
import org.varwright.survey.ReadingsFile;
import org.varwright.survey.SparesFile;
import org.varwright.survey.Survey;
import org.varwright.survey.SurveySettings;
import org.varwright.survey.UnitVerdict;

/** What follows from the facts of a job: verdicts on readings, what to fit, currents against the prediction. */
final class JobResults {
    /** The place under which the voltage of the bus is written down. */
    private static final String BUS = "bus";

    private final Job job;
    private final Bank bank;
    private final ZoneId zone;
    private final List<String> remarks = new ArrayList<>();
    private final List<InputFile> files = new ArrayList<>();

    JobResults(Job job, Bank bank, ZoneId zone) {
        this.job = job;
        this.bank = bank;
        this.zone = zone;
    }

    JobReport report(Photos photos) {
        files.add(InputFile.of("job log", job.log().job(), bytes(job.log().text())));
        files.add(InputFile.of("bank file", bank.name(), bytes(job.bankText())));
        List<Counted<Fact.UnitMoved>> lifts = job.counted(Fact.UnitMoved.class);
        Optional<Survey> survey = survey(before(lifts));
        List<Spare> spares = spares();
        Optional<FitInput> fitInput = survey.map(s -> FitInput.from(s, spares, FitOptions.USUAL));
        Optional<FitResult> fit = fitInput.map(Fit::plan);
        ReportInput results =
                ReportInput.of(bank, sheet(), date(), List.of()).with(Discharge.of(bank, Optional.empty()));
        results = survey.isPresent() ? results.with(survey.get()) : results;
        results = fit.isPresent() ? results.with(fit.get()) : results;
        Optional<Energize> energize = energize(fitted(fitInput, spares, lifts));
        results = energize.isPresent() ? results.with(energize.get()) : results;
        return new JobReport(job, bank, zone, results.withFiles(files), remarks, photos);
    }

    private LocalDate date() {
        return new Times(zone).day(job.log().events().getLast().event());
    }

    private JobSheet sheet() {
        Optional<Fact.Opened> opened =
                job.counted(Fact.Opened.class).stream().map(Counted::fact).findFirst();
        Set<String> people = new LinkedHashSet<>();
        job.log().events().forEach(e -> people.add(e.event().by()));
        List<Order> orders = job.orders();
        return new JobSheet(
                job.log().job(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                orders.isEmpty() ? List.of() : orders.getLast().work().access(),
                OptionalDouble.empty(),
                Map.of(),
                opened.flatMap(Fact.Opened::number),
                opened.flatMap(Fact.Opened::alarm),
                opened.flatMap(Fact.Opened::reason),
                Optional.empty(),
                people.stream()
                        .map(p -> new JobSheet.Person(p, Optional.empty()))
                        .toList(),
                Optional.empty(),
                Map.of());
    }

    // ---- readings

    /** Readings up to the first lift: they say what was found. Readings after it are of the bank as fitted. */
    private List<Counted<Fact.ReadingTaken>> before(List<Counted<Fact.UnitMoved>> lifts) {
        return job.counted(Fact.ReadingTaken.class).stream()
                .filter(r -> lifts.isEmpty()
                        || r.event().clock().compareTo(lifts.getFirst().event().clock()) < 0)
                .toList();
    }

    private Optional<Survey> survey(List<Counted<Fact.ReadingTaken>> typed) {
        List<Readings> tables = new ArrayList<>();
        for (Counted<Fact.ReadingsImported> table : job.counted(Fact.ReadingsImported.class)) {
            readings(table.fact().fileName(), table.fact().text()).ifPresent(tables::add);
        }
        ReadingsTable.of(typed)
                .flatMap(text -> readings("readings typed in the job", text))
                .ifPresent(tables::add);
        if (tables.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Survey.of(bank, together(tables), settings()));
    }

    private Optional<Readings> readings(String name, String text) {
        files.add(InputFile.of("readings", name, bytes(text)));
        try {
            return Optional.of(ReadingsFile.read(bank, name, bytes(text)));
        } catch (VarwrightException e) {
            remark("readings \u201c" + name + "\u201d are not used", e);
            return Optional.empty();
        }
    }

    /** One table of all rows: imported tables in their order, then what was typed. */
    private static Readings together(List<Readings> tables) {
        if (tables.size() == 1) {
            return tables.getFirst();
        }
        return new Readings(
                String.join(" + ", tables.stream().map(Readings::file).toList()),
                tables.stream().flatMap(t -> t.rows().stream()).toList(),
                tables.stream().flatMap(t -> t.spots().stream()).toList(),
                tables.stream().flatMap(t -> t.understood().stream()).toList(),
                tables.stream().flatMap(t -> t.notices().stream()).toList(),
                tables.stream().flatMap(t -> t.problems().stream()).toList());
    }

    private List<Spare> spares() {
        List<Spare> spares = new ArrayList<>();
        for (Counted<Fact.SparesImported> table : job.counted(Fact.SparesImported.class)) {
            String name = table.fact().fileName();
            byte[] text = bytes(table.fact().text());
            files.add(InputFile.of("spares", name, text));
            try {
                spares.addAll(SparesFile.read(bank, name, text).spares());
            } catch (VarwrightException e) {
                remark("spares \u201c" + name + "\u201d are not used", e);
            }
        }
        return spares.isEmpty() ? bank.spares() : spares;
    }

    // ---- the bank as fitted

    /** Capacitance of units as they stand now, as far as it is known [F], 0 where none conducts: as found, with the lifts made. */
    private Map<UnitPosition, Double> fitted(
            Optional<FitInput> asFound, List<Spare> spares, List<Counted<Fact.UnitMoved>> lifts) {
        Map<String, Double> bySerial = new LinkedHashMap<>();
        spares.forEach(s -> s.capacitanceFarads().ifPresent(c -> bySerial.put(s.serial(), c)));
        Map<UnitPosition, Double> fitted = new LinkedHashMap<>();
        for (Fitted unit : asFound.map(FitInput::units).orElse(List.of())) {
            double farads = unit.role() == Fitted.Role.EMPTY ? 0.0 : unit.capacitanceFarads();
            if (unit.from() == Fitted.From.MEASURED || !(farads > 0.0)) {
                fitted.put(unit.at(), farads);
            }
            if (unit.from() == Fitted.From.MEASURED || unit.from() == Fitted.From.KNOWN) {
                unit.serial().ifPresent(serial -> bySerial.put(serial, unit.capacitanceFarads()));
            }
        }
        for (Counted<Fact.UnitMoved> lift : lifts) {
            lift.fact().from().flatMap(bank::position).ifPresent(from -> fitted.put(from, 0.0));
        }
        for (Counted<Fact.UnitMoved> lift : lifts) {
            lift.fact().to().flatMap(bank::position).ifPresent(to -> {
                Double farads = bySerial.get(lift.fact().serial());
                if (farads == null) {
                    fitted.remove(to);
                    remarks.add("No capacitance is on file of " + lift.fact().serial() + ", fitted at " + to.name()
                            + ": the bank file's value for that place is used, else the nameplate's. Measure it.");
                } else {
                    fitted.put(to, farads);
                }
            });
        }
        fitted.putAll(readAfter(lifts));
        return fitted;
    }

    /** What was read after the lifts, where it is a capacitance that can be right [F]. */
    private Map<UnitPosition, Double> readAfter(List<Counted<Fact.UnitMoved>> lifts) {
        Set<Counted<Fact.ReadingTaken>> earlier = new LinkedHashSet<>(before(lifts));
        List<Counted<Fact.ReadingTaken>> later = job.counted(Fact.ReadingTaken.class).stream()
                .filter(r -> !earlier.contains(r))
                .toList();
        Map<UnitPosition, Double> read = new LinkedHashMap<>();
        ReadingsTable.of(later)
                .flatMap(text -> readings("readings typed after the lifts", text))
                .map(r -> Survey.of(bank, r, settings()))
                .ifPresent(survey -> survey.units().stream()
                        .filter(u -> u.verdict() != UnitVerdict.MEASURE_AGAIN)
                        .forEach(u -> u.capacitanceFarads().ifPresent(c -> read.put(u.position(), c))));
        return read;
    }

    private SurveySettings settings() {
        return SurveySettings.of(bank.standard(), SurveySettings.USUAL_METER_LIMIT);
    }

    // ---- energization

    private Optional<Energize> energize(Map<UnitPosition, Double> fitted) {
        Map<String, String> byPlace = new LinkedHashMap<>();
        for (Counted<Fact.Measured> measured : job.counted(Fact.Measured.class)) {
            byPlace.put(measured.fact().place().strip(), measured.fact().value().strip());
        }
        String bus = byPlace.remove(BUS);
        if (bus == null) {
            if (!byPlace.isEmpty()) {
                remarks.add(
                        "The voltage of the bus was not measured: nothing can be held against a prediction. Measure it as"
                                + " \u201cbus\u201d.");
            }
            return Optional.empty();
        }
        if (!(Dimension.VOLTAGE.parse(bus) instanceof Reading.Value volts)) {
            remarks.add("The voltage of the bus, \u201c" + bus + "\u201d, is no voltage: write it such as 12.4 kV.");
            return Optional.empty();
        }
        List<String> open = fitted.entrySet().stream()
                .filter(e -> !(e.getValue() > 0.0))
                .map(e -> e.getKey().name())
                .toList();
        if (!open.isEmpty()) {
            remarks.add("No currents are predicted: by this log " + String.join(", ", open)
                    + (open.size() == 1 ? " is" : " are") + " left without a unit that conducts.");
            return Optional.empty();
        }
        BusVolts busVolts = BusVolts.balanced(volts.si());
        List<MeasuredValue> usable = new ArrayList<>();
        byPlace.forEach((place, value) -> {
            try {
                MeasuredValue one = MeasuredValue.parse(place + "=" + value);
                Energize.of(bank, fitted, busVolts, Uncertainty.USUAL, List.of(one));
                usable.add(one);
            } catch (VarwrightException e) {
                remark("what was measured at \u201c" + place + "\u201d is not used", e);
            }
        });
        return Optional.of(Energize.of(bank, fitted, busVolts, Uncertainty.USUAL, usable));
    }

    private void remark(String what, VarwrightException e) {
        remarks.add(Values.capital(what) + ": "
                + String.join(
                        "; ", e.problems().stream().map(Problem::text).limit(3).toList())
                + ".");
    }

    private static byte[] bytes(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
