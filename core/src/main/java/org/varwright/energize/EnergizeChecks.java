package org.varwright.energize;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;

/** Values of a first energization held against limits. */
final class EnergizeChecks {
    /** Continuous voltage over rated: both standards say 1.10. */
    static final double VOLTAGE_LIMIT = 1.10;

    private EnergizeChecks() {}

    static Check unitVolts(Bank bank, Stage stage, BusVolts bus, double perRated) {
        Source source = bank.standard() == Standard.IEEE
                ? Source.published("IEEE Std 18: 110 % of rated rms voltage")
                : Source.unchecked("IEC 60871-1: 1.10 U_N, 12 h in 24 h");
        return new Check(
                stage.name() + ": highest unit voltage over rated",
                perRated,
                VOLTAGE_LIMIT,
                "",
                within(perRated, VOLTAGE_LIMIT),
                new Basis(
                        "ENG-5",
                        "V_unit/V_rated ≤ 1.10, V_unit from the network",
                        List.of(
                                new Term("V_bus", "highest line voltage measured", bus.highest(), "V"),
                                new Term(
                                        "V_rated",
                                        "rated voltage of a unit's leg",
                                        stage.unit().legVolts(),
                                        "V")),
                        source));
    }

    static Check current(Bank bank, Stage stage, List<ExpectedCurrent> currents) {
        ExpectedCurrent worst = currents.getFirst();
        for (ExpectedCurrent c : currents) {
            // Equal to rounding, the first counts: the same answer in every home of the code.
            if (part(c) > part(worst) * (1.0 + 1e-9)) {
                worst = c;
            }
        }
        boolean ieee = bank.standard() == Standard.IEEE;
        double limit = ieee ? 1.35 : 1.30;
        Source source = ieee
                ? Source.published("IEEE Std 18: 135 % of nominal rms current")
                : Source.unchecked("IEC 60871-1: 1.30 I_N");
        double value = part(worst);
        return new Check(
                stage.name() + ": highest expected current over rated, fundamental",
                value,
                limit,
                "",
                within(value, limit),
                new Basis(
                        "ENG-6",
                        "I/I_rated",
                        List.of(
                                new Term(
                                        "I",
                                        "expected in " + worst.name(),
                                        worst.amperes().expected(),
                                        "A"),
                                new Term(
                                        "I_rated",
                                        "at rated voltage and nameplate capacitance",
                                        worst.ratedAmperes(),
                                        "A")),
                        source));
    }

    private static double part(ExpectedCurrent current) {
        return current.amperes().expected() / current.ratedAmperes();
    }

    static Optional<Check> systemVolts(Bank bank, BusVolts bus) {
        OptionalDouble highest = bank.system().maximumVolts();
        if (highest.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(new Check(
                "bus voltage against the system's highest",
                bus.highest(),
                highest.getAsDouble(),
                "V",
                bus.highest() <= highest.getAsDouble() ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        "ENG-5",
                        "V_bus ≤ V_max",
                        List.of(new Term(
                                "V_max", "highest sustained voltage by the bank file", highest.getAsDouble(), "V")),
                        Source.commonPractice("the bank file"))));
    }

    /** Whether the sensors should stay below their settings when the stage is switched on. */
    static List<Check> settings(Bank bank, List<ExpectedSensor> sensors) {
        List<Check> checks = new ArrayList<>();
        for (ExpectedSensor sensor : sensors) {
            for (Protection p : bank.protection()) {
                if (p.stage().equals(sensor.stage()) && p.senses() == sensor.senses()) {
                    setting(p, sensor, p.alarm(), "alarm").ifPresent(checks::add);
                    setting(p, sensor, p.trip(), "trip").ifPresent(checks::add);
                }
            }
        }
        return checks;
    }

    private static Optional<Check> setting(Protection p, ExpectedSensor sensor, OptionalDouble limit, String what) {
        Optional<Band> band = p.settingsArePrimary() ? Optional.of(sensor.primary()) : sensor.secondary();
        if (limit.isEmpty() || band.isEmpty()) {
            return Optional.empty();
        }
        double setting = limit.getAsDouble();
        Verdict verdict = band.get().expected() >= setting
                ? Verdict.FAIL
                : band.get().high() >= setting ? Verdict.WARN : Verdict.PASS;
        return Optional.of(new Check(
                sensor.name() + ": expected reading below its " + what,
                band.get().expected(),
                setting,
                sensor.senses().unit(),
                verdict,
                new Basis(
                        "ENG-7",
                        "expected < " + what + "; a warning where the upper end of the band reaches it",
                        List.of(
                                new Term(
                                        "S",
                                        "expected",
                                        band.get().expected(),
                                        sensor.senses().unit()),
                                new Term(
                                        "S_high",
                                        "upper end of the band",
                                        band.get().high(),
                                        sensor.senses().unit())),
                        Source.FIRST_PRINCIPLES)));
    }

    static List<Check> measured(List<Comparison> comparison) {
        List<Check> checks = new ArrayList<>();
        for (Comparison c : comparison) {
            boolean below = c.measured() < c.band().low();
            checks.add(new Check(
                    c.name() + ": measured, " + (below ? "lower" : "upper") + " end of its band",
                    c.measured(),
                    below ? c.band().low() : c.band().high(),
                    c.unit(),
                    c.verdict(),
                    new Basis(
                            "ENG-2",
                            "low ≤ measured ≤ high",
                            List.of(
                                    new Term(
                                            "expected",
                                            "from the network",
                                            c.band().expected(),
                                            c.unit()),
                                    new Term("low", "lower end", c.band().low(), c.unit()),
                                    new Term("high", "upper end", c.band().high(), c.unit())),
                            Source.FIRST_PRINCIPLES)));
        }
        return checks;
    }

    /** A value at the limit, to rounding, is within it. */
    private static Verdict within(double value, double limit) {
        return value <= limit * (1.0 + 1e-9) ? Verdict.PASS : Verdict.FAIL;
    }
}
