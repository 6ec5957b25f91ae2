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
import java.util.stream.Stream;
import org.varwright.bank.Bank;
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
import org.varwright.job.JobReadings;
import org.varwright.job.Order;
import org.varwright.jobsheet.JobSheet;
import org.varwright.problem.Problem;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;
import org.varwright.quantity.Reading;
import org.varwright.survey.Survey;
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
        JobReadings read = JobReadings.of(job);
        read.tables().forEach(t -> files.add(InputFile.of(t.what(), t.name(), bytes(t.text()))));
        remarks.addAll(read.remarks());
        Optional<Survey> survey = read.found();
        Optional<FitInput> fitInput = survey.map(s -> FitInput.from(s, read.spares(), FitOptions.USUAL));
        Optional<FitResult> fit = fitInput.map(Fit::plan);
        ReportInput results =
                ReportInput.of(bank, sheet(), date(), List.of()).with(Discharge.of(bank, Optional.empty()));
        results = survey.isPresent() ? results.with(survey.get()) : results;
        results = fit.isPresent() ? results.with(fit.get()) : results;
        Optional<Energize> energize = energize(fitted(fitInput, read, lifts), uncertainty(read));
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

    // ---- the bank as fitted

    /** Capacitance of units as they stand now, as far as it is known [F], 0 where none conducts: as found, with the lifts made. */
    private Map<UnitPosition, Double> fitted(
            Optional<FitInput> asFound, JobReadings read, List<Counted<Fact.UnitMoved>> lifts) {
        Map<String, Double> bySerial = new LinkedHashMap<>();
        read.spares().forEach(s -> s.capacitanceFarads().ifPresent(c -> bySerial.put(s.serial(), c)));
        Map<UnitPosition, Double> fitted = new LinkedHashMap<>();
        for (Fitted unit : asFound.map(FitInput::units).orElse(List.of())) {
            double farads = unit.role() == Fitted.Role.EMPTY ? 0.0 : unit.capacitanceFarads();
            if (unit.isMeasured() || !(farads > 0.0)) {
                fitted.put(unit.at(), farads);
            }
            if (unit.isKnown()) {
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
        read.after().ifPresent(after -> fitted.putAll(canBeRight(after)));
        return fitted;
    }

    /** What was read, where it is a capacitance that can be right [F]. */
    private static Map<UnitPosition, Double> canBeRight(Survey survey) {
        Map<UnitPosition, Double> read = new LinkedHashMap<>();
        survey.units().stream()
                .filter(u -> u.verdict() != UnitVerdict.MEASURE_AGAIN)
                .forEach(u -> u.capacitanceFarads().ifPresent(c -> read.put(u.position(), c)));
        return read;
    }

    // ---- energization

    /** By the worst of the meters that were read. */
    private static Uncertainty uncertainty(JobReadings read) {
        return Uncertainty.USUAL.withMeter(Stream.of(read.found(), read.after())
                .flatMap(Optional::stream)
                .mapToDouble(Survey::largestMeterLimit)
                .max()
                .orElse(0.0));
    }

    private Optional<Energize> energize(Map<UnitPosition, Double> fitted, Uncertainty uncertainty) {
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
                Energize.of(bank, fitted, busVolts, uncertainty, List.of(one));
                usable.add(one);
            } catch (VarwrightException e) {
                remark("what was measured at \u201c" + place + "\u201d is not used", e);
            }
        });
        return Optional.of(Energize.of(bank, fitted, busVolts, uncertainty, usable));
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
