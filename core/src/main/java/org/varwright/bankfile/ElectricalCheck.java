package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.APPARENT_POWER;
import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.FREQUENCY;
import static org.varwright.quantity.Dimension.REACTIVE_POWER;
import static org.varwright.quantity.Dimension.TIME;
import static org.varwright.quantity.Dimension.VOLTAGE;
import static org.varwright.quantity.Dimension.digits;

import org.varwright.bank.Connection;
import org.varwright.bank.Construction;
import org.varwright.bank.DischargeDevice;
import org.varwright.bank.FuseType;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.UnitType;
import org.varwright.problem.Message;

/** Holds units, fuses and reactors against the connection and the system that they stand in. */
final class ElectricalCheck {
    /** A nameplate's 7.96 kV for 7.967 kV is rounding, not overvoltage. */
    private static final double ROUNDING = 1.005;

    /** Continuous limit: 110 % of rated voltage (IEEE Std 18; IEC 60871-1). */
    private static final double CONTINUOUS = 1.10;

    private static final double FAR_BELOW = 0.75;
    private static final double USUAL_FUSE = 1.35;
    private static final double WATTS_PER_VAR = 2e-3;

    private final Draft draft;
    private final Findings findings;

    private ElectricalCheck(Draft draft, Findings findings) {
        this.draft = draft;
        this.findings = findings;
    }

    static void check(Draft draft, Findings findings) {
        ElectricalCheck check = new ElectricalCheck(draft, findings);
        draft.system().ifPresent(check::system);
        draft.unitTypes().forEach(check::unitType);
        for (Item<Stage> item : draft.stages()) {
            check.threePhase(item);
            check.fuse(item);
            draft.system().ifPresent(system -> {
                check.voltage(item, system);
                check.reactor(item, system);
                check.frequency(item, system);
            });
        }
    }

    private void system(SupplySystem system) {
        double nominal = system.nominalVolts();
        system.maximumVolts().ifPresent(maximum -> {
            if (maximum < nominal) {
                findings.error(
                        Message.MAXIMUM_BELOW_NOMINAL,
                        findings.place("system.maximum-voltage"),
                        VOLTAGE.format(maximum),
                        VOLTAGE.format(nominal));
            } else if (maximum > 1.3 * nominal) {
                findings.warning(
                        Message.MAXIMUM_FAR_ABOVE_NOMINAL,
                        findings.place("system.maximum-voltage"),
                        VOLTAGE.format(maximum),
                        percent(maximum / nominal),
                        VOLTAGE.format(nominal));
            }
        });
        if (system.frequencyHertz() != 50.0 && system.frequencyHertz() != 60.0) {
            findings.warning(
                    Message.UNUSUAL_FREQUENCY,
                    findings.place("system.frequency"),
                    FREQUENCY.format(system.frequencyHertz()));
        }
        double vars =
                draft.stages().stream().mapToDouble(s -> s.value().ratedVars()).sum();
        system.shortCircuitVoltAmperes().ifPresent(level -> {
            if (vars > 0.0 && level < 5.0 * vars) {
                findings.warning(
                        Message.WEAK_SYSTEM,
                        findings.place("system.short-circuit"),
                        APPARENT_POWER.format(level),
                        digits(level / vars, 2),
                        REACTIVE_POWER.format(vars));
            }
        });
    }

    private void frequency(Item<Stage> item, SupplySystem system) {
        UnitType unit = item.value().unit();
        if (Math.abs(unit.ratedHertz() - system.frequencyHertz()) > 1e-9 * system.frequencyHertz()) {
            findings.error(
                    Message.FREQUENCY_MISMATCH,
                    findings.place(item.path() + ".unit"),
                    unit.name(),
                    FREQUENCY.format(unit.ratedHertz()),
                    FREQUENCY.format(system.frequencyHertz()));
        }
    }

    /** Voltage on each unit against its rating: up to 100.5 % fine, up to 110 % a warning, beyond an error, below 75 % a warning. */
    private void voltage(Item<Stage> item, SupplySystem system) {
        Stage stage = item.value();
        for (LegLayout layout : UnitDuty.layouts(stage)) {
            double volts = UnitDuty.unitVolts(stage, layout, system);
            double rated = stage.unit().legVolts();
            double share = volts / rated;
            String[] words = {VOLTAGE.format(volts), stage.unit().name(), percent(share), VOLTAGE.format(rated)};
            var place = findings.place(item.path() + ".unit");
            if (share > CONTINUOUS + 1e-9) {
                findings.error(Message.UNIT_OVERVOLTAGE, place, words);
            } else if (share > ROUNDING) {
                findings.warning(Message.UNIT_ABOVE_RATED, place, words);
            } else if (share < FAR_BELOW) {
                findings.warning(
                        Message.UNIT_FAR_BELOW_RATED,
                        place,
                        words[0],
                        words[1],
                        words[2],
                        words[3],
                        percent(share * share));
            }
        }
    }

    private void threePhase(Item<Stage> item) {
        Stage stage = item.value();
        stage.unit().threePhase().ifPresent(internal -> {
            Connection needed = internal == InternalConnection.DELTA ? Connection.DELTA : Connection.WYE_UNGROUNDED;
            if (stage.connection() != needed) {
                findings.error(
                        Message.THREE_PHASE_CONNECTION,
                        findings.place(item.path() + ".connection"),
                        stage.unit().name(),
                        Words.of(Words.INTERNALS, internal),
                        needed.code(),
                        stage.connection().code());
            }
            if (stage.layout().groups() > 1 || stage.layout().strings() > 1) {
                findings.error(
                        Message.THREE_PHASE_SERIES,
                        findings.place(item.path() + ".groups"),
                        stage.unit().name());
            }
        });
    }

