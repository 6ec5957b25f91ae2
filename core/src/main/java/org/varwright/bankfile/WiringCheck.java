package org.varwright.bankfile;

import static org.varwright.quantity.Dimension.CURRENT;
import static org.varwright.quantity.Dimension.INDUCTANCE;
import static org.varwright.quantity.Dimension.LENGTH;
import static org.varwright.quantity.Dimension.VOLTAGE;
import static org.varwright.quantity.Dimension.digits;

import java.util.OptionalDouble;
import org.varwright.bank.Device;
import org.varwright.bank.DischargePath;
import org.varwright.bank.FuseType;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.problem.Message;

/** Holds what stands between the bus and the units of a stage against system and stage: switch, line fuse, bus, wiring, reactor, discharge path. */
final class WiringCheck {
    /** Plausible stray inductance of one phase of a stage's wiring [H]: common practice, no source. */
    private static final double LEAST_STRAY = 0.1e-6;

    private static final double MOST_STRAY = 50e-6;

    /** Plausible length from the common point to a stage [m]: common practice, no source. */
    private static final double LEAST_BUS = 0.2;

    private static final double MOST_BUS = 100.0;

    /** Multiple of the stage's current that a line fuse usually carries. */
    private static final double USUAL_FUSE = 1.35;

    private final Findings findings;

    private WiringCheck(Findings findings) {
        this.findings = findings;
    }

    static void check(Draft draft, Findings findings) {
        WiringCheck check = new WiringCheck(findings);
        for (Item<Stage> item : draft.stages()) {
            check.stray(item, item.value().strayHenries());
            check.bus(item, item.value().busMetres());
            check.reactor(item);
            check.path(item);
            draft.system().ifPresent(system -> check.lineFuse(item, system));
        }
        draft.isolation()
                .ifPresent(isolation -> isolation
                        .devices()
                        .forEach(device -> draft.system().ifPresent(system -> check.device(device, system))));
    }

    private void stray(Item<Stage> item, OptionalDouble henries) {
        if (henries.isPresent() && (henries.getAsDouble() < LEAST_STRAY || henries.getAsDouble() > MOST_STRAY)) {
            findings.warning(
                    Message.STRAY_UNUSUAL,
                    findings.place(item.path() + ".stray-inductance"),
                    INDUCTANCE.format(henries.getAsDouble()),
                    INDUCTANCE.format(LEAST_STRAY),
                    INDUCTANCE.format(MOST_STRAY));
        }
    }

    private void bus(Item<Stage> item, OptionalDouble metres) {
        if (metres.isPresent() && (metres.getAsDouble() < LEAST_BUS || metres.getAsDouble() > MOST_BUS)) {
            findings.warning(
                    Message.BUS_UNUSUAL,
                    findings.place(item.path() + ".bus-length"),
                    LENGTH.format(metres.getAsDouble()),
                    LENGTH.format(LEAST_BUS),
                    LENGTH.format(MOST_BUS));
        }
    }

    private void reactor(Item<Stage> item) {
        item.value()
                .reactor()
                .filter(r -> r.ratedAmperes().isPresent() && r.peakAmperes().isPresent())
                .ifPresent(r -> peak(item, r));
    }

    private void peak(Item<Stage> item, Reactor reactor) {
        double crest = Math.sqrt(2.0) * reactor.ratedAmperes().orElseThrow();
        double peak = reactor.peakAmperes().orElseThrow();
        if (peak < crest) {
            findings.error(
                    Message.REACTOR_PEAK,
                    findings.place(item.path() + ".reactor.peak-current"),
                    CURRENT.format(peak),
                    CURRENT.format(crest),
                    CURRENT.format(reactor.ratedAmperes().orElseThrow()));
        }
    }

    /** Windings between lines draw the difference of two phases down; with a grounded neutral the charge common to all three has no way. */
    private void path(Item<Stage> item) {
        Stage stage = item.value();
        stage.dischargePath().ifPresent(path -> {
            var place = findings.place(item.path() + ".discharge-path.between");
            switch (path.between()) {
                case LINE_TO_NEUTRAL -> {
                    if (!stage.connection().isGrounded() && !stage.connection().hasFloatingNeutral()) {
                        findings.error(
                                Message.PATH_NO_NEUTRAL,
                                place,
                                stage.connection().code());
                    }
                }
                case LINES -> {
                    if (stage.connection().isGrounded()) {
                        findings.warning(
                                Message.PATH_LEAVES_COMMON,
                                place,
                                stage.connection().code());
                    }
                }
            }
            if (path.kind() == DischargePath.Kind.TRANSFORMER && path.henries().isEmpty()) {
                findings.warning(
                        Message.NOT_GIVEN,
                        findings.place(item.path() + ".discharge-path"),
                        "inductance",
                        "how the charge swings through the transformer can't be computed");
            }
        });
    }

    private void lineFuse(Item<Stage> item, SupplySystem system) {
        Stage stage = item.value();
        stage.lineFuse().ifPresent(fuse -> {
            lineFuseVolts(item, fuse, system);
            double amperes = UnitDuty.lineAmperes(stage, system);
            double carried = UnitDuty.carriedAmperes(fuse);
            var place = findings.place(item.path() + ".line-fuse");
            if (carried < amperes) {
                findings.error(
                        Message.LINE_FUSE_BELOW_STAGE,
                        place,
                        fuse.name(),
                        CURRENT.format(carried),
                        CURRENT.format(amperes));
            } else if (carried < USUAL_FUSE * amperes * (1.0 - 1e-3)) {
                findings.warning(
                        Message.LINE_FUSE_NEAR_STAGE,
                        place,
                        fuse.name(),
                        CURRENT.format(carried),
                        digits(carried / amperes, 3),
                        CURRENT.format(amperes));
            }
        });
    }

    /** A line fuse interrupts against line-to-line voltage, unless both the system and the bank are grounded: then against ground. */
    private void lineFuseVolts(Item<Stage> item, FuseType fuse, SupplySystem system) {
        boolean grounded = system.grounding() == SystemGrounding.SOLID
                && item.value().connection().isGrounded();
        double needed = grounded ? system.phaseVolts() : system.nominalVolts();
        fuse.ratedVolts().ifPresent(rated -> {
            if (rated < needed) {
                findings.error(
                        Message.LINE_FUSE_VOLTAGE,
                        findings.place(item.path() + ".line-fuse"),
                        fuse.name(),
                        VOLTAGE.format(rated),
                        VOLTAGE.format(needed));
            }
        });
    }

    private void device(Item<Device> item, SupplySystem system) {
        item.value()
                .type()
                .ifPresent(type -> type.ratedVolts().ifPresent(rated -> {
                    double maximum = system.maximumVolts().orElse(system.nominalVolts());
                    var place = findings.place(item.path() + ".type");
                    if (rated < system.nominalVolts()) {
                        findings.error(
                                Message.SWITCH_VOLTAGE,
                                place,
                                type.name(),
                                VOLTAGE.format(rated),
                                VOLTAGE.format(system.nominalVolts()));
                    } else if (rated < maximum) {
                        findings.warning(
                                Message.SWITCH_BELOW_MAXIMUM,
                                place,
                                type.name(),
                                VOLTAGE.format(rated),
                                VOLTAGE.format(maximum));
                    }
                }));
    }
}
