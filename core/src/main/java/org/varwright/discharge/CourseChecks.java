package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import org.varwright.bank.Bank;
import org.varwright.bank.Device;
import org.varwright.bank.DischargePath;
import org.varwright.bank.Isolation;
import org.varwright.bank.Stage;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;
import org.varwright.quantity.Dimension;

/** Holds the course of a stage in time against limits: the moment asked for, switching on again, resistors read as open, the discharge path. */
final class CourseChecks {
    private static final Source NO_FUSE =
            Source.published("GB 50053-2013 §5.2: no switch or fuse between a bank and its discharge device");

    private CourseChecks() {}

    static List<Check> of(Bank bank, StageDischarge stage, StageCourse course) {
        List<Check> checks = new ArrayList<>();
        course.reclosing()
                .ifPresent(r -> r.delaySeconds().ifPresent(delay -> checks.add(ratedReclose(stage, r, delay))));
        course.after().ifPresent(left -> {
            checks.add(voltsLeft(stage, left, " after " + left.print()));
            checks.add(waited(stage, left));
        });
        course.timeConstants()
                .ifPresent(left -> checks.add(voltsLeft(
                        stage,
                        left,
                        " after "
                                + Dimension.digits(
                                        left.seconds()
                                                / stage.timeConstantSeconds().orElseThrow(),
                                        3) + " time constants (" + left.print() + ")")));
        course.units().stream()
                .filter(u -> u.ohms().isEmpty() && stage.isKnown())
                .forEach(u -> checks.add(openResistor(stage, u)));
        stage.stage().dischargePath().ifPresent(path -> {
            checks.addAll(rule(bank, stage.stage()));
            course.path().filter(p -> p.leftVolts() > 0.0).ifPresent(p -> checks.add(common(stage, p)));
        });
        return checks;
    }

    private static Check ratedReclose(StageDischarge stage, Reclosing reclosing, double delaySeconds) {
        double rated = stage.stage().unit().legVolts();
        return new Check(
                stage.stage().name()
                        + ": reclosing delay of the control, for trapped charge down to 10 % of rated voltage",
                delaySeconds,
                reclosing.ratedSeconds(),
                "s",
                delaySeconds >= reclosing.ratedSeconds() ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        "DIS-7",
                        "t = R·C·ln(v0/(0.1·V_rated))",
                        List.of(
                                new Term(
                                        "R·C",
                                        "time constant, slow end",
                                        stage.timeConstantSeconds().orElseThrow(),
                                        "s"),
                                new Term(
                                        "v0",
                                        "voltage at opening, worst unit",
                                        stage.opening().initialVolts(),
                                        "V"),
                                new Term("V_rated", "rated voltage", rated, "V")),
                        Source.unchecked("IEC 60871-1, IEC 60831-1: at most 10 % of rated voltage when switched on")));
    }

    private static Check voltsLeft(StageDischarge stage, Residual left, String when) {
        List<Term> terms = new ArrayList<>(List.of(
                new Term("v0", "voltage at opening, worst unit", stage.opening().initialVolts(), "V"),
                new Term("t", "time after opening", left.seconds(), "s")));
        stage.timeConstantSeconds()
                .ifPresent(seconds -> terms.add(new Term("R·C", "time constant, slow end", seconds, "s")));
        return new Check(
                stage.stage().name() + ": voltage of a unit" + when,
                left.volts(),
                left.safeVolts(),
                "V",
                left.volts() <= left.safeVolts() ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        "DIS-1",
                        stage.isKnown() ? "v = v0·e^(−t/RC)" : "v = v0: no discharge resistance is known",
                        terms,
                        stage.chosen().source()));
    }

    private static Check waited(StageDischarge stage, Residual left) {
        return new Check(
                stage.stage().name() + ": time waited against the least wait",
                left.seconds(),
                stage.waitSeconds(),
                "s",
                left.missingSeconds() == 0.0 ? Verdict.PASS : Verdict.FAIL,
                stage.waitBasis());
    }

    private static Check openResistor(StageDischarge stage, UnitDecay unit) {
        return new Check(
                unit.at().name() + ": its discharge resistor reads open; voltage at the end of the wait",
                unit.endVolts(),
                stage.chosen().volts(),
                "V",
                Verdict.FAIL,
                new Basis(
                        "DIS-8",
                        "v = v0: nothing drains it",
                        List.of(new Term("v0", "voltage at opening", unit.initialVolts(), "V")),
                        stage.chosen().source()));
    }

    /** What stands between the units and their discharge path, as far as the file tells. */
    private static List<Check> rule(Bank bank, Stage stage) {
        int fuses = stage.fuse().isPresent() || stage.lineFuse().isPresent() ? 1 : 0;
        List<Device> others = bank.isolation().map(i -> otherSwitches(i, stage)).orElse(List.of());
        boolean ownResistors = stage.unit().discharge().isPresent();
        List<Term> terms = new ArrayList<>();
        stage.fuse().ifPresent(f -> terms.add(new Term("unit fuse", f.name() + " ahead of every unit", 1.0, "")));
        stage.lineFuse()
                .ifPresent(f -> terms.add(new Term("line fuse", f.name() + " ahead of the whole stage", 1.0, "")));
        others.forEach(d -> terms.add(
                new Term("switch", d.name() + " stands at the stage too: on which side is the path?", 1.0, "")));
        return List.of(new Check(
                stage.name() + ": switches and fuses that may stand between the units and their "
                        + (stage.dischargePath().orElseThrow().kind() == DischargePath.Kind.COIL
                                ? "discharge coil"
                                : "voltage transformer"),
                fuses + others.size(),
                0.0,
                "",
                fuses + others.size() == 0 ? Verdict.PASS : ownResistors ? Verdict.WARN : Verdict.FAIL,
                new Basis("DIS-14", "count = fuses ahead of it + switches at it beside its own", terms, NO_FUSE)));
    }

    /** Devices that join the stage's conductor to something other than ground, beside its own switch. */
    private static List<Device> otherSwitches(Isolation isolation, Stage stage) {
        return isolation.devices().stream()
                .filter(d -> d.kind() != Device.Kind.GROUNDING_SWITCH)
                .filter(d -> !d.name().equals(stage.switchName().orElse("")))
                .filter(d -> d.between()
                        .filter(b ->
                                b.first().equals(stage.name()) || b.second().equals(stage.name()))
                        .isPresent())
                .toList();
    }

    private static Check common(StageDischarge stage, WindingDischarge path) {
        return new Check(
                stage.stage().name() + ": what windings between lines leave on every leg",
                path.leftVolts(),
                stage.chosen().volts(),
                "V",
                path.leftVolts() <= stage.chosen().volts() ? Verdict.PASS : Verdict.WARN,
                new Basis(
                        "DIS-13",
                        "v = ΣQ/ΣC of all legs",
                        List.of(new Term(
                                "v0",
                                "voltage at opening, worst unit",
                                stage.opening().initialVolts(),
                                "V")),
                        Source.FIRST_PRINCIPLES));
    }
}
