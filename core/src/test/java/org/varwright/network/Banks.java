package org.varwright.network;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.Construction;
import org.varwright.bank.InternalConnection;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Reactor;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitPosition;
import org.varwright.bank.UnitType;

/** Invented banks with one stage called {@code F}. */
public final class Banks {
    public static final String STAGE = "F";

    private Banks() {}

    /** Everything that tells one bank of these from another. */
    public record Plan(
            Connection connection,
            LegLayout layout,
            Optional<LegLayout> second,
            double lineVolts,
            double hertz,
            double unitVars,
            double unitVolts,
            Optional<InternalConnection> threePhase,
            Optional<Reactor> reactor,
            List<Protection> protection) {
        public Plan with(Reactor r) {
            return new Plan(
                    connection,
                    layout,
                    second,
                    lineVolts,
                    hertz,
                    unitVars,
                    unitVolts,
                    threePhase,
                    Optional.of(r),
                    protection);
        }

        public Plan second(LegLayout s) {
            return new Plan(
                    connection,
                    layout,
                    Optional.of(s),
                    lineVolts,
                    hertz,
                    unitVars,
                    unitVolts,
                    threePhase,
                    reactor,
                    protection);
        }

        public Plan cans(InternalConnection c) {
            return new Plan(
                    connection,
                    layout,
                    second,
                    lineVolts,
                    hertz,
                    unitVars,
                    unitVolts,
                    Optional.of(c),
                    reactor,
                    List.of());
        }

        public Plan rated(double vars, double volts) {
            return new Plan(connection, layout, second, lineVolts, hertz, vars, volts, threePhase, reactor, protection);
        }

        public Plan at(double volts, double hz) {
            return new Plan(
                    connection, layout, second, volts, hz, unitVars, unitVolts, threePhase, reactor, protection);
        }

        public Plan sensing(Protection... sensors) {
            return new Plan(
                    connection,
                    layout,
                    second,
                    lineVolts,
                    hertz,
                    unitVars,
                    unitVolts,
                    threePhase,
                    reactor,
                    List.of(sensors));
        }

        public Bank bank() {
            UnitType unit = new UnitType(
                    "U",
                    unitVars,
                    unitVolts,
                    hertz,
                    new Tolerance(0.0, 0.1),
                    Optional.of(new Construction(4, 10, false)),
                    Optional.empty(),
                    OptionalInt.of(2),
                    OptionalDouble.empty(),
                    OptionalDouble.empty(),
                    threePhase,
                    Optional.empty(),
                    Optional.empty());
            Stage stage = new Stage(
                    STAGE,
                    connection,
                    Optional.empty(),
                    layout,
                    second,
                    unit,
                    Optional.empty(),
                    reactor,
                    Optional.empty(),
                    Optional.empty());
            SupplySystem system = new SupplySystem(
                    lineVolts,
                    OptionalDouble.empty(),
                    hertz,
                    OptionalDouble.of(280e6),
                    OptionalDouble.of(11.0),
                    SystemGrounding.SOLID);
            return new Bank(
                    "invented",
                    Optional.empty(),
                    Standard.IEEE,
                    system,
                    List.of(unit),
                    List.of(),
                    List.of(stage),
                    protection,
                    Optional.empty(),
                    Optional.empty(),
                    List.of(),
                    List.of(),
                    Optional.empty(),
                    Optional.empty());
        }
    }

    /** 13.8 kV, 60 Hz, every sensor that suits the connection. Units are rated for their share of the voltage. */
    public static Plan plan(Connection connection, int strings, int groups, int units) {
        double legVolts = connection == Connection.DELTA ? 13800.0 : 13800.0 / Math.sqrt(3.0);
        int inSeries = groups * (connection.isBridge() ? 2 : 1);
        List<Protection> sensors = new ArrayList<>();
        for (Protection.Senses senses : Protection.Senses.values()) {
            if (Sensor.suits(senses, connection)) {
                sensors.add(sensor(senses, 100.0, 5.0));
            }
        }
        return new Plan(
                connection,
                new LegLayout(strings, groups, units),
                Optional.empty(),
                13800.0,
                60.0,
                200e3,
                legVolts / inSeries,
                Optional.empty(),
                Optional.empty(),
                sensors);
    }

    public static Protection sensor(Protection.Senses senses, double primary, double secondary) {
        return new Protection(
                STAGE,
                senses,
                Optional.of(new TransformerRatio(primary, secondary)),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                false,
                OptionalDouble.empty(),
                Optional.empty());
    }

    /** Every kind of bank, small: each connection, strings, unequal wyes, reactors, three-phase units. */
    public static List<Plan> everyKind() {
        List<Plan> plans = new ArrayList<>();
        for (Connection connection : Connection.values()) {
            plans.add(plan(connection, 1, 1, 3));
            plans.add(plan(connection, 1, 3, 2));
            plans.add(plan(connection, 2, 3, 1));
            plans.add(plan(connection, 1, 2, 2).with(new Reactor(2e-3, Reactor.Position.LINE, Reactor.Purpose.INRUSH)));
            plans.add(plan(connection, 1, 2, 2)
                    .with(new Reactor(3e-3, Reactor.Position.NEUTRAL, Reactor.Purpose.INRUSH)));
            if (connection.isDoubleWye()) {
                plans.add(plan(connection, 1, 2, 3).second(new LegLayout(1, 2, 2)));
            }
        }
        plans.add(plan(Connection.DELTA, 1, 1, 2).cans(InternalConnection.DELTA));
        plans.add(plan(Connection.WYE_UNGROUNDED, 1, 1, 2)
                .cans(InternalConnection.WYE_UNGROUNDED)
                .rated(600e3, 13800.0));
        plans.add(plan(Connection.WYE_UNGROUNDED, 1, 1, 2)
                .cans(InternalConnection.WYE_UNGROUNDED)
                .rated(600e3, 13800.0)
                .with(new Reactor(2e-3, Reactor.Position.LINE, Reactor.Purpose.INRUSH)));
        return plans;
    }

    /** Every unit up to {@code spread} off its nameplate. */
    public static Capacitances scattered(Bank bank, Random random, double spread) {
        Capacitances values = Capacitances.nameplate(bank);
        Stage stage = bank.stages().getFirst();
        for (UnitPosition position : stage.positions()) {
            for (UnitBranch branch : Circuit.branchesOf(stage, position)) {
                values =
                        values.with(branch, values.farads(branch) * (1.0 + spread * (2.0 * random.nextDouble() - 1.0)));
            }
        }
        return values;
    }

    /** One to three failures that leave no part floating and put no short across the supply. */
    public static List<Failure> someFailures(Bank bank, Random random) {
        Stage stage = bank.stages().getFirst();
        List<UnitBranch> branches = stage.positions().stream()
                .flatMap(p -> Circuit.branchesOf(stage, p).stream())
                .toList();
        List<Failure> failures = new ArrayList<>();
        int count = 1 + random.nextInt(3);
        for (int i = 0; i < count; i++) {
            UnitBranch at = branches.get(random.nextInt(branches.size()));
            switch (random.nextInt(5)) {
                case 0 -> failures.add(new Failure.UnitOut(at));
                case 1 -> failures.add(new Failure.SectionsShorted(at, 1 + random.nextInt(3)));
                case 2 -> failures.add(new Failure.ElementsOut(at, 1 + random.nextInt(9)));
                case 3 -> failures.add(new Failure.UnitShorted(at));
                default -> failures.add(new Failure.PhaseOpen(STAGE, Circuit.PHASES.get(random.nextInt(3))));
            }
        }
        return failures;
    }
}
