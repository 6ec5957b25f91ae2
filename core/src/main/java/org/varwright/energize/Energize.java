package org.varwright.energize;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Check;
import org.varwright.basis.Verdict;
import org.varwright.problem.Message;
import org.varwright.problem.Place;
import org.varwright.problem.VarwrightException;
import org.varwright.quantity.Dimension;

/**
 * First energization: what every line and leg should draw and every sensor show, and what measured values say.
 *
 * @param bank the bank
 * @param bus voltage measured
 * @param uncertainty of the instruments
 * @param units where the capacitance of each comes from, in the order of the bank
 * @param currents stage by stage, lines before legs
 * @param sensors in the order of the file
 * @param comparison of what was measured, in the order typed
 * @param explanations of stages with a value outside its band
 * @param checks values against limits
 * @param after15Minutes what to look at then
 * @param after8Hours what to look at then
 * @param cautions what holds always
 */
public record Energize(
        Bank bank,
        BusVolts bus,
        Uncertainty uncertainty,
        List<CountedUnit> units,
        List<ExpectedCurrent> currents,
        List<ExpectedSensor> sensors,
        List<Comparison> comparison,
        List<Explanation> explanations,
        List<Check> checks,
        List<String> after15Minutes,
        List<String> after8Hours,
        List<String> cautions) {
    public Energize {
        units = List.copyOf(units);
        currents = List.copyOf(currents);
        sensors = List.copyOf(sensors);
        comparison = List.copyOf(comparison);
        explanations = List.copyOf(explanations);
        checks = List.copyOf(checks);
        after15Minutes = List.copyOf(after15Minutes);
        after8Hours = List.copyOf(after8Hours);
        cautions = List.copyOf(cautions);
    }

    /**
     * What to expect of the whole bank, and what was measured against it.
     *
     * @param bank as read
     * @param fittedFarads capacitance measured of units as they are fitted now [F]; where there is none, the bank file's value counts, else the nameplate's
     * @param bus line voltages measured with the stage on
     * @param uncertainty of the instruments
     * @param measured values read; empty before the switch is closed
     * @throws VarwrightException {@code MEASURED_UNKNOWN}, {@code MEASURED_DIMENSION}, {@code MEASURED_TWICE}
     */
    public static Energize of(
            Bank bank,
            Map<UnitPosition, Double> fittedFarads,
            BusVolts bus,
            Uncertainty uncertainty,
            List<MeasuredValue> measured) {
        Fitted fitted = Fitted.of(bank, fittedFarads);
        List<ExpectedCurrent> currents = new ArrayList<>();
        List<ExpectedSensor> sensors = new ArrayList<>();
        List<Check> checks = new ArrayList<>();
        for (Stage stage : bank.stages()) {
            StagePrediction prediction = new StagePrediction(bank, stage, fitted, bus, uncertainty);
            checks.add(EnergizeChecks.unitVolts(bank, stage, bus, prediction.highestUnitPerRated()));
            List<ExpectedCurrent> own = prediction.currents();
            checks.add(EnergizeChecks.current(bank, stage, own));
            currents.addAll(own);
            List<ExpectedSensor> seen = prediction.sensors();
            checks.addAll(EnergizeChecks.settings(bank, seen));
            sensors.addAll(seen);
        }
        EnergizeChecks.systemVolts(bank, bus).ifPresent(checks::add);
        Map<String, Expectation> expectations = expectations(currents, sensors);
        List<Comparison> comparison = compare(expectations, measured);
        checks.addAll(EnergizeChecks.measured(comparison));
        List<Explanation> explanations = new ArrayList<>();
        Explainer explainer = new Explainer(bank, fitted, bus, uncertainty);
        for (Stage stage : bank.stages()) {
            List<Comparison> own = comparison.stream()
                    .filter(c -> isOf(expectations, c, stage))
                    .toList();
            if (own.stream().anyMatch(c -> c.verdict() != Verdict.PASS)) {
                explanations.add(explainer.explain(stage, own));
            }
        }
        return new Energize(
                bank,
                bus,
                uncertainty,
                CountedUnit.all(bank, fitted),
                currents,
                sensors,
                comparison,
                explanations,
                checks,
                EnergizeNotes.after15Minutes(bank),
                EnergizeNotes.after8Hours(bank),
                EnergizeNotes.cautions(bank));
    }

    /** The same with more cautions, before the others. */
    public Energize warned(List<String> warnings) {
        List<String> all = new ArrayList<>(warnings);
        all.addAll(cautions);
        return new Energize(
                bank,
                bus,
                uncertainty,
                units,
                currents,
                sensors,
                comparison,
                explanations,
                checks,
                after15Minutes,
                after8Hours,
                all);
    }

    /** Whether every check passes and every measured value lies in its band. */
    public boolean isGood() {
        return checks.stream().allMatch(c -> c.verdict() != Verdict.FAIL);
    }

    /** What a name stands for. */
    private record Expectation(String name, String stage, Band band, Dimension dimension) {}

    private static Map<String, Expectation> expectations(List<ExpectedCurrent> currents, List<ExpectedSensor> sensors) {
        Map<String, Expectation> all = new LinkedHashMap<>();
        for (ExpectedCurrent c : currents) {
            all.put(key(c.name()), new Expectation(c.name(), c.stage(), c.amperes(), Dimension.CURRENT));
        }
        for (ExpectedSensor s : sensors) {
            Dimension dimension = s.senses().dimension();
            all.put(key(s.name()), new Expectation(s.name(), s.stage(), s.read(), dimension));
        }
        return all;
    }

    private static boolean isOf(Map<String, Expectation> expectations, Comparison comparison, Stage stage) {
        Expectation expectation = expectations.get(key(comparison.name()));
        return expectation != null && expectation.stage().equals(stage.name());
    }

    private static List<Comparison> compare(Map<String, Expectation> expectations, List<MeasuredValue> measured) {
        List<Comparison> comparison = new ArrayList<>();
        Set<String> seen = new HashSet<>();
        for (MeasuredValue value : measured) {
            Expectation expectation = expectations.get(key(value.name()));
            if (expectation == null) {
                String names =
                        expectations.values().stream().map(Expectation::name).collect(Collectors.joining(", "));
                throw new VarwrightException(Message.MEASURED_UNKNOWN, Place.NOWHERE, value.name(), names);
            }
            if (expectation.dimension() != value.dimension()) {
                throw new VarwrightException(
                        Message.MEASURED_DIMENSION,
                        Place.NOWHERE,
                        expectation.name(),
                        value.dimension().format(value.value()),
                        expectation.dimension().example());
            }
            if (!seen.add(expectation.name())) {
                throw new VarwrightException(Message.MEASURED_TWICE, Place.NOWHERE, expectation.name());
            }
            comparison.add(new Comparison(
                    expectation.name(),
                    value.value(),
                    expectation.band(),
                    expectation.dimension().symbol(),
                    expectation.band().holds(value.value()) ? Verdict.PASS : Verdict.FAIL));
        }
        return comparison;
    }

    private static String key(String name) {
        return name.strip().replaceAll("\\s*/\\s*", "/").replaceAll("\\s+", " ").toLowerCase(java.util.Locale.ROOT);
    }
}
