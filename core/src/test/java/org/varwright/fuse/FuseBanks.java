package org.varwright.fuse;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.FuseType;
import org.varwright.bank.LegLayout;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.Standard;
import org.varwright.bank.SupplySystem;
import org.varwright.bank.SystemGrounding;
import org.varwright.bank.Tolerance;
import org.varwright.bank.TransformerRatio;
import org.varwright.bank.UnitType;

/** Banks of one or more fused stages for tests; every value is the test's own. */
final class FuseBanks {
    private FuseBanks() {}

    static FuseType link(String link) {
        return new FuseType(
                "F",
                FuseType.Kind.EXPULSION,
                Optional.of(link),
                OptionalDouble.of(Double.parseDouble(link.substring(0, link.length() - 1))),
                OptionalDouble.of(100e3),
                OptionalDouble.empty(),
                Optional.empty());
    }

    static UnitType unit(double vars, double volts, double hertz) {
        return new UnitType(
                "U",
                vars,
                volts,
                hertz,
                new Tolerance(0.0, 0.0),
                Optional.empty(),
                Optional.empty(),
                OptionalInt.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    static Stage stage(
            String name,
            Connection connection,
            LegLayout layout,
            UnitType unit,
            Optional<FuseType> fuse,
            Optional<FuseType> lineFuse) {
        return new Stage(
                name,
                connection,
                Optional.empty(),
                layout,
                Optional.empty(),
                unit,
                fuse,
                lineFuse,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** A solid, stiff system without a short-circuit level. */
    static SupplySystem stiff(double lineVolts, double hertz) {
        return new SupplySystem(
                lineVolts,
                OptionalDouble.empty(),
                hertz,
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                SystemGrounding.SOLID);
    }

    static SupplySystem behind(double lineVolts, double hertz, double voltAmperes, double xOverR) {
        return new SupplySystem(
                lineVolts,
                OptionalDouble.empty(),
                hertz,
                OptionalDouble.of(voltAmperes),
                OptionalDouble.of(xOverR),
                SystemGrounding.SOLID);
    }

    static Bank bank(Standard standard, SupplySystem system, Stage... stages) {
        return bank(standard, system, List.of(), stages);
    }

    static Bank bank(Standard standard, SupplySystem system, List<Protection> protection, Stage... stages) {
        return new Bank(
                "sketch",
                Optional.empty(),
                standard,
                system,
                List.of(stages[0].unit()),
                List.of(),
                List.of(stages),
                protection,
                Optional.empty(),
                Optional.empty(),
                List.of(),
                List.of(),
                Optional.empty(),
                Optional.empty());
    }

    static Protection neutralVoltage(String stage, double trip, double delay) {
        return new Protection(
                stage,
                Protection.Senses.NEUTRAL_VOLTAGE,
                Optional.of(new TransformerRatio(7200, 120)),
                OptionalDouble.empty(),
                OptionalDouble.of(trip),
                false,
                OptionalDouble.of(delay),
                Optional.empty());
    }

    /** An ungrounded or grounded wye of so many kvar, one unit a leg, with a line fuse only: a distribution bank. */
    static Bank pole(Connection connection, double kvar, double kilovolts, String link) {
        double legVolts = kilovolts * 1e3 / Math.sqrt(3.0);
        return bank(
                Standard.IEEE,
                stiff(kilovolts * 1e3, 60.0),
                stage(
                        "s",
                        connection,
                        new LegLayout(1, 1, 1),
                        unit(kvar * 1e3 / 3.0, legVolts, 60.0),
                        Optional.empty(),
                        Optional.of(link(link))));
    }
}
