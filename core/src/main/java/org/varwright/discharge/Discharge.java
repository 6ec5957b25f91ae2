package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.UnitType;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;

/**
 * How every stage of a bank discharges, and how long to wait at least before it is tested, discharged by stick and shorted.
 *
 * @param bank the bank
 * @param stages in the order of the file
 * @param courses the same stages in time: which pole holds what, every unit's decay, strings, switching on again
 * @param question what was asked beside the waits
 * @param checks values against limits
 * @param cautions what holds for every bank, in words
 * @param unanswered what can't be answered and which value of the bank file is missing for it
 */
public record Discharge(
        Bank bank,
        List<StageDischarge> stages,
        List<StageCourse> courses,
        Question question,
        List<Check> checks,
        List<String> cautions,
        List<String> unanswered) {
    /** Part of the voltage that polypropylene gives back after a short; upper end. */
    public static final double ABSORPTION = 0.001;

    /** The lower end. */
    public static final double LEAST_ABSORPTION = 0.0005;

    /** Part of the peak below which trapped charge no longer matters at closing. */
    public static final double RECLOSE_PART = 0.10;

    public Discharge {
        stages = List.copyOf(stages);
        courses = List.copyOf(courses);
        unanswered = List.copyOf(unanswered);
        checks = List.copyOf(checks);
        cautions = List.copyOf(cautions);
    }

    /**
     * How every stage of a bank discharges.
     *
     * @param bank as read
     * @param stick the discharge stick at hand; empty: what is needed is said instead
     */
    public static Discharge of(Bank bank, Optional<Stick> stick) {
        return of(bank, Question.NOTHING_MORE.with(stick));
    }

    /**
     * How every stage of a bank discharges.
     *
     * @param bank as read
     * @param question what else is asked
     */
    public static Discharge of(Bank bank, Question question) {
        List<StageDischarge> stages = bank.stages().stream()
                .map(stage -> compute(bank, stage, question.readings()))
                .toList();
        List<StageCourse> courses = stages.stream()
                .map(stage -> StageCourse.of(bank, stage, question))
                .toList();
        List<Check> checks = new ArrayList<>();
        for (int i = 0; i < stages.size(); i++) {
            checks.addAll(DischargeChecks.of(bank, stages.get(i), question.stick()));
            checks.addAll(CourseChecks.of(bank, stages.get(i), courses.get(i)));
        }
        return new Discharge(
                bank,
                stages,
                courses,
                question,
                checks,
                DischargeNotes.cautions(bank, stages),
                DischargeNotes.unanswered(bank, stages));
    }

    /** The stick that was named; empty where none was. */
    public Optional<Stick> stick() {
        return question.stick();
    }

    /**
     * The minimum wait after a stage was opened, with its reasons.
     *
     * @param bank as read
     * @param stageName one of its stages
     * @throws IllegalArgumentException where the bank has no such stage
     */
    public static Wait waitOf(Bank bank, String stageName) {
        Stage stage = bank.stage(stageName).orElseThrow(() -> new IllegalArgumentException("no stage " + stageName));
        StageDischarge result = compute(bank, stage, UnitReadings.NONE);
        return new Wait(
                stageName, result.waitSeconds(), result.isKnown(), result.waitBasis(), DischargeNotes.of(bank, result));
    }

    /** The minimum wait for the whole bank: that of its slowest stage [s]. */
    public double longestWaitSeconds() {
        return stages.stream().mapToDouble(StageDischarge::waitSeconds).max().orElse(0.0);
    }

    private static StageDischarge compute(Bank bank, Stage stage, UnitReadings readings) {
        UnitType type = stage.unit();
        Capacitance largest = Capacitance.largestOf(bank, stage);
        Resistance ofType = Resistance.of(type, largest.farads());
        Unit unit = new Unit(largest, ofType).orSlower(new UnitValues(bank, readings).slowestRead(stage, ofType));
        Capacitance capacitance = unit.capacitance();
        Resistance resistance = unit.resistance();
        double farads = capacitance.farads();
        double energyFarads =
                Math.max(largest.farads(), readings.largestFarads(stage).orElse(0.0));
        Opening opening = Opening.of(bank, stage, readings);
        DischargeRule chosen = DischargeRule.of(bank.standard(), type.ratedVolts());
        DischargeRule other =
                DischargeRule.of(bank.standard() == Standard.IEEE ? Standard.IEC : Standard.IEEE, type.ratedVolts());
        double initial = opening.initialVolts();
        OptionalDouble chosenSeconds = seconds(resistance, farads, initial, chosen.volts());
        OptionalDouble otherSeconds = seconds(resistance, farads, initial, other.volts());
        boolean high = Math.max(type.ratedVolts(), bank.system().nominalVolts()) > DischargeRule.HIGH_VOLTAGE_VOLTS;
        double floor = high ? DischargeRule.FLOOR_SECONDS : 0.0;
        double wait = Math.max(Math.max(chosen.seconds(), floor), Math.ceil(chosenSeconds.orElse(0.0)));
        List<Term> terms = new ArrayList<>(List.of(
                new Term("t_standard", chosen.standard() + ": " + chosen.print(), chosen.seconds(), "s"),
                new Term("t_floor", "least above 600 V, " + DischargeRule.FLOOR_SOURCE.print(), floor, "s")));
        if (resistance instanceof Resistance.Known known) {
            terms.add(new Term("t_decay", "computed decay to the safe voltage", chosenSeconds.orElse(0.0), "s"));
            terms.add(new Term("R", "discharge resistance, slow end", known.ohms(), "Ω"));
            terms.add(new Term("C", "capacitance: " + capacitance.from(), farads, "F"));
            terms.add(new Term("v0", "voltage at opening, worst unit", initial, "V"));
            terms.add(new Term("V", "safe voltage", chosen.volts(), "V"));
        }
        Basis waitBasis = new Basis(
                "DIS-5",
                resistance instanceof Resistance.Known
                        ? "wait = max(t_standard, t_floor, t_decay), t_decay = R·C·ln(v0/V)"
                        : "wait = max(t_standard, t_floor); the decay is not known",
                terms,
                chosen.source());
        double end = resistance instanceof Resistance.Known known
                ? Decay.voltsAfter(farads, known.ohms(), initial, wait)
                : initial;
        int legs = type.threePhase().isPresent() ? 3 : 1;
        double peakService = Math.max(Math.sqrt(2.0) * type.legVolts(), opening.peakInServiceVolts());
        double stagePeak = stage.positions().size() * legs * Decay.energyJoules(energyFarads, peakService);
        double endPart = end / initial;
        int series = mostInSeries(stage);
        double delay =
                bank.control().map(c -> c.recloseDelaySeconds().orElse(-1.0)).orElse(-1.0);
        return new StageDischarge(
                stage,
                farads,
                capacitance.from(),
                resistance,
                opening,
                chosen,
                other,
                chosenSeconds,
                otherSeconds,
                shortedSection(type, chosenSeconds),
                wait,
                waitBasis,
                legs * Decay.energyJoules(energyFarads, initial),
                legs * Decay.energyJoules(energyFarads, end),
                stagePeak,
                stagePeak * endPart * endPart,
                end,
                opening.betweenConductorsVolts(end),
                ABSORPTION * initial,
                initial,
                series > 1 ? OptionalDouble.of(initial * (series - 1) / series) : OptionalDouble.empty(),
                resistance instanceof Resistance.Known known && delay >= 0.0
                        ? OptionalDouble.of(100.0
                                * Decay.voltsAfter(farads, known.ohms(), initial, delay)
                                / opening.peakInServiceVolts())
                        : OptionalDouble.empty(),
                seconds(resistance, farads, initial, RECLOSE_PART * opening.peakInServiceVolts()),
                needed(stage, energyFarads, opening, chosen));
    }

    /** Capacitance and resistance that a stage is reckoned with. */
    private record Unit(Capacitance capacitance, Resistance resistance) {
        /** A unit that was read and is slower goes before; readings of single units don't make a type's resistor known. */
        Unit orSlower(Optional<UnitValues.Slowest> read) {
            if (!(resistance instanceof Resistance.Known known)
                    || read.isEmpty()
                    || read.get().farads() * read.get().ohms() <= capacitance.farads() * known.ohms()) {
                return this;
            }
            Capacitance slow = new Capacitance(read.get().farads(), "of the slowest unit that was read");
            if (read.get().ohms() == known.ohms()) {
                return new Unit(slow, known);
            }
            return new Unit(
                    slow,
                    new Resistance.Known(
                            read.get().ohms(),
                            known.nominalOhms(),
                            new Basis(
                                    "DIS-3",
                                    "R as read on the slowest unit, R·C above (1 + s)·R_nameplate·C",
                                    List.of(
                                            new Term("R", "reading", read.get().ohms(), "Ω"),
                                            new Term("R_slow", "slow end by the nameplate", known.ohms(), "Ω")),
                                    Source.FIRST_PRINCIPLES)));
        }
    }

    /** Of wyes with unlike numbers of groups the longer string counts: it hides the most. */
    private static int mostInSeries(Stage stage) {
        int most = stage.legs().stream()
                .mapToInt(leg -> stage.layoutOf(leg).groups())
                .max()
                .orElse(1);
        return stage.connection().isBridge() ? 2 * most : most;
    }

    private static Stick.Needed needed(Stage stage, double farads, Opening opening, DischargeRule rule) {
        LegCharge leg = LegCharge.of(stage, farads, opening);
        return Stick.needed(
                leg.farads(),
                leg.joules(),
                leg.volts(),
                opening.betweenConductorsVolts(opening.initialVolts()),
                rule.volts());
    }

    private static OptionalDouble seconds(Resistance resistance, double farads, double initial, double target) {
        return switch (resistance) {
            case Resistance.Known known -> OptionalDouble.of(Decay.secondsTo(farads, known.ohms(), initial, target));
            case Resistance.NotKnown ignored -> OptionalDouble.empty();
        };
    }

    /** One shorted section raises the capacitance to s/(s−1) while the resistor across the unit stays. */
    private static OptionalDouble shortedSection(UnitType type, OptionalDouble seconds) {
        int sections = type.construction().map(c -> c.sections()).orElse(1);
        return seconds.isPresent() && sections > 1
                ? OptionalDouble.of(seconds.getAsDouble() * sections / (sections - 1))
                : OptionalDouble.empty();
    }
}
