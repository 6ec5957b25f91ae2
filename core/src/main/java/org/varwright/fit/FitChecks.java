package org.varwright.fit;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.UnitPosition;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;

/** Limits held against the bank as it will be. */
final class FitChecks {
    private FitChecks() {}

    static List<Check> of(Bank bank, Arrangement after, Balance balance) {
        List<Check> checks = new ArrayList<>();
        checks.add(voltage(bank, balance));
        balance.sensors().forEach(s -> alarm(bank, s, checks));
        for (Stage stage : bank.stages()) {
            legs(bank, stage, balance, checks);
            units(stage, after, checks);
        }
        return checks;
    }

    private static Check voltage(Bank bank, Balance balance) {
        Source source = bank.standard() == Standard.IEEE
                ? Source.published("IEEE Std 18: 110 % of rated rms voltage, continuous")
                : Source.unchecked("IEC 60871-1: 1.10 U_N, 12 h in 24 h");
        double highest = bank.system().maximumVolts().orElse(bank.system().nominalVolts());
        double value = balance.highestUnitVoltagePerRated();
        return new Check(
                "highest voltage on a unit, over rated"
                        + balance.highestUnit().map(p -> ", at " + p.name()).orElse(""),
                value,
                FitLimits.VOLTS_PER_RATED,
                "",
                value <= FitLimits.VOLTS_PER_RATED * (1.0 + 1e-9) ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        FitBases.VOLTAGE,
                        "V/Vr <= 1.10 at the highest voltage of the system",
                        List.of(new Term("U", "line to line", highest, "V")),
                        source));
    }

    private static void alarm(Bank bank, Balance.SensorReading sensor, List<Check> checks) {
        if (sensor.alarmPrimary().isEmpty()) {
            return;
        }
        double rise = bank.system().maximumVolts().orElse(bank.system().nominalVolts())
                / bank.system().nominalVolts();
        double value = sensor.primary().magnitude() * rise;
        double limit = sensor.alarmPrimary().getAsDouble();
        checks.add(new Check(
                sensor.name() + " below its alarm (primary)",
                value,
                limit,
                sensor.senses().unit(),
                value < limit * (1.0 + 1e-9) ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        FitBases.ALARM,
                        "|sensor| < alarm at the highest voltage of the system",
                        List.of(
                                new Term(
                                        "s",
                                        "at nominal voltage",
                                        sensor.primary().magnitude(),
                                        sensor.senses().unit()),
                                new Term("k", "highest over nominal voltage", rise, "")),
                        Source.FIRST_PRINCIPLES)));
    }

    private static void legs(Bank bank, Stage stage, Balance balance, List<Check> checks) {
        double least = Double.MAX_VALUE;
        double most = 0.0;
        for (Balance.LegReading leg : balance.legs()) {
            if (leg.stage().equals(stage.name())) {
                double perNameplate = leg.capacitanceFarads()
                        / (stage.unit().capacitanceFarads()
                                * stage.layoutOf(leg.leg()).units()
                                * stage.layoutOf(leg.leg()).strings()
                                / stage.layoutOf(leg.leg()).groups());
                least = Math.min(least, perNameplate);
                most = Math.max(most, perNameplate);
            }
        }
        if (most <= 0.0) {
            return;
        }
        double apart = least > 0.0 ? most / least : Double.MAX_VALUE;
        checks.add(new Check(
                stage.name() + ": " + "largest leg over smallest",
                apart,
                FitLimits.LEGS_APART,
                "",
                apart <= FitLimits.LEGS_APART ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        FitBases.LEGS,
                        "max C/min C over the legs, each over its nameplate's",
                        List.of(),
                        Source.unchecked("IEC 60871-1" + (bank.standard() == Standard.IEEE ? ", as a guide" : "")))));
    }

    private static void units(Stage stage, Arrangement after, List<Check> checks) {
        double nameplate = stage.unit().capacitanceFarads();
        for (UnitPosition position : stage.positions()) {
            double farads = after.farads(position);
            double low = nameplate * (1.0 + stage.unit().tolerance().low());
            double high = nameplate * (1.0 + stage.unit().tolerance().high());
            if (farads > 0.0 && (farads < low * (1.0 - 1e-9) || farads > high * (1.0 + 1e-9))) {
                boolean above = farads > high;
                checks.add(new Check(
                        position.name() + ": capacitance " + (above ? "above" : "below") + " the nameplate's tolerance",
                        farads,
                        above ? high : low,
                        "F",
                        Verdict.WARN,
                        new Basis(
                                FitBases.LEGS,
                                "C inside the tolerance of the nameplate",
                                List.of(new Term("Cr", "nameplate", nameplate, "F")),
                                Source.commonPractice("the bank file's tolerance"))));
            }
        }
    }
}
