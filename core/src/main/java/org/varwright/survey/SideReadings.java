package org.varwright.survey;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import org.varwright.bank.Bank;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.discharge.Decay;
import org.varwright.discharge.DischargeRule;
import org.varwright.discharge.Resistance;
import org.varwright.quantity.Dimension;

/** Holds discharge resistance, insulation and fuse resistance against their limits. */
final class SideReadings {
    /** A fuse that has operated or makes no contact: its unit is not in the circuit, and stays charged. */
    static final String FUSE_OPEN = "fuse-open";

    /** Below this a discharge resistance is a pair of leads that touch [Ω]; common practice. */
    private static final double TOUCHING_OHMS = 1000.0;

    /** Above this multiple of what is expected a discharge resistor counts as open; common practice. */
    private static final double OPEN_TIMES = 10.0;

    /** How far a discharge resistance may be from its nameplate; common practice. */
    private static final double NAMEPLATE_PART = 0.10;

    /** How far fuses of one set may be apart (ANSI/NETA MTS-2019). */
    private static final double FUSE_PART = 0.15;

    /** From this on a fuse is open, whatever its mates read [Ω]: whole ones have far less than an ohm; common practice, no source. */
    private static final double OPEN_FUSE_OHMS = 100.0;

    private static final double WARM_CELSIUS = 55.0;
    private static final double HOTTEST_CELSIUS = 65.0;

    /** Stands for a resistance that no limit asks for [Ω]. */
    private static final double NO_LIMIT_OHMS = 1e15;

    private final Bank bank;
    private final Map<String, OptionalDouble> fuseMedian = new LinkedHashMap<>();

    SideReadings(Bank bank, List<Gathered> all) {
        this.bank = bank;
        for (Stage stage : bank.stages()) {
            double[] ohms = all.stream()
                    .filter(unit -> unit.stage().equals(stage))
                    .flatMap(unit -> last(unit, ReadingRow::fuse).stream())
                    .flatMapToDouble(measured -> measured.value().stream())
                    .toArray();
            fuseMedian.put(
                    stage.name(), ohms.length >= 3 ? OptionalDouble.of(Robust.median(ohms)) : OptionalDouble.empty());
        }
    }

    /**
     * What the other readings say.
     *
     * @param atLeast the verdict that they ask for
     * @param findings short names
     * @param remarks one sentence each
     * @param checks against limits
     */
    record Outcome(UnitVerdict atLeast, List<String> findings, List<String> remarks, List<Check> checks) {
        /** The same with one thing more. */
        Outcome and(UnitVerdict verdict, String finding, String remark) {
            List<String> names = new ArrayList<>(findings);
            names.add(finding);
            List<String> sentences = new ArrayList<>(remarks);
            sentences.add(remark);
            return new Outcome(atLeast.worse(verdict), names, sentences, checks);
        }
    }

    Outcome of(Gathered unit, double farads) {
        List<String> findings = new ArrayList<>();
        List<String> remarks = new ArrayList<>();
        List<Check> checks = new ArrayList<>();
        UnitVerdict verdict = UnitVerdict.HEALTHY;
        Optional<Measured> resistance = last(unit, ReadingRow::resistance);
        if (resistance.isPresent()) {
            verdict = verdict.worse(resistance(unit, resistance.get(), farads, findings, remarks, checks));
        }
        Optional<Measured> insulation = last(unit, ReadingRow::insulation);
        if (insulation.isPresent()) {
            verdict = verdict.worse(insulation(unit, insulation.get(), remarks, checks));
        }
        Optional<Measured> fuse = last(unit, ReadingRow::fuse);
        if (fuse.isPresent()) {
            verdict = verdict.worse(fuse(unit, fuse.get(), findings, remarks, checks));
        }
        Optional<Measured> caseTemperature = last(unit, ReadingRow::caseTemperature);
        if (caseTemperature.isPresent()) {
            verdict = verdict.worse(caseTemperature(unit, caseTemperature.get(), findings, remarks, checks));
        }
        return new Outcome(verdict, findings, remarks, checks);
    }

