package org.varwright.discharge;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.varwright.bank.Bank;
import org.varwright.bank.DischargeDevice;
import org.varwright.basis.Basis;
import org.varwright.basis.Check;
import org.varwright.basis.Source;
import org.varwright.basis.Term;
import org.varwright.basis.Verdict;

/** Holds the discharge of a stage against the standards, the reclosing delay and the stick. */
final class DischargeChecks {
    /** Below both of these stored energy no longer counts as a shock hazard. */
    private static final double HAZARD_VOLTS = 100.0;

    private static final double HAZARD_JOULES = 10.0;

    private DischargeChecks() {}

    static List<Check> of(Bank bank, StageDischarge stage, Optional<Stick> stick) {
        List<Check> checks = new ArrayList<>();
        if (stage.resistance() instanceof Resistance.Known known) {
            checks.add(nameplate(stage, known, stage.chosen(), Verdict.FAIL));
            checks.add(nameplate(stage, known, stage.other(), Verdict.WARN));
            checks.add(energyAtEnd(stage));
            bank.control()
                    .filter(control -> control.recloseDelaySeconds().isPresent())
                    .ifPresent(control -> checks.add(
                            reclose(stage, known, control.recloseDelaySeconds().getAsDouble())));
        }
        stick.ifPresent(given -> {
            LegCharge leg = stage.legCharge();
            checks.addAll(given.checks(
                    stage.stage().name(),
                    leg.joules(),
                    leg.farads(),
                    leg.volts(),
                    stage.chosen().volts()));
        });
        return checks;
    }

    /** What a standard asks of the unit itself: from the peak of rated voltage, resistor and capacitance by the nameplate. */
    private static Check nameplate(
            StageDischarge stage, Resistance.Known known, DischargeRule rule, Verdict otherwise) {
        double peak = Math.sqrt(2.0) * stage.stage().unit().legVolts();
        double farads = stage.stage().unit().discharge().orElseThrow() instanceof DischargeDevice.Resistor
                ? stage.stage().unit().capacitanceFarads()
                : stage.capacitanceFarads();
        double left = Decay.voltsAfter(farads, known.nominalOhms(), peak, rule.seconds());
        // a nameplate that says exactly what the standard says must not fail by the last bit
        boolean met = left <= rule.volts() * (1.0 + 1e-9);
        return new Check(
                stage.stage().name() + ": unit type " + stage.stage().unit().name() + " by " + rule.standard() + ", "
                        + rule.print(),
                left,
                rule.volts(),
                "V",
                met ? Verdict.PASS : otherwise,
                new Basis(
                        "DIS-1",
                        "v = √2·V_rated·e^(−t/RC)",
                        List.of(
                                new Term(
                                        "V_rated",
                                        "rated voltage",
                                        stage.stage().unit().legVolts(),
                                        "V"),
                                new Term("t", "time of the standard", rule.seconds(), "s"),
                                new Term("R", "discharge resistance by the nameplate", known.nominalOhms(), "Ω"),
                                new Term("C", "capacitance", farads, "F")),
                        rule.source()));
    }

    private static Check energyAtEnd(StageDischarge stage) {
        boolean harmless = stage.endVolts() < HAZARD_VOLTS || stage.unitEndJoules() < HAZARD_JOULES;
        return new Check(
                stage.stage().name() + ": energy of a unit at the end of the wait",
                stage.unitEndJoules(),
                HAZARD_JOULES,
                "J",
                harmless ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        "DIS-4",
                        "E = C·v²/2",
                        List.of(
                                new Term("C", "capacitance", stage.capacitanceFarads(), "F"),
                                new Term("v", "voltage at the end of the wait", stage.endVolts(), "V")),
                        Source.published("LBNL Electrical Safety Manual, table 2.2.13: hazard at 100 V and 10 J")));
    }

    private static Check reclose(StageDischarge stage, Resistance.Known known, double delaySeconds) {
        double needed = stage.recloseSeconds().orElseThrow();
        return new Check(
                stage.stage().name() + ": reclosing delay of the control, for trapped charge down to 10 % of peak",
                delaySeconds,
                needed,
                "s",
                delaySeconds >= needed ? Verdict.PASS : Verdict.FAIL,
                new Basis(
                        "DIS-7",
                        "t = R·C·ln(v0/(0.1·v_peak))",
                        List.of(
                                new Term("R", "discharge resistance, slow end", known.ohms(), "Ω"),
                                new Term("C", "capacitance", stage.capacitanceFarads(), "F"),
                                new Term(
                                        "v0",
                                        "voltage at opening, worst unit",
                                        stage.opening().initialVolts(),
                                        "V"),
                                new Term(
                                        "v_peak",
                                        "peak in service",
                                        stage.opening().peakInServiceVolts(),
                                        "V")),
                        Source.commonPractice("10 % of peak")));
    }
}
