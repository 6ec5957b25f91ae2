package org.varwright.switching;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Device;
import org.varwright.bank.FuseType;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.Isolation;
import org.varwright.bank.KnownUnit;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SwitchType;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.UnitType;

/** Puts a bank together for a test. All values are the test's own. */
final class TestBank {
    private final double lineVolts;
    private final double hertz;
    private OptionalDouble shortCircuit = OptionalDouble.empty();
    private OptionalDouble xOverR = OptionalDouble.empty();
    private final List<Stage> stages = new ArrayList<>();
    private final List<Device> devices = new ArrayList<>();
    private final List<KnownUnit> units = new ArrayList<>();

    TestBank(double lineVolts, double hertz) {
        this.lineVolts = lineVolts;
        this.hertz = hertz;
    }

    TestBank source(double voltAmperes, double ratio) {
        shortCircuit = OptionalDouble.of(voltAmperes);
        xOverR = OptionalDouble.of(ratio);
        return this;
    }

    /** The short-circuit level alone. */
    TestBank source(double voltAmperes) {
        shortCircuit = OptionalDouble.of(voltAmperes);
        return this;
    }

    /** Everything that tells one stage from another. */
    record Plan(
            Connection connection,
            LegLayout layout,
            double stageVars,
            Optional<Reactor> reactor,
            Optional<InternalConnection> cans,
            Optional<SwitchType> type,
            Optional<FuseType> fuse,
            Optional<FuseType> lineFuse,
            OptionalDouble busMetres,
            OptionalDouble strayHenries) {
        static Plan of(Connection connection, double stageVars) {
            return new Plan(
                    connection,
                    new LegLayout(1, 1, 1),
                    stageVars,
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    Optional.empty(),
                    OptionalDouble.of(0.0),
                    OptionalDouble.of(0.0));
        }

        Plan reactor(double henries, double ohms, Reactor.Position position, double peak) {
            return new Plan(
                    connection,
                    layout,
                    stageVars,
                    Optional.of(new Reactor(
                            henries,
                            position,
                            Reactor.Purpose.INRUSH,
                            OptionalDouble.of(ohms),
                            OptionalDouble.empty(),
                            peak > 0.0 ? OptionalDouble.of(peak) : OptionalDouble.empty())),
                    cans,
                    type,
                    fuse,
                    lineFuse,
                    busMetres,
                    strayHenries);
        }

        Plan layout(LegLayout other) {
            return new Plan(connection, other, stageVars, reactor, cans, type, fuse, lineFuse, busMetres, strayHenries);
        }

        Plan cans(InternalConnection inside) {
            return new Plan(
                    connection,
                    layout,
                    stageVars,
                    reactor,
                    Optional.of(inside),
                    type,
                    fuse,
                    lineFuse,
                    busMetres,
                    strayHenries);
        }

        Plan rated(double peak, double frequency) {
            SwitchType made = new SwitchType(
                    "T",
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.of(peak),
                    OptionalDouble.of(frequency),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.empty());
            return new Plan(
                    connection,
                    layout,
                    stageVars,
                    reactor,
                    cans,
                    Optional.of(made),
                    fuse,
                    lineFuse,
                    busMetres,
                    strayHenries);
        }

        Plan fuses(double unitMelting, double lineMelting) {
            return new Plan(
                    connection,
                    layout,
                    stageVars,
                    reactor,
                    cans,
                    type,
                    Optional.of(fuse("U", unitMelting)),
                    Optional.of(fuse("L", lineMelting)),
                    busMetres,
                    strayHenries);
        }

        Plan wiring(OptionalDouble metres, OptionalDouble stray) {
            return new Plan(connection, layout, stageVars, reactor, cans, type, fuse, lineFuse, metres, stray);
        }

        private static FuseType fuse(String name, double melting) {
            return new FuseType(
                    name,
                    FuseType.Kind.EXPULSION,
                    Optional.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    melting > 0.0 ? OptionalDouble.of(melting) : OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    Optional.empty());
        }
    }

    /** A stage whose nameplates add up to {@code plan.stageVars} at the bank's voltage. */
    TestBank stage(String name, Plan plan) {
        int legs = plan.cans().isPresent() ? 1 : plan.connection().legs().size();
        boolean delta = plan.connection() == Connection.DELTA;
        int halves = plan.connection().isBridge() ? 2 : 1;
        double unitVolts = plan.cans().isPresent()
                ? lineVolts
                : (delta ? lineVolts : lineVolts / Math.sqrt(3.0))
                        / plan.layout().groups()
                        / halves;
        UnitType type = new UnitType(
                "U " + name,
                plan.stageVars() / legs / plan.layout().count(),
                unitVolts,
                hertz,
                new Tolerance(0.0, 0.1),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                plan.cans(),
                Optional.empty(),
                Optional.empty());
        stages.add(new Stage(
                name,
                plan.connection(),
                Optional.of("switch " + name),
                plan.layout(),
                Optional.empty(),
                type,
                plan.fuse(),
                plan.lineFuse(),
                plan.reactor(),
                plan.busMetres(),
                plan.strayHenries(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        devices.add(new Device(
                "switch " + name,
                Device.Kind.STAGE_SWITCH,
                List.of("closed", "open"),
                Optional.of(new Device.Between("bus", name)),
                plan.type(),
                false,
                false,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty()));
        return this;
    }

    /** A measured capacitance. */
    TestBank measured(String position, double farads) {
        units.add(new KnownUnit(
                build().position(position).orElseThrow(),
                Optional.empty(),
                OptionalDouble.of(farads),
                OptionalInt.empty(),
                Optional.empty(),
                Optional.empty()));
        return this;
    }

    Bank build() {
        return new Bank(
                        "test",
                        Optional.empty(),
                        Standard.IEEE,
                        new SupplySystem(
                                lineVolts,
                                OptionalDouble.of(lineVolts),
                                hertz,
                                shortCircuit,
                                xOverR,
                                SystemGrounding.SOLID),
                        stages.stream().map(Stage::unit).toList(),
                        List.of(),
                        stages,
                        List.of(),
                        Optional.empty(),
                        Optional.empty(),
                        units,
                        List.of(),
                        Optional.empty(),
                        Optional.empty())
                .with(new Isolation(
                        List.of(),
                        devices,
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        List.of(),
                        java.util.Map.of()));
    }
}