    /** Case temperature in service: look for the cause above 55 °C, never above 65 °C (TM 5-683 / MO-116, 1995, ch. 2); SRV-21. */
    private static UnitVerdict caseTemperature(
            Gathered unit, Measured measured, List<String> findings, List<String> remarks, List<Check> checks) {
        OptionalDouble read = switch (measured) {
            case Measured.Value value -> OptionalDouble.of(value.si());
            case Measured.Above above -> OptionalDouble.of(above.si());
            case Measured.Below below ->
                below.si() <= WARM_CELSIUS ? OptionalDouble.of(below.si()) : OptionalDouble.empty();
            case Measured.OverRange ignored -> OptionalDouble.empty();
        };
        boolean open = measured instanceof Measured.Above above && above.si() <= HOTTEST_CELSIUS;
        if (read.isEmpty() || open) {
            findings.add("case-not-read");
            remarks.add("Case temperature " + measured.raw()
                    + " doesn't say whether it is below 55 °C or above 65 °C; read it again.");
            return UnitVerdict.WATCH;
        }
        double celsius = read.getAsDouble();
        boolean hot = celsius > HOTTEST_CELSIUS;
        boolean warm = celsius > WARM_CELSIUS;
        checks.add(new Check(
                unit.position().name() + ": case temperature in service",
                celsius,
                hot ? HOTTEST_CELSIUS : WARM_CELSIUS,
                "°C",
                hot ? Verdict.FAIL : warm ? Verdict.WARN : Verdict.PASS,
                new Basis(
                        "SRV-21",
                        "T ≤ 55 °C, never above 65 °C",
                        List.of(new Term("T", "case", celsius, "°C")),
                        Source.published("TM 5-683 / MO-116 (1995), ch. 2"))));
        String shown = Dimension.TEMPERATURE.format(celsius);
        if (hot) {
            findings.add("case-hot");
            remarks.add("Its case was at " + shown
                    + " in service, above the 65 °C that it may never reach: it stays off until the cause is found (overvoltage,"
                    + " harmonics, ventilation, the unit itself).");
            return UnitVerdict.WATCH;
        }
        if (warm) {
            findings.add("case-warm");
            remarks.add(
                    "Its case was at " + shown
                            + " in service: above 55 °C look for the cause (overvoltage, harmonics, ventilation, the unit itself).");
            return UnitVerdict.WATCH;
        }
        return UnitVerdict.HEALTHY;
    }

    private static Optional<Measured> last(Gathered unit, Function<ReadingRow, Optional<Measured>> column) {
        return unit.rows().stream().flatMap(row -> column.apply(row).stream()).reduce((a, b) -> b);
    }

    /** The largest discharge resistance that still keeps what nameplate or standard promise [Ω] (SRV-8). */
    private Basis mostOhms(Gathered unit, double farads) {
        double peak = Math.sqrt(2.0) * unit.type().ratedVolts();
        DischargeRule rule = DischargeRule.of(bank.standard(), unit.type().ratedVolts());
        Optional<DischargeDevice> device = unit.type().discharge();
        double volts = device.isPresent() && device.get() instanceof DischargeDevice.Rated rated
                ? rated.volts()
                : rule.volts();
        double seconds = device.isPresent() && device.get() instanceof DischargeDevice.Rated rated
                ? rated.seconds()
                : rule.seconds();
        // a unit that never exceeds the voltage to be reached needs no resistor for it
        double byTime = peak > volts ? Decay.resistanceFor(farads, peak, volts, seconds) : NO_LIMIT_OHMS;
        double byNameplate = device.isPresent() && device.get() instanceof DischargeDevice.Resistor resistor
                ? (1.0 + NAMEPLATE_PART) * resistor.ohms()
                : 0.0;
        return new Basis(
                "SRV-8",
                "R ≤ max(t/(C·ln(√2·V_rated/V)), 1.10·R_nameplate)",
                List.of(
                        new Term("R_most", "largest discharge resistance", Math.max(byTime, byNameplate), "Ω"),
                        new Term("C", "capacitance", farads, "F"),
                        new Term("V_rated", "rated voltage", unit.type().ratedVolts(), "V"),
                        new Term("V", "voltage to be reached", volts, "V"),
                        new Term("t", "time allowed", seconds, "s")),
                rule.source());
    }