    private void fuse(Item<Stage> item) {
        Stage stage = item.value();
        UnitType unit = stage.unit();
        boolean internal =
                unit.construction().filter(Construction::internallyFused).isPresent();
        if (stage.fuse().isEmpty()) {
            int units = UnitDuty.layouts(stage).stream()
                    .mapToInt(LegLayout::units)
                    .max()
                    .orElseThrow();
            if (!internal && unit.construction().isPresent() && units > 1) {
                findings.warning(Message.NO_FUSE_AT_ALL, findings.place(item.path() + ".units"), String.valueOf(units));
            }
            return;
        }
        FuseType fuse = stage.fuse().get();
        var place = findings.place(item.path() + ".fuse");
        if (internal) {
            findings.warning(Message.FUSE_ON_INTERNALLY_FUSED, place, unit.name());
        }
        double amperes = UnitDuty.ratedAmperes(unit);
        double carried = UnitDuty.carriedAmperes(fuse);
        if (carried < amperes) {
            findings.error(
                    Message.FUSE_BELOW_UNIT,
                    place,
                    fuse.name(),
                    CURRENT.format(carried),
                    unit.name(),
                    CURRENT.format(amperes));
        } else if (carried < USUAL_FUSE * amperes * (1.0 - 1e-3)) {
            findings.warning(
                    Message.FUSE_NEAR_UNIT,
                    place,
                    fuse.name(),
                    CURRENT.format(carried),
                    digits(carried / amperes, 3),
                    CURRENT.format(amperes),
                    unit.name());
        }
        draft.system()
                .ifPresent(system -> fuse.ratedVolts().ifPresent(rated -> {
                    double volts = UnitDuty.unitVolts(stage, system);
                    if (rated < volts) {
                        findings.error(
                                Message.FUSE_VOLTAGE, place, fuse.name(), VOLTAGE.format(rated), VOLTAGE.format(volts));
                    }
                }));
    }

    private void reactor(Item<Stage> item, SupplySystem system) {
        Stage stage = item.value();
        stage.reactor().ifPresent(reactor -> {
            if (reactor.position() == Reactor.Position.NEUTRAL && stage.connection() == Connection.DELTA) {
                findings.error(Message.NO_NEUTRAL, findings.place(item.path() + ".reactor.position"));
            }
            double share = UnitDuty.reactorShare(stage, system);
            var place = findings.place(item.path() + ".reactor.inductance");
            boolean usual =
                    reactor.purpose() == Reactor.Purpose.INRUSH ? share <= 0.01 : share >= 0.005 && share <= 0.2;
            if (share >= 0.5) {
                findings.error(Message.REACTOR_TOO_LARGE, place, percent(share));
            } else if (!usual) {
                findings.warning(
                        Message.REACTOR_SHARE,
                        place,
                        percent(share),
                        Words.of(Words.REACTOR_PURPOSES, reactor.purpose()));
            }
        });
    }

    private void unitType(Item<UnitType> item) {
        UnitType unit = item.value();
        ToleranceRule tolerance = ToleranceRule.of(draft.standard());
        if (!tolerance.holds(unit.tolerance())) {
            findings.warning(
                    Message.TOLERANCE_WIDE,
                    findings.place(item.path() + ".tolerance"),
                    percent(unit.tolerance().low()) + " % to "
                            + percent(unit.tolerance().high()) + " %",
                    percent(tolerance.low()) + " % to " + percent(tolerance.high()) + " %",
                    tolerance.source().print());
        }
        DischargeRule rule = DischargeRule.of(draft.standard(), unit.ratedVolts());
        unit.discharge().ifPresent(device -> {
            switch (device) {
                case DischargeDevice.Resistor r -> resistor(item, r.ohms(), rule);
                case DischargeDevice.Rated r -> {
                    if (r.volts() > rule.volts() || r.seconds() > rule.seconds()) {
                        slow(item, ".discharge", r.seconds(), r.volts(), rule);
                    }
                }
            }
        });
    }

    private void resistor(Item<UnitType> item, double ohms, DischargeRule rule) {
        UnitType unit = item.value();
        double seconds = UnitDuty.dischargeSeconds(unit, rule.volts()).orElseThrow();
        if (seconds > rule.seconds() * 1.001) {
            slow(item, ".discharge-resistance", seconds, rule.volts(), rule);
        }
        double watts = unit.legVolts() * unit.legVolts() / ohms;
        if (watts > WATTS_PER_VAR * unit.ratedVars()) {
            findings.warning(
                    Message.DISCHARGE_LOSS,
                    findings.place(item.path() + ".discharge-resistance"),
                    unit.name(),
                    digits(watts, 3),
                    REACTIVE_POWER.format(unit.ratedVars()));
        }
    }

    private void slow(Item<UnitType> item, String key, double seconds, double volts, DischargeRule rule) {
        findings.warning(
                Message.DISCHARGE_SLOW,
                findings.place(item.path() + key),
                item.value().name(),
                TIME.format(seconds),
                VOLTAGE.format(volts),
                rule.source(),
                VOLTAGE.format(rule.volts()) + " in " + TIME.format(rule.seconds()));
    }

    private static String percent(double share) {
        return digits(100.0 * share, 3);
    }
}
