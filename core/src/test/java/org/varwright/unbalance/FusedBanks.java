package org.varwright.unbalance;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.varwright.bank.Bank;
import org.varwright.bank.Connection;
import org.varwright.bank.FuseType;
import org.varwright.bank.Protection;
import org.varwright.bank.Stage;
import org.varwright.bank.TransformerRatio;
import org.varwright.network.Banks;

/** Invented banks whose units have fuses outside and four sections without fuses inside. */
final class FusedBanks {
    private FusedBanks() {}

    /** Two groups of {@code units} units a leg; one sensor of each kind that suits, with these settings at the relay of a 8400:120 transformer. */
    static Bank fused(Connection connection, int units, OptionalDouble alarm, OptionalDouble trip) {
        return fused(Banks.plan(connection, 1, 2, units).bank(), alarm, trip);
    }

    static Bank fused(Bank bank, OptionalDouble alarm, OptionalDouble trip) {
        Stage s = bank.stages().getFirst();
        FuseType fuse = new FuseType(
                "F",
                FuseType.Kind.EXPULSION,
                Optional.empty(),
                OptionalDouble.of(50.0),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty());
        Stage stage = new Stage(
                s.name(),
                s.connection(),
                s.switchName(),
                s.layout(),
                s.second(),
                s.unit(),
                Optional.of(fuse),
                s.reactor(),
                s.label(),
                s.note());
        List<Protection> protection = bank.protection().stream()
                .filter(p -> p.senses() != Protection.Senses.PHASE_VOLTAGE)
                .map(p -> new Protection(
                        p.stage(),
                        p.senses(),
                        Optional.of(new TransformerRatio(8400.0, 120.0)),
                        alarm,
                        trip,
                        false,
                        OptionalDouble.empty(),
                        Optional.empty()))
                .toList();
        return new Bank(
                bank.name(),
                bank.site(),
                bank.standard(),
                bank.system(),
                bank.unitTypes(),
                List.of(fuse),
                List.of(stage),
                protection,
                bank.control(),
                bank.isolation(),
                bank.units(),
                bank.spares(),
                bank.label(),
                bank.note());
    }
}