    private UnitVerdict resistance(
            Gathered unit,
            Measured measured,
            double farads,
            List<String> findings,
            List<String> remarks,
            List<Check> checks) {
        Basis basis = mostOhms(unit, farads);
        double most = basis.terms().getFirst().value();
        String subject = unit.position().name() + ": discharge resistance";
        return switch (measured) {
            case Measured.OverRange over -> {
                findings.add("resistor-open");
                remarks.add(openResistor(over.raw()));
                yield UnitVerdict.REPLACE;
            }
            case Measured.Above above -> {
                if (above.si() >= most) {
                    findings.add("resistor-open");
                    remarks.add(openResistor(above.raw()));
                    yield UnitVerdict.REPLACE;
                }
                remarks.add("Discharge resistance " + above.raw()
                        + " says too little: the meter's range ends below the " + ohms(most) + " that count.");
                yield UnitVerdict.MEASURE_AGAIN;
            }
            case Measured.Below below -> {
                findings.add("resistance-shorted");
                remarks.add(touching(below.raw()));
                yield UnitVerdict.MEASURE_AGAIN;
            }
            case Measured.Value value -> {
                OptionalInt slip = rangeSlip(unit, farads, value.si());
                if (slip.isPresent()) {
                    findings.add("wrong-range");
                    remarks.add(
                            "Discharge resistance " + ohms(value.si()) + " is 10^" + slip.getAsInt()
                                    + " times what is expected: a wrong range or unit; measure again, and treat the unit as charged.");
                    yield UnitVerdict.MEASURE_AGAIN;
                }
                if (value.si() < TOUCHING_OHMS) {
                    findings.add("resistance-shorted");
                    remarks.add(touching(value.raw()));
                    yield UnitVerdict.MEASURE_AGAIN;
                }
                if (value.si() > OPEN_TIMES * most) {
                    findings.add("resistor-open");
                    remarks.add(openResistor(ohms(value.si())));
                    checks.add(new Check(subject, value.si(), most, "Ω", Verdict.FAIL, basis));
                    yield UnitVerdict.REPLACE;
                }
                // a resistor that is exactly at the limit must not fail by the last digit that the meter shows
                boolean slow = value.si() > most * 1.005;
                checks.add(new Check(subject, value.si(), most, "Ω", slow ? Verdict.FAIL : Verdict.PASS, basis));
                if (slow) {
                    findings.add("resistor-slow");
                    remarks.add("Discharge resistance " + ohms(value.si()) + " is above the " + ohms(most)
                            + " that its nameplate and the standard allow: it stays charged longer than it should.");
                    yield UnitVerdict.WATCH;
                }
                yield againstNameplate(unit, value.si(), subject, remarks, checks);
            }
        };
    }

    /** The power of a thousand by which a resistance is off what the nameplate gives; empty where it is not. */
    private static OptionalInt rangeSlip(Gathered unit, double farads, double ohms) {
        if (!(Resistance.of(unit.type(), farads) instanceof Resistance.Known known)) {
            return OptionalInt.empty();
        }
        for (int exponent : new int[] {-6, -3, 3, 6}) {
            double part = ohms / (known.nominalOhms() * Math.pow(10.0, exponent));
            if (Math.abs(part - 1.0) <= 2.0 * NAMEPLATE_PART) {
                return OptionalInt.of(exponent);
            }
        }
        return OptionalInt.empty();
    }

    private static UnitVerdict againstNameplate(
            Gathered unit, double ohms, String subject, List<String> remarks, List<Check> checks) {
        if (unit.type().discharge().isPresent()
                && unit.type().discharge().get() instanceof DischargeDevice.Resistor nameplate) {
            double off = ohms / nameplate.ohms() - 1.0;
            boolean far = Math.abs(off) > NAMEPLATE_PART;
            checks.add(new Check(
                    subject + " against the nameplate",
                    off,
                    NAMEPLATE_PART,
                    "",
                    far ? Verdict.WARN : Verdict.PASS,
                    new Basis(
                            "SRV-9",
                            "|R/R_nameplate − 1| ≤ 0.10",
                            List.of(
                                    new Term("R", "read", ohms, "Ω"),
                                    new Term("R_nameplate", "nameplate", nameplate.ohms(), "Ω")),
                            Source.COMMON_PRACTICE)));
            if (far) {
                remarks.add("Discharge resistance " + ohms(ohms) + " is " + Reasons.deviation(1.0 + off)
                        + " its nameplate: a resistor on its way out.");
                return UnitVerdict.WATCH;
            }
        }
        return UnitVerdict.HEALTHY;
    }

    /** Insulation resistance to case by voltage class (ANSI/NETA MTS-2019 table 100.1, quoted: a hint, the owner's limit counts); SRV-10. */
    private UnitVerdict insulation(Gathered unit, Measured measured, List<String> remarks, List<Check> checks) {
        double volts = bank.system().nominalVolts();
        OptionalDouble limit = volts > 5e3 && volts <= 15e3
                ? OptionalDouble.of(5e9)
                : volts > 15e3 && volts <= 25e3
                        ? OptionalDouble.of(10e9)
                        : volts > 25e3 && volts <= 34.5e3 ? OptionalDouble.of(100e9) : OptionalDouble.empty();
        if (limit.isEmpty()) {
            remarks.add("Insulation to case " + measured.raw()
                    + ": no limit on file for this voltage, the owner's counts.");
            return UnitVerdict.HEALTHY;
        }
        double value = switch (measured) {
            case Measured.Value plain -> plain.si();
            case Measured.Above above -> above.si();
            case Measured.Below below -> below.si();
            case Measured.OverRange ignored -> Double.MAX_VALUE;
        };
        if (measured instanceof Measured.OverRange) {
            return UnitVerdict.HEALTHY;
        }
        boolean low = value < limit.getAsDouble();
        if (low && measured instanceof Measured.Above) {
            remarks.add("Insulation to case " + measured.raw() + ": the meter's range ends below the hint of "
                    + ohms(limit.getAsDouble()) + ", so it says neither.");
            return UnitVerdict.HEALTHY;
        }
        if (!low && measured instanceof Measured.Below) {
            remarks.add("Insulation to case " + measured.raw() + ": it may be below the hint of "
                    + ohms(limit.getAsDouble()) + ", measure it on a higher range.");
            return UnitVerdict.WATCH;
        }
        checks.add(new Check(
                unit.position().name() + ": insulation to case",
                value,
                limit.getAsDouble(),
                "Ω",
                low ? Verdict.WARN : Verdict.PASS,
                new Basis(
                        "SRV-10",
                        "R_insulation ≥ limit of the voltage class",
                        List.of(new Term("V", "nominal voltage", volts, "V")),
                        Source.unchecked("ANSI/NETA MTS-2019 table 100.1, a hint: the owner's limit counts"))));
        if (low) {
            remarks.add("Insulation to case " + ohms(value) + " is below the hint of " + ohms(limit.getAsDouble())
                    + ": clean and dry the bushings, measure again.");
            return UnitVerdict.WATCH;
        }
        return UnitVerdict.HEALTHY;
    }

    private UnitVerdict fuse(
            Gathered unit, Measured measured, List<String> findings, List<String> remarks, List<Check> checks) {
        return switch (measured) {
            case Measured.OverRange ignored -> {
                findings.add(FUSE_OPEN);
                remarks.add(
                        "The fuse has operated or makes no contact: find out why before it is replaced, and treat the unit as charged.");
                yield UnitVerdict.WATCH;
            }
            case Measured.Above above -> {
                findings.add(FUSE_OPEN);
                remarks.add("The fuse reads " + above.raw() + ": operated, or no contact; treat the unit as charged.");
                yield UnitVerdict.WATCH;
            }
            case Measured.Below ignored -> UnitVerdict.HEALTHY;
            case Measured.Value value
            when value.si() >= OPEN_FUSE_OHMS -> {
                findings.add(FUSE_OPEN);
                remarks.add(
                        "The fuse reads " + ohms(value.si()) + ": operated, or no contact; treat the unit as charged.");
                yield UnitVerdict.WATCH;
            }
            case Measured.Value value -> {
                OptionalDouble median = fuseMedian.getOrDefault(unit.stage().name(), OptionalDouble.empty());
                if (median.isEmpty()) {
                    yield UnitVerdict.HEALTHY;
                }
                double off = value.si() / median.getAsDouble() - 1.0;
                boolean far = Math.abs(off) > FUSE_PART;
                checks.add(new Check(
                        unit.position().name() + ": fuse against the middle of its set",
                        off,
                        FUSE_PART,
                        "",
                        far ? Verdict.WARN : Verdict.PASS,
                        new Basis(
                                "SRV-11",
                                "|R/median − 1| ≤ 0.15",
                                List.of(
                                        new Term("R", "read", value.si(), "Ω"),
                                        new Term("median", "of the stage's fuses", median.getAsDouble(), "Ω")),
                                Source.published("ANSI/NETA MTS-2019: fuses of one set not over 15 % apart"))));
                if (far) {
                    findings.add("fuse-apart");
                    remarks.add("Its fuse reads " + ohms(value.si()) + ", " + Reasons.deviation(1.0 + off)
                            + " the middle of its set: look at link and contacts.");
                    yield UnitVerdict.WATCH;
                }
                yield UnitVerdict.HEALTHY;
            }
        };
    }

    private static String openResistor(String read) {
        return "The discharge resistor is open (" + read
                + "): the unit does not discharge itself; treat as charged, discharge by stick.";
    }

    private static String touching(String read) {
        return "Resistance " + read
                + " is a short: leads touch, or the unit is shorted through; part the leads and measure again.";
    }

    private static String ohms(double ohms) {
        return Dimension.RESISTANCE.format(ohms);
    }
}
